// What changes of tonight's list do: songs moved, put in, dropped and taken back on. What was played
// stays where it is.

import type { Entry } from '../journal/entry.ts';
import type { RecordId } from '../journal/record.ts';
import { aboveSong } from './cells.ts';
import { findSongItem, keyAfter } from './find.ts';
import type { ListItem, Session, SongItem } from './session.ts';
import { withList } from './show-phase.ts';

/** A song put into the list tonight, not yet played. */
export function newItem(key: string, song: string, isEncore: boolean): SongItem {
	return {
		key,
		kind: 'song',
		song,
		gapSeconds: null,
		isEncore,
		isPassedOver: false,
		isDropped: false,
		runs: [],
		above: {},
		tonight: {},
	};
}

/** The session with one song of its list elsewhere. */
export function moveSong(session: Session, entry: Extract<Entry, { k: 'song-moved' }>): Session {
	const item = findSongItem(session, entry.item);
	if (item === null) return session;
	const next = session.next === item.key ? keyAfter(session.list, item.key) : session.next;
	const rest = session.list.filter(({ key }) => key !== item.key);
	const moved = { ...item, isEncore: entry.isEncore, isPassedOver: false, isDropped: false };
	return placed({ ...session, list: rest, next }, moved, entry.before);
}

/** The session with one more song in its list. */
export function insertSong(
	session: Session,
	entry: Extract<Entry, { k: 'song-inserted' }>,
	of: RecordId,
): Session {
	const above = aboveSong(session.show, entry.song);
	const item = { ...newItem(entry.item ?? of, entry.song, entry.isEncore), above };
	return placed(session, item, entry.before);
}

/** The session without this song to come; it stays in sight as dropped. */
export function dropSong(session: Session, key: string): Session {
	const list = changed(session.list, key, { isPassedOver: true, isDropped: true });
	const next = session.next === key ? keyAfter(list, key) : session.next;
	return withList(session, list, next);
}

/** The session with a song on its list again that was dropped or passed over, where it stands. */
export function restoreSong(session: Session, key: string): Session {
	const list = changed(session.list, key, { isPassedOver: false, isDropped: false });
	const at = list.findIndex((item) => item.key === key);
	const isFirst = session.next === null || at < indexOf(list, session.next);
	const isToCome = at > indexOf(list, session.current);
	return withList(session, list, isFirst && isToCome ? key : session.next);
}

/** The session with what a player has in one song of the list tonight. */
export function nameTonight(
	session: Session,
	{ item: key, player, part }: Extract<Entry, { k: 'named-tonight' }>,
): Session {
	const list = session.list.map((item) => {
		if (item.key !== key || item.kind !== 'song') return item;
		const { [player]: _, ...others } = item.tonight;
		return { ...item, tonight: part === null ? others : { ...others, [player]: part } };
	});
	return { ...session, list };
}

function placed(session: Session, item: SongItem, before: string | null): Session {
	const found = before === null ? -1 : indexOf(session.list, before);
	const at = found < 0 ? session.list.length : found;
	const list = [...session.list.slice(0, at), item, ...session.list.slice(at)];
	const isFirst = session.next === null || at < indexOf(list, session.next);
	return withList(session, list, isFirst ? item.key : session.next);
}

function changed(
	list: readonly ListItem[],
	key: string,
	change: Partial<SongItem>,
): readonly ListItem[] {
	return list.map((item) =>
		item.key === key && item.kind === 'song' ? { ...item, ...change } : item,
	);
}

function indexOf(list: readonly ListItem[], key: string | null): number {
	return list.findIndex((item) => item.key === key);
}
