// How long a song lasts as far as anybody knows before it is played.

import type { Show, Song } from './show.ts';

/** What a song counts as when no song of the show has a length: common practice, no source. */
const UNKNOWN_SECONDS = 240;

const medianOf = new WeakMap<Show, number>();

function medianSeconds(show: Show): number {
	const known = medianOf.get(show);
	if (known !== undefined) return known;
	const lengths = show.songs
		.flatMap((song) => (song.lengthSeconds === null ? [] : [song.lengthSeconds]))
		.sort((a, b) => a - b);
	const upper = lengths[Math.floor(lengths.length / 2)] ?? UNKNOWN_SECONDS;
	const lower = lengths[Math.floor((lengths.length - 1) / 2)] ?? UNKNOWN_SECONDS;
	const median = (upper + lower) / 2;
	medianOf.set(show, median);
	return median;
}

/** The place of the first song of the set that has no length, from 1: what comes after it begins at about its time. Null for none. */
export function firstWithoutLength(
	show: Show,
	ahead: readonly { readonly song: string; readonly position: number }[],
): number | null {
	const lengths = new Map(show.songs.map(({ id, lengthSeconds }) => [id, lengthSeconds]));
	return ahead.find(({ song }) => lengths.get(song) === null)?.position ?? null;
}

/** Seconds that the song is expected to last: its own length, else the median of those given, else 240. */
export function songSeconds(show: Show, song: Song): number {
	return song.lengthSeconds ?? medianSeconds(show);
}
