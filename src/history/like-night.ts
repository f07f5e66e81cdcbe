// A show as if it were played as an earlier night was: its songs as long, its gaps as long, work as slow.

import { withOwnTimes } from '../showfile/own-times.ts';
import type { OwnTimes, SetItem, Show, Song } from '../showfile/show.ts';
import { neededTimes } from './needed-times.ts';
import type { NightFacts } from './night-facts.ts';
import { quantile } from './quantile.ts';

/** Longer is no gap between two songs, but a break in the show. */
const LONGEST_GAP_SECONDS = 600;

/**
 * The show with the real length of each song that was played whole that night, and before each song the gap that there
 * was before it; what was not played stays as the file has it. Times of work are those measured, where at least five of
 * a kind were; what the file gives comes first. A song without a length in the file gets one, too.
 *
 * @example
 * likeNight({ songs: [{ id: 'a', lengthSeconds: 200 }], set: [], instruments: [] }, { songs: [{ song: 'a', seconds: 231, isWhole: true }], gaps: [], pieces: [] }).songs[0].lengthSeconds // => 231
 */
export function likeNight(show: Show, night: Pick<NightFacts, 'songs' | 'gaps' | 'pieces'>): Show {
	const songs = show.songs.map((song): Song => {
		const real = night.songs
			.filter((one) => one.song === song.id && one.isWhole)
			.map(({ seconds }) => seconds);
		return real.length === 0 ? song : { ...song, lengthSeconds: Math.round(quantile(real, 0.5)) };
	});
	let isFirst = true;
	const set = show.set.map((item): SetItem => {
		const hasGap = item.kind === 'song' && !isFirst;
		isFirst = item.kind === 'interval';
		if (item.kind !== 'song' || !hasGap) return item;
		const real = night.gaps
			.filter(({ song, seconds }) => song === item.song && seconds <= LONGEST_GAP_SECONDS)
			.map(({ seconds }) => seconds);
		return real.length === 0 ? item : { ...item, gapSeconds: Math.round(quantile(real, 0.5)) };
	});
	const measured: OwnTimes = Object.fromEntries(
		neededTimes([night]).flatMap(({ work, medianSeconds }) =>
			medianSeconds === null ? [] : [[work, medianSeconds]],
		),
	);
	return withOwnTimes({ ...show, songs, set }, { ...show.ownTimes, ...measured });
}
