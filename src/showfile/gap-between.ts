// The wait between two songs: what the file says, else what is usual.

import type { Song } from './show.ts';

/** Between two songs where the file says nothing: common practice, no source. */
export const GAP_SECONDS = 15;
/** Before an encore where the file says nothing: common practice, no source. */
export const ENCORE_GAP_SECONDS = 60;

/** What decides the gap before a song that the file gives none for. */
export type GapBetween = {
	/** The file's, or null. */
	readonly given: number | null;
	readonly before: Pick<Song, 'ends'>;
	readonly isEncoreBegin: boolean;
};

/** Seconds between two songs with no interval between them. */
export function gapBetween({ given, before, isEncoreBegin }: GapBetween): number {
	if (given !== null) return given;
	if (isEncoreBegin) return ENCORE_GAP_SECONDS;
	return before.ends === 'segue' ? 0 : GAP_SECONDS;
}
