// Looking things up in a session and its show by id. An id that is not there is a bug of ours or a
// damaged journal, never a user's mistake: show files are checked before a night begins.

import { onceFor } from '../base/once.ts';
import type { Instrument, Show, Song } from '../showfile/show.ts';
import type { Fault, Incident, ListItem, Session, SongItem } from './session.ts';

export function findItem(session: Session, key: string | null): ListItem | null {
	return session.list.find((item) => item.key === key) ?? null;
}

export function findSongItem(session: Session, key: string | null): SongItem | null {
	const item = findItem(session, key);
	return item?.kind === 'song' ? item : null;
}

export function findSong({ show }: Session, id: string): Song | null {
	return songsById(show).get(id) ?? null;
}

/** Looked up for every slot of every plan. */
const songsById = onceFor(
	({ songs }: Show): ReadonlyMap<string, Song> => new Map(songs.map((song) => [song.id, song])),
);

export function findInstrument(session: Session, id: string): Instrument | null {
	return session.show.instruments.find((one) => one.id === id) ?? null;
}

/** Whose hands it is in; a player's id. */
export function holderOf(session: Session, instrument: string): string | null {
	return (
		Object.keys(session.players).find((id) => session.players[id]?.holds === instrument) ?? null
	);
}

/** The song in progress; null between songs. */
export function songOnNow(session: Session): { item: SongItem; song: Song } | null {
	if (session.phase.value !== 'song') return null;
	const item = findSongItem(session, session.current);
	const song = item && findSong(session, item.song);
	return item && song ? { item, song } : null;
}

/** The next song to begin, an interval before it passed by; null when none is to come. */
export function nextSongItem(session: Session): SongItem | null {
	const from = session.list.findIndex((item) => item.key === session.next);
	if (from < 0) return null;
	for (const item of session.list.slice(from))
		if (item.kind === 'song' && !item.isPassedOver) return item;
	return null;
}

/** The list item that hand-overs made now belong to: the song on, else the next one. */
export function itemConcerned(session: Session): string | null {
	return session.phase.value === 'song' ? session.current : (nextSongItem(session)?.key ?? null);
}

/** The key of what follows an item of the list, what was passed over left out. */
export function keyAfter(list: readonly ListItem[], key: string): string | null {
	const from = list.findIndex((item) => item.key === key);
	for (const item of list.slice(from + 1))
		if (item.kind === 'interval' || !item.isPassedOver) return item.key;
	return null;
}

/** The songs of tonight's list; what was passed over counts too, what was dropped does not. */
export function songsOf(list: readonly ListItem[]): readonly SongItem[] {
	return list.filter((item): item is SongItem => item.kind === 'song' && !item.isDropped);
}

/** The song's place among the songs of tonight's list, from 1; 0 for one that was dropped. */
export function positionOf(list: readonly ListItem[], { key }: SongItem): number {
	return songsOf(list).findIndex((one) => one.key === key) + 1;
}

/** Whether an item stands before what is still to come, so that it would not come where it stands. */
export function isBehind({ list, next, current }: Session, key: string): boolean {
	const place = (of: string | null) => list.findIndex((item) => item.key === of);
	const at = place(key);
	if (at <= place(current)) return true;
	const between = next === null ? [] : list.slice(at + 1, Math.max(at + 1, place(next)));
	return between.some((item) => item.kind === 'interval' || !item.isPassedOver);
}

/** Whether an interval is to come before an item of the list: all that is in hands goes back before it. */
export function isAfterInterval({ list, next }: Session, key: string): boolean {
	const from = list.findIndex((item) => item.key === next);
	const to = list.findIndex((item) => item.key === key);
	return from >= 0 && list.slice(from, to).some(({ kind }) => kind === 'interval');
}

/** The latest break that still waits for its answer. */
export function openBreak(session: Session): Incident | null {
	return session.incidents.findLast((one) => one.isOpen) ?? null;
}

/** The latest break of this player that still waits for its answer; whatever is in hands then answers it. */
export function openBreakOf({ incidents }: Session, player: string): Incident | null {
	return incidents.findLast((one) => one.isOpen && one.player === player) ?? null;
}

export function findFault({ faults }: Session, id: string): Fault | null {
	return faults.find((one) => one.id === id) ?? null;
}

/** The searches for a fault that are not over, the latest first. */
export function openFaults({ faults }: Session): readonly Fault[] {
	return faults.filter(({ isOpen }) => isOpen).toReversed();
}
