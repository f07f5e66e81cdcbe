// The set as songs one after the other, with the room before each and where it falls on the show clock
// when everything goes by the file. Live, what happened takes the place of these figures.

import { gapBetween } from './gap-between.ts';
import type { Show, Song } from './show.ts';
import { songSeconds } from './song-length.ts';

/** One playing of a song. */
export type SetSong = {
	readonly song: Song;
	/** Its place among the songs of the set, from 1. */
	readonly position: number;
	readonly isEncore: boolean;
	/** Seconds between the end of the song before and this start; null where all there is to do fits: at the first song and after an interval. */
	readonly gapSeconds: number | null;
	readonly isAfterInterval: boolean;
	/** On the show clock, whose zero is the first song's start. */
	readonly startSeconds: number;
	readonly endSeconds: number;
};

/** Every playing of a song in the set, in order. */
export function runningOrder(show: Show): readonly SetSong[] {
	const songs = new Map(show.songs.map((song) => [song.id, song]));
	const order: SetSong[] = [];
	let interval: number | null = null;
	for (const item of show.set) {
		if (item.kind === 'interval') {
			interval = item.seconds;
			continue;
		}
		const song = songs.get(item.song);
		if (!song) throw new RangeError(`the set names a song that is not there: ${item.song}`);
		const before = order.at(-1);
		const isEncoreBegin = item.isEncore && !before?.isEncore;
		const gapSeconds =
			!before || interval !== null
				? null
				: gapBetween({ given: item.gapSeconds, before: before.song, isEncoreBegin });
		const startSeconds = before ? before.endSeconds + (interval ?? gapSeconds ?? 0) : 0;
		order.push({
			song,
			position: order.length + 1,
			isEncore: item.isEncore,
			gapSeconds,
			isAfterInterval: interval !== null,
			startSeconds,
			endSeconds: startSeconds + songSeconds(show, song),
		});
		interval = null;
	}
	return order;
}
