// What the points of one song require, in their order. Nothing else in the program knows the order of
// cues. Apart from the song's machine, so that whoever only asks does not load the machine's library.

import type { Part, PedalStates, Song } from '../src/showfile/show.ts';
import type { Condition } from './advance.ts';

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
	readonly boards: Readonly<Record<string, PedalStates>>;
};

export type SongState = Condition<string, Record<string, never>>;

/** The points of a song, its start first. A board that a later cue sets is at rest until then. */
export function cuePoints(song: Song): readonly CuePoint[] {
	const made = pointsOf.get(song);
	if (made) return made;
	const boardPlayers = new Set([
		...Object.keys(song.board),
		...song.cues.flatMap((cue) => Object.keys(cue.boards)),
	]);
	const atRest = Object.fromEntries([...boardPlayers].map((player) => [player, {} as PedalStates]));
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

/** The point we are at, counted from the song's start. */
export function cueIndex({ value }: SongState): number {
	return Number(value.slice('point-'.length));
}
