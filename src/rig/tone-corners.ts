// What cords and inputs take from an instrument's sound: the low-pass of its source resistance with the cords
// before the first input, the high-pass of a piezo into that input.

import type { RigPart } from '../showfile/rig.ts';
import type { Pedal, Show } from '../showfile/show.ts';
import { cornerHertz } from './circuit.ts';
import { instrumentsOf } from './instruments-of.ts';

export type ToneCorner = {
	readonly player: string;
	readonly instrument: string;
	/** Its name, where the file gives one. */
	readonly output: string | null;
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
		return instrumentsOf(show, player).flatMap(({ id: instrument, output: given = [] }) =>
			[given].flat().flatMap((output): readonly ToneCorner[] => {
				const about = { player, instrument, output: output.name ?? null };
				if (output.ohms !== undefined) {
					return picofarads === 0
						? []
						: [{ ...about, kind: 'low-pass', hertz: cornerHertz(output.ohms, picofarads) }];
				}
				return inputOhms === null || output.picofarads === undefined
					? []
					: [{ ...about, kind: 'high-pass', hertz: cornerHertz(inputOhms, output.picofarads) }];
			}),
		);
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
