// A night's list in the order in which it was played, as the next night takes it over.

import type { Session, SongItem } from '../session/session.ts';

export type Placed = { readonly item: Session['list'][number]; readonly isEncore: boolean };

const beganAt = (item: SongItem): number => item.runs[0]?.beganAtMs ?? 0;

/** Tonight's list without what was dropped; what was played stands in the order in which it was. */
export function itemsAsPlayed({ list, show }: Session): readonly Placed[] {
	const kept = list.filter(
		(item) =>
			item.kind === 'interval' ||
			(!item.isDropped && show.songs.some(({ id }) => id === item.song)),
	);
	const isPlayed = (item: Session['list'][number]): item is SongItem =>
		item.kind === 'song' && item.runs.length > 0;
	const played = kept.filter(isPlayed).sort((one, other) => beganAt(one) - beganAt(other));
	let next = 0;
	const placed = kept.map((item): Placed => {
		const isEncore = item.kind === 'song' && item.isEncore;
		if (!isPlayed(item)) return { item, isEncore };
		next += 1;
		return { item: played[next - 1] ?? item, isEncore };
	});
	return placed.filter(({ item }, index) => item.kind === 'song' || isBetween(placed, index));
}

/** An interval stands between two songs, and not before an encore. */
function isBetween(placed: readonly Placed[], index: number): boolean {
	const before = placed[index - 1];
	const after = placed[index + 1];
	return before?.item.kind === 'song' && after?.item.kind === 'song' && !after.isEncore;
}
