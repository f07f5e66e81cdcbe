// Where no gap of the set is given, what follows from the assumed ones is said once, and not of every song.

import type { Finding } from '../showfile/finding.ts';
import { ENCORE_GAP_SECONDS, GAP_SECONDS } from '../showfile/gap-between.ts';
import type { Show } from '../showfile/show.ts';

/** A gap that its hand-overs fill or overrun. */
export type FullGap = {
	readonly song: string;
	/** What they take. */
	readonly seconds: number;
	readonly gapSeconds: number;
};

/** Whether this gap is nobody's word: no song of the set has one, and it is no segue. */
export function isAssumed({ set }: Show, { gapSeconds }: Pick<FullGap, 'gapSeconds'>): boolean {
	return (
		gapSeconds > 0 && set.every((item) => item.kind === 'interval' || item.gapSeconds === null)
	);
}

/** What is said of all of them together; null for fewer than two, which say more by themselves. */
export function assumedGap(show: Show, gaps: readonly FullGap[]): Finding | null {
	const assumed = gaps.filter((gap) => isAssumed(show, gap));
	const needed = new Map(assumed.map(({ song, seconds }) => [song, seconds]));
	const order = show.set.flatMap((item) => (item.kind === 'song' ? [item.song] : []));
	const songs = [...new Set(order)].filter((song) => needed.has(song));
	if (songs.length < 2) return null;
	return {
		code: 'no-gap',
		severity: 'risk',
		songs,
		needs: songs.map((song) => needed.get(song) ?? 0),
		gapSeconds: GAP_SECONDS,
		encoreGapSeconds: show.set.some((item) => item.kind === 'song' && item.isEncore)
			? ENCORE_GAP_SECONDS
			: null,
	};
}
