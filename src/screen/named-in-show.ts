// What the show calls a thing, from its id. Apart, since every part of the screen asks.

import { positionOf, songsOf } from '../session/find.ts';
import type { Session, SongItem } from '../session/session.ts';
import type { Instrument, Show, Song } from '../showfile/show.ts';
import { playerName } from '../showfile/shown-names.ts';

/** The instrument of this id, or null. */
export function instrumentOf(show: Show, id: string): Instrument | null {
	return show.instruments.find((one) => one.id === id) ?? null;
}

/** The song of this id, or null. */
export function songOf(show: Show, id: string): Song | null {
	return show.songs.find((one) => one.id === id) ?? null;
}

/** The player's name, in capitals as labels are. */
export function playerLabel(show: Show, id: string): string {
	return playerName(show, id).toUpperCase();
}

/** The slot as it is printed on the rack, or the instrument's name when it has no slot. */
export function slotLabel(show: Show, id: string): string {
	const instrument = instrumentOf(show, id);
	return instrument?.slot?.toUpperCase() ?? instrument?.name ?? id;
}

/** The song that is on or comes at this item: the item itself, or the first song after an interval. */
export function songFrom(session: Session, key: string | null): SongItem | null {
	const at = session.list.findIndex((one) => one.key === key);
	if (at < 0) return null;
	return session.list.slice(at).find((one): one is SongItem => one.kind === 'song') ?? null;
}

/** The song's place among all the songs of tonight's list, from 1, and how many there are; 0 for no song. */
export function songPlace(
	{ list }: Session,
	key: string,
): { readonly place: number; readonly of: number } {
	const item = list.find((one): one is SongItem => one.kind === 'song' && one.key === key);
	return { place: item === undefined ? 0 : positionOf(list, item), of: songsOf(list).length };
}
