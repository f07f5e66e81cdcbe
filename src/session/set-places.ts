// Where a song can stand in what is still to come. The beginning of the encore is a mark between two
// songs, so that there are two places at it: the last before the encore, and its first.

import { findSongItem, isBehind } from './find.ts';
import type { ListItem, Session } from './session.ts';

/** A place: before that item, or after everything. */
export type SetPlace = { readonly before: string | null; readonly isEncore: boolean };

/** What is still to come, in order: from the next item on, without what was passed over or dropped. */
export function comingItems({ list, next }: Session): readonly ListItem[] {
	const from = list.findIndex(({ key }) => key === next);
	if (from < 0) return [];
	return list.slice(from).filter((item) => item.kind === 'interval' || !item.isPassedOver);
}

/** Every place for this item (null: one that is not on the list yet), in order. */
export function placesFor(session: Session, key: string | null): readonly SetPlace[] {
	const coming = comingItems(session).filter((item) => item.key !== key);
	const isInEncore = (item: ListItem | null | undefined): boolean =>
		item?.kind === 'song' && item.isEncore;
	const ahead = coming.flatMap((item, index): SetPlace[] => {
		const before = index === 0 ? findSongItem(session, session.current) : coming[index - 1];
		if (!isInEncore(item)) return [{ before: item.key, isEncore: false }];
		const first = { before: item.key, isEncore: true };
		return isInEncore(before) ? [first] : [{ before: item.key, isEncore: false }, first];
	});
	const last = coming.at(-1) ?? findSongItem(session, session.current);
	return [...ahead, { before: null, isEncore: isInEncore(last) }];
}

/** The place that a song to come has now; null for one that is not to come where it stands. */
export function placeNow(session: Session, key: string): SetPlace | null {
	const coming = comingItems(session);
	const at = coming.findIndex((item) => item.key === key);
	const item = coming[at];
	if (item?.kind !== 'song') return null;
	return { before: coming[at + 1]?.key ?? null, isEncore: item.isEncore };
}

/** The place directly before or after an item; the first of all where that is behind what is on. */
export function placeBeside(session: Session, key: string, side: 'before' | 'after'): SetPlace {
	const places = placesFor(session, null);
	const first = places[0] ?? { before: null, isEncore: false };
	const { list } = session;
	const at = list.findIndex((item) => item.key === key);
	const item = list[at];
	if (item === undefined || isBehind(session, key)) return first;
	const from = side === 'before' ? at : at + 1;
	const coming = comingItems(session);
	const following = list.slice(from).find((one) => coming.includes(one))?.key ?? null;
	const isEncore = item.kind === 'song' && item.isEncore;
	return (
		places.find((place) => place.before === following && place.isEncore === isEncore) ??
		places.find((place) => place.before === following) ??
		first
	);
}

/** The end of the encore; the end of everything, as an encore of one, where there is none to come. */
export function encoreEnd(session: Session, key: string): SetPlace {
	const coming = comingItems(session).filter((item) => item.key !== key);
	const last = coming.findLastIndex((item) => item.kind === 'song' && item.isEncore);
	return { before: last < 0 ? null : (coming[last + 1]?.key ?? null), isEncore: true };
}
