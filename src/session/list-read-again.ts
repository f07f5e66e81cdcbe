// Tonight's list once the show was read again: what was played, is on or was dropped stays; what is to
// come is the file's where the file's own list has changed, else what was made of it tonight.

import type { RecordId } from '../journal/record.ts';
import type { SetItem, Show } from '../showfile/show.ts';
import { newItem } from './apply-set.ts';
import type { ListItem, Session } from './session.ts';
import { comingItems } from './set-places.ts';

/** The list and its next item. */
export function listReadAgain(
	session: Session,
	show: Show,
	of: RecordId | null,
): { readonly list: readonly ListItem[]; readonly next: string | null } {
	const isKnown = (item: ListItem): boolean =>
		item.kind === 'interval' || show.songs.some(({ id }) => id === item.song);
	if (JSON.stringify(show.set) === JSON.stringify(session.show.set)) {
		const list = session.list.filter(isKnown);
		const next = comingItems(session).find(isKnown)?.key ?? null;
		return { list, next };
	}
	const coming = comingItems(session);
	const past = session.list.filter(
		(item) =>
			isKnown(item) && (!coming.includes(item) || (item.kind === 'song' && item.runs.length > 0)),
	);
	const free = coming.filter((item) => !past.includes(item));
	let list = past;
	const keyOfNew = (place: number): string =>
		of === null ? countedOn([...session.list, ...list]) : `${of}.${place}`;
	for (const item of toCome(show.set, past)) {
		const same = free.findIndex((one) =>
			one.kind === 'song'
				? item.kind === 'song' && one.song === item.song
				: item.kind === 'interval',
		);
		const [before] = same < 0 ? [] : free.splice(same, 1);
		list = [...list, asListItem(item, before?.key ?? keyOfNew(list.length))];
	}
	return { list, next: list[past.length]?.key ?? null };
}

/** A key that no item of the list has, as version 1 gave it. */
function countedOn(list: readonly ListItem[]): string {
	const counted = list.map(({ key }) => Number(key)).filter(Number.isFinite);
	return String(Math.max(0, ...counted) + 1);
}

function asListItem(item: SetItem, key: string): ListItem {
	if (item.kind === 'interval') return { key, kind: 'interval', seconds: item.seconds };
	const { song, gapSeconds, isEncore } = item;
	return { ...newItem(key, song, isEncore), gapSeconds };
}

/** What of the file's list is still to come after all that is past, each past item taken once. */
function toCome(set: readonly SetItem[], past: readonly ListItem[]): readonly SetItem[] {
	const rest: (SetItem | null)[] = [...set];
	let lastPlayed = -1;
	for (const item of past) {
		const at = rest.findIndex((one) =>
			item.kind === 'song'
				? one?.kind === 'song' && one.song === item.song
				: one?.kind === 'interval',
		);
		if (at < 0) continue;
		rest[at] = null;
		if (item.kind === 'song' && item.runs.length > 0) lastPlayed = Math.max(lastPlayed, at);
	}
	// An interval that stands before what was played is over, whether it was kept or not.
	return rest.filter(
		(item, index) => item !== null && (item.kind === 'song' || index > lastPlayed),
	) as readonly SetItem[];
}
