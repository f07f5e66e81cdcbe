// Which instruments go through whose rig, and where on the scale they sound.

import type { Instrument, Show } from '../showfile/show.ts';
import { hertz, midiOf } from '../tuning/pitch.ts';

type Rack = Pick<Show, 'instruments' | 'songs' | 'players'>;

/**
 * Every instrument that a player may have; one that is for nobody in particular goes to whom songs name it for, and
 * else to all.
 *
 * @example
 * instrumentsOf(CORDS, 'bo').map(({ id }) => id) // => ['B1']
 */
export function instrumentsOf(
	{ instruments, songs, players }: Rack,
	player: string,
): readonly Instrument[] {
	return instruments.filter((instrument) => {
		if (instrument.for !== null) return instrument.for.includes(player);
		const named = players.filter(({ id }) =>
			songs.some(({ parts }) => {
				const part = parts[id];
				return part?.kind === 'named' && part.instrument === instrument.id;
			}),
		);
		return named.length === 0 || named.some(({ id }) => id === player);
	});
}

/** Octaves from an open string to the last fret, of those with the most: common practice, no source. */
const OCTAVES = 2;

/**
 * Hertz of the lowest and the highest note of an instrument in the tuning that it begins the night in; null for one
 * without strings.
 *
 * @example
 * rangeOf(CORDS.instruments[0], 440).map((one) => one.toFixed(1)) // => ['82.4', '1318.5']
 */
export function rangeOf(
	{ tuning }: Pick<Instrument, 'tuning'>,
	referenceHertz: number,
): readonly [lowest: number, highest: number] | null {
	const open = tuning.notes.map((note) => hertz(midiOf(note), referenceHertz));
	return open.length === 0 ? null : [Math.min(...open), Math.max(...open) * 2 ** OCTAVES];
}
