// Where we are inside one song: one state for each of its cue points, in order. What a point requires stands
// beside (song.ts), so that songs with as many points share a machine.

import { createMachine } from 'xstate';
import type { Song } from '../src/showfile/show.ts';
import { advance, type Law } from './advance.ts';
import { cuePoints, type SongState } from './song.ts';

export type SongEvent = { readonly type: 'stepped' } | { readonly type: 'steppedBack' };

type SongLaw = Law<SongState['context'], SongEvent> & {
	/** The states as far as somebody was there: else the last point would be as many steps away. */
	readonly known: SongState[];
};

/** By number of points. */
const laws = new Map<number, SongLaw>();

const stateName = (index: number): string => `point-${index}`;

/** The law of a song. */
export function songLaw(song: Song): SongLaw {
	const { length } = cuePoints(song);
	const made = laws.get(length) ?? lawOf(length);
	laws.set(length, made);
	return made;
}

function lawOf(points: number): SongLaw {
	const machine = createMachine({
		id: 'song',
		initial: stateName(0),
		states: Object.fromEntries(
			Array.from({ length: points }, (_, index) => [
				stateName(index),
				{
					on: {
						...(index < points - 1 ? { stepped: stateName(index + 1) } : {}),
						...(index > 0 ? { steppedBack: stateName(index - 1) } : {}),
					},
				},
			]),
		),
	});
	const begun = { value: stateName(0), context: {} };
	return { machine, asked: () => ({}), changes: {}, known: [begun] };
}

/** A song just begun. */
export function songBegun(song: Song): SongState {
	return songAtPoint(song, 0);
}

/** A song at one of its points, counted from its start; at its last where it has not so many. */
export function songAtPoint(song: Song, index: number): SongState {
	const { known } = songLaw(song);
	while (known.length <= index) {
		const next = advanceSong(song, known.at(-1) as SongState, { type: 'stepped' });
		if (next === null) break;
		known.push(next);
	}
	return known[Math.min(index, known.length - 1)] as SongState;
}

/** The song after an event, or null where it does not take it: no next point, no point before. */
export function advanceSong(song: Song, state: SongState, event: SongEvent): SongState | null {
	return advance(songLaw(song), state, event);
}
