// Where a song is divided for the plan: at every cue that hands an instrument over.

import { cuePoints } from '../../../machines/song.ts';
import type { Song } from '../../showfile/show.ts';

export type SectionStart = {
	/** The cue point, counted from the song's start, which is 0. */
	readonly point: number;
	/** From the song's start. */
	readonly seconds: number;
};

/**
 * The song's start and every cue with hand-overs, in order: at the cue's own estimate, else at equal
 * parts of the song; never before the one before it, never after the song's end.
 *
 * @example
 * sectionStarts(bridgeSong, 240).map(({ seconds }) => seconds) // => [0, 120]
 */
export function sectionStarts(song: Song, lengthSeconds: number): readonly SectionStart[] {
	const cues = cuePoints(song).filter(({ hand }) => Object.keys(hand).length > 0);
	let latest = 0;
	return [
		{ point: 0, seconds: 0 },
		...cues.map(({ index, nearSeconds }, place): SectionStart => {
			const estimate = nearSeconds ?? (lengthSeconds * (place + 1)) / (cues.length + 1);
			latest = Math.min(Math.max(estimate, latest), lengthSeconds);
			// Moments of a night are whole milliseconds: a third of a song would not be met by what ends at it.
			return { point: index, seconds: Math.round(latest * 1000) / 1000 };
		}),
	];
}
