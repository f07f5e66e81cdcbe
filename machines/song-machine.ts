// Where we are inside one song. The machine is made from the song: one state for each cue point, in
// order, carrying what that point requires.

import { type AnyStateMachine, createMachine } from 'xstate';
import type { Song } from '../src/showfile/show.ts';
import { advance, begin } from './advance.ts';
import { cuePoints, type SongState } from './song.ts';

export type SongEvent = { readonly type: 'stepped' } | { readonly type: 'steppedBack' };

const machineOf = new WeakMap<Song, AnyStateMachine>();
/** The song's states as far as somebody was there: else the last point would be as many steps away. */
const pointsOf = new WeakMap<Song, SongState[]>();

const stateName = (index: number): string => `point-${index}`;

/** The machine of one song; its states carry their cue points as `meta`. */
export function songMachine(song: Song): AnyStateMachine {
	const made = machineOf.get(song);
	if (made) return made;
	const points = cuePoints(song);
	const last = points.length - 1;
	const machine = createMachine({
		id: `song-${song.id}`,
		context: {},
		initial: stateName(0),
		states: Object.fromEntries(
			points.map((point) => [
				stateName(point.index),
				{
					meta: point,
					on: {
						...(point.index < last ? { stepped: stateName(point.index + 1) } : {}),
						...(point.index > 0 ? { steppedBack: stateName(point.index - 1) } : {}),
					},
				},
			]),
		),
	});
	machineOf.set(song, machine);
	return machine;
}

/** A song just begun. */
export function songBegun(song: Song): SongState {
	return begin(songMachine(song));
}

/** A song at one of its points, counted from its start; at its last where it has not so many. */
export function songAtPoint(song: Song, index: number): SongState {
	const known = pointsOf.get(song) ?? [songBegun(song)];
	pointsOf.set(song, known);
	while (known.length <= index) {
		const next = advanceSong(song, known.at(-1) as SongState, { type: 'stepped' });
		if (next === null) break;
		known.push(next);
	}
	return known[Math.min(index, known.length - 1)] as SongState;
}

/** The song after an event, or null where it does not take it: no next point, no point before. */
export function advanceSong(song: Song, state: SongState, event: SongEvent): SongState | null {
	return advance(songMachine(song), state, event as never) as SongState | null;
}
