// Where we are inside one song: one state for each cue point, in order. What a point requires stands in the
// song, so songs of as many points have one machine.

import { type AnyStateMachine, createMachine } from 'xstate';
import type { Song } from '../src/showfile/show.ts';
import { advance, begin } from './advance.ts';
import { cuePoints, type SongState } from './song.ts';

export type SongEvent = { readonly type: 'stepped' } | { readonly type: 'steppedBack' };

/** By how many points a song has. */
const machineOf = new Map<number, AnyStateMachine>();
/** A machine's states as far as somebody was there: else the last point would be as many steps away. */
const pointsOf = new WeakMap<AnyStateMachine, SongState[]>();

const stateName = (index: number): string => `point-${index}`;

/** The machine of one song. */
export function songMachine(song: Song): AnyStateMachine {
	const { length } = cuePoints(song);
	const made = machineOf.get(length);
	if (made) return made;
	const last = length - 1;
	const machine = createMachine({
		id: 'song',
		context: {},
		initial: stateName(0),
		states: Object.fromEntries(
			Array.from({ length }, (_, index) => [
				stateName(index),
				{
					on: {
						...(index < last ? { stepped: stateName(index + 1) } : {}),
						...(index > 0 ? { steppedBack: stateName(index - 1) } : {}),
					},
				},
			]),
		),
	});
	machineOf.set(length, machine);
	return machine;
}

/** A song just begun. */
export function songBegun(song: Song): SongState {
	return begin(songMachine(song));
}

/** A song at one of its points, counted from its start; at its last where it has not so many. */
export function songAtPoint(song: Song, index: number): SongState {
	const machine = songMachine(song);
	const known = pointsOf.get(machine) ?? [songBegun(song)];
	pointsOf.set(machine, known);
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
