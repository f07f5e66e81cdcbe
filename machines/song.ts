// Where we are inside one song. The machine is made from the song: one state for each cue point, in
// order, carrying what that point requires. Nothing else in the program knows the order of cues.

import { type AnyStateMachine, createMachine } from 'xstate';
import type { BoardState, Part, Song } from '../src/showfile/show.ts';
import { advance, begin, type Condition } from './advance.ts';

/** What one point of a song requires. */
export type CuePoint = {
	readonly index: number;
	/** "start" for the first. */
	readonly at: string;
	readonly nearSeconds: number | null;
	readonly say: string | null;
	/** What each player named so far needs from here on. */
	readonly parts: Readonly<Record<string, Part>>;
	/** Who changes just before this point. */
	readonly hand: Readonly<Record<string, Part>>;
	/** Whole boards, by player, for every player whose board this song sets anywhere. */
	readonly boards: Readonly<Record<string, BoardState>>;
};

export type SongState = Condition<string, Record<string, never>>;

export type SongEvent =
	| { readonly type: 'stepped' }
	| { readonly type: 'steppedBack' }
	| { readonly type: 'ended' };

/** The points of a song, its start first. A board that a later cue sets is at rest until then. */
export function cuePoints(song: Song): readonly CuePoint[] {
	const made = pointsOf.get(song);
	if (made) return made;
	const boardPlayers = new Set([
		...Object.keys(song.board),
		...song.cues.flatMap((cue) => Object.keys(cue.boards)),
	]);
	const atRest = Object.fromEntries([...boardPlayers].map((player) => [player, {} as BoardState]));
	const points: CuePoint[] = [
		{
			index: 0,
			at: 'start',
			nearSeconds: 0,
			say: null,
			parts: song.parts,
			hand: {},
			boards: { ...atRest, ...song.board },
		},
	];
	for (const cue of song.cues) {
		const before = points[points.length - 1] as CuePoint;
		points.push({
			index: before.index + 1,
			at: cue.at,
			nearSeconds: cue.nearSeconds,
			say: cue.say,
			parts: { ...before.parts, ...cue.hand },
			hand: cue.hand,
			boards: { ...before.boards, ...cue.boards },
		});
	}
	pointsOf.set(song, points);
	return points;
}

const pointsOf = new WeakMap<Song, readonly CuePoint[]>();
const machineOf = new WeakMap<Song, AnyStateMachine>();

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
		states: {
			...Object.fromEntries(
				points.map((point) => [
					stateName(point.index),
					{
						meta: point,
						on: {
							...(point.index < last ? { stepped: stateName(point.index + 1) } : {}),
							...(point.index > 0 ? { steppedBack: stateName(point.index - 1) } : {}),
							ended: 'ended',
						},
					},
				]),
			),
			ended: {},
		},
	});
	machineOf.set(song, machine);
	return machine;
}

/** A song just begun. */
export function songBegun(song: Song): SongState {
	return begin(songMachine(song));
}

/** The song after an event, or null where it does not take it: no next point, no point before, ended. */
export function advanceSong(song: Song, state: SongState, event: SongEvent): SongState | null {
	return advance(songMachine(song), state, event as never) as SongState | null;
}

/** The point we are at, counted from the song's start; null once the song has ended. */
export function cueIndex(state: SongState): number | null {
	return state.value === 'ended' ? null : Number(state.value.slice('point-'.length));
}
