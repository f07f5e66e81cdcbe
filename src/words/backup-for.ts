// What stands in for what a song names, in words: the record keeps what was handed, and the song says
// what it was for.

import { cellAt } from '../session/cells.ts';
import { findSongItem } from '../session/find.ts';
import type { Session } from '../session/session.ts';
import type { Show } from '../showfile/show.ts';
import { shownInstrument } from '../showfile/shown-names.ts';

/** What a player has for the start of a song. */
export type Held = {
	/** Key of the night's list item; null for none. */
	readonly item: string | null;
	readonly player: string;
	readonly instrument: string | null;
};

/** `, backup for 1 Amber` where the song, or the one that it goes on from, names another instrument for this player; else empty. */
export function backupWords(session: Session, { item: key, player, instrument }: Held): string {
	const item = findSongItem(session, key);
	if (item === null || instrument === null) return '';
	const { part } = cellAt(session, { item, point: 0, player });
	if (part?.kind !== 'named' || part.instrument === instrument) return '';
	return asBackup(session.show, part.instrument);
}

/** The named instrument that something stands in for, and who else has that: `backup for 1 Amber`, `backup for 1 Amber (Bo has it)`. */
export function backupFor(show: Show, named: string, holder: string | null = null): string {
	const elsewhere = holder === null ? '' : ` (${holder} has it)`;
	return `backup for ${shownInstrument(show, named)}${elsewhere}`;
}

/** The same after what stands in for it: `, backup for 1 Amber`; empty where nothing does. */
export function asBackup(show: Show, named: string | null): string {
	return named === null ? '' : `, ${backupFor(show, named)}`;
}
