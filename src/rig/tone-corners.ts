// What cords and inputs take from an instrument's sound: the low-pass of its source resistance with the cords
// before the first input, the high-pass of a piezo into that input.

import type { Output, RigPart } from '../showfile/rig.ts';
import type { Pedal, Show } from '../showfile/show.ts';
import { cornerHertz, decibels, dividerRatio, highPassRatio, lowPassRatio } from './circuit.ts';
import { instrumentsOf, rangeOf } from './instruments-of.ts';

export type ToneCorner = {
	readonly player: string;
	readonly instrument: string;
	/** Its name, where the file gives one. */
	readonly output: string | null;
	readonly kind: 'low-pass' | 'high-pass';
	readonly hertz: number;
	/** What it leaves of the highs at 10 kHz, or of the lowest string, in decibels; null for an instrument without strings. */
	readonly decibels: number | null;
	/** What the first input leaves of the level of a source with so many ohms; null where either is not given. */
	readonly inputDecibels: number | null;
};

/** Where the brightness of strings is: common practice, no source. */
const BRIGHT_HERTZ = 10_000;

type Sounding = Pick<
	Show,
	'rigs' | 'boards' | 'instruments' | 'songs' | 'players' | 'referenceHertz'
>;

/**
 * The corners of every instrument that says what it gives, on the sound path of each player who may have it. None where
 * the path has no cord with its picofarads, or no input with its ohms.
 *
 * @example
 * toneCorners(CORDS)[0].hertz.toFixed(1) // => '26525.8'
 */
export function toneCorners(show: Sounding): readonly ToneCorner[] {
	return Object.entries(show.rigs ?? {}).flatMap(([player, parts]) => {
		const first = toFirstInput(parts, show.boards[player] ?? []);
		return instrumentsOf(show, player).flatMap((instrument) => {
			const lowest = rangeOf(instrument, show.referenceHertz)?.[0] ?? null;
			return [instrument.output ?? []]
				.flat()
				.flatMap((output) => cornerOf(output, { ...first, lowest }) ?? [])
				.map((corner) => ({ player, instrument: instrument.id, ...corner }));
		});
	});
}

function cornerOf(
	{ name, ohms, picofarads }: Output,
	first: FirstInput & { readonly lowest: number | null },
): Omit<ToneCorner, 'player' | 'instrument'> | null {
	const { inputOhms, lowest } = first;
	if (ohms !== undefined) {
		if (first.picofarads === 0) return null;
		const hertz = cornerHertz(ohms, first.picofarads);
		const level = inputOhms === null ? null : dividerRatio({ sourceOhms: ohms, inputOhms });
		return {
			...{ output: name ?? null, kind: 'low-pass', hertz },
			decibels: decibels(lowPassRatio(BRIGHT_HERTZ, hertz)),
			inputDecibels: level === null ? null : decibels(level),
		};
	}
	if (inputOhms === null || picofarads === undefined) return null;
	const hertz = cornerHertz(inputOhms, picofarads);
	return {
		...{ output: name ?? null, kind: 'high-pass', hertz },
		decibels: lowest === null ? null : decibels(highPassRatio(lowest, hertz)),
		inputDecibels: null,
	};
}

/** The picofarads of the cords before the first input, and that input's ohms where they are given. */
type FirstInput = { readonly picofarads: number; readonly inputOhms: number | null };

/** These end a cord whether or not the file gives their ohms. */
const ENDS_A_CORD: ReadonlySet<string> = new Set(['pack', 'preamp', 'direct-box', 'amp', 'desk']);

function toFirstInput(parts: readonly RigPart[], pedals: readonly Pedal[]): FirstInput {
	let picofarads = 0;
	for (const part of parts) {
		const { kind, metres = 0, picofaradsPerMetre = 0 } = part;
		const pedal = kind === 'board' ? pedals.find((one) => one.inputOhms !== undefined) : undefined;
		const inputOhms = part.inputOhms ?? pedal?.inputOhms ?? null;
		if (inputOhms !== null || ENDS_A_CORD.has(kind)) return { picofarads, inputOhms };
		if (kind === 'cord') picofarads += metres * picofaradsPerMetre;
	}
	return { picofarads, inputOhms: null };
}
