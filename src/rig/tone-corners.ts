// What cords and inputs take from an instrument's sound: the low-pass of its source resistance with the cords
// before the first input, the high-pass of a piezo into that input.

import type { RigPart } from '../showfile/rig.ts';
import type { Instrument, Pedal, Show } from '../showfile/show.ts';
import { cornerHertz } from './circuit.ts';

export type ToneCorner = {
	readonly player: string;
	readonly instrument: string;
	readonly kind: 'low-pass' | 'high-pass';
	readonly hertz: number;
};

/**
 * The corners of every instrument that says what it gives, on the sound path of each player who may have it. None where
 * the path has no cord with its picofarads, or no input with its ohms.
 *
 * @example
 * toneCorners(CORDS)[0].hertz.toFixed(1) // => '26525.8'
 */
export function toneCorners(
	show: Pick<Show, 'rigs' | 'boards' | 'instruments' | 'songs' | 'players'>,
): readonly ToneCorner[] {
	return Object.entries(show.rigs ?? {}).flatMap(([player, parts]) => {
		const { picofarads, inputOhms } = toFirstInput(parts, show.boards[player] ?? []);
		return show.instruments.flatMap((instrument): readonly ToneCorner[] => {
			const { output } = instrument;
			if (output === undefined || !mayHave(show, player, instrument)) return [];
			const about = { player, instrument: instrument.id };
			if ('ohms' in output) {
				return picofarads === 0
					? []
					: [{ ...about, kind: 'low-pass', hertz: cornerHertz(output.ohms, picofarads) }];
			}
			return inputOhms === null
				? []
				: [{ ...about, kind: 'high-pass', hertz: cornerHertz(inputOhms, output.picofarads) }];
		});
	});
}

/** These end a cord whether or not the file gives their ohms. */
const ENDS_A_CORD: ReadonlySet<string> = new Set(['pack', 'preamp', 'direct-box', 'amp', 'desk']);

/** The picofarads of the cords before the first input, and that input's ohms where they are given. */
function toFirstInput(
	parts: readonly RigPart[],
	pedals: readonly Pedal[],
): { readonly picofarads: number; readonly inputOhms: number | null } {
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

/** Whom it is for; one that is for nobody in particular goes to whom songs name it for, and else to all. */
function mayHave(
	{ songs, players }: Pick<Show, 'songs' | 'players'>,
	player: string,
	instrument: Instrument,
): boolean {
	if (instrument.for !== null) return instrument.for.includes(player);
	const named = players.filter(({ id }) =>
		songs.some(({ parts }) => {
			const part = parts[id];
			return part?.kind === 'named' && part.instrument === instrument.id;
		}),
	);
	return named.length === 0 || named.some(({ id }) => id === player);
}
