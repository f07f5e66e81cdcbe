// What a player was given, and what is on it, in words: parts of the sentences of entries.

import type { Entry, Handed } from '../journal/entry.ts';
import { findSongItem, itemConcerned } from '../session/find.ts';
import type { Session } from '../session/session.ts';
import type { Show } from '../showfile/show.ts';
import { packName, playerName, shownInstrument, songTitle } from '../showfile/shown-names.ts';
import { asBackup, backupWords } from './backup-for.ts';

const NO_PACK = 'no pack on';

/** `Ash has 4 Dace, drop D`. */
export function handedWords(handed: Handed, show: Show): string {
	const player = playerName(show, handed.player);
	if (handed.instrument === null) return `${player}: hands empty`;
	return `${player} has ${shownInstrument(show, handed.instrument)}${tuningWords(handed, ', ')}`;
}

/** The pack that they wear with it, where that is not the one that belongs to it: `, keeps pack P2`. */
export function packWornWords(
	{ player, pack }: { readonly player: string; readonly pack?: string | null },
	show: Show,
	session: Session | undefined,
): string {
	if (pack === undefined) return '';
	if (pack === null) return `, ${NO_PACK}`;
	const isKept = session?.players[player]?.pack === pack;
	return `, ${isKept ? 'keeps ' : ''}pack ${packName(show, pack)}`;
}

/** What somebody has in one song tonight. */
export function namedWords(
	{ player, part }: Extract<Entry, { k: 'named-tonight' }>,
	show: Show,
): string {
	const who = playerName(show, player);
	if (part === null) return `${who} as the song says`;
	if (part.kind === 'none') return `${who}: hands empty`;
	return `${who} has ${shownInstrument(show, part.instrument)}${tuningWords(part, ', ')}`;
}

/** How it came to be known, and what it is a backup for. */
export function byWords(
	entry: Extract<Entry, { k: 'handed-over' }>,
	session: Session | undefined,
): string {
	const { by, player, instrument } = entry;
	const item: string | null = entry.item ?? null;
	if (by !== 'exchange') {
		if (session === undefined) return by === 'stand-in' ? ', backup' : '';
		// For a later song it is no backup in the one that is on.
		const concerned = item ?? itemConcerned(session);
		const named = backupWords(session, { item: concerned, player, instrument });
		if (named !== '' || by === 'plan') return `${named}${earlyFor(session, item)}`;
		// Where the song names none, it is for what was in hands.
		return asBackup(session.show, session.players[player]?.holds ?? null);
	}
	const isStill = session !== undefined && session.players[player]?.holds === instrument;
	return isStill ? ' still' : ', swapped';
}

/** `, early for Lantern`; empty for what is handed in its turn. */
function earlyFor(session: Session, item: string | null): string {
	const song = findSongItem(session, item)?.song;
	return song === undefined ? '' : `, early for ${songTitle(session.show, song)}`;
}

type Set = { readonly tuning?: { readonly name: string }; readonly capo?: number };

/** What is on it, after `before`; empty where nothing is said. */
export function tuningWords(set: Set, before: string): string {
	const capo = set.capo === undefined ? null : set.capo === 0 ? 'no capo' : `capo ${set.capo}`;
	// "No capo" goes without saying where the tuning is said.
	const parts = [set.tuning?.name, set.tuning && set.capo === 0 ? null : capo].filter(
		(part) => part !== null && part !== undefined,
	);
	return parts.length === 0 ? '' : `${before}${parts.join(', ')}`;
}

/** What was done as it was made ready. */
export function doneWords(entry: Set & { readonly isRestrung?: boolean }): string {
	return `${entry.isRestrung ? ', restrung' : ''}${tuningWords(entry, ', ')}`;
}

/** Pitches or strings are on, and it is not ready yet. */
export function earlyWords(entry: Set & { readonly isRestrung?: boolean }): string {
	const tuning = entry.tuning ? ` in ${entry.tuning.name}` : '';
	return `${entry.isRestrung ? ' restrung' : ''}${tuning}, touch-up later`;
}

/** What was logged as planned though its work was never marked: `Logged as planned, but 5 Coal NOT RETUNED. c corrects.` */
export function loggedUnmarked(undone: readonly string[], key: string): string {
	return `Logged as planned, but ${undone.join('; ')}. ${key} corrects.`;
}

/** Who was to get what cannot be played: `Wren gets nothing: 1 Thistle has a string down.` */
export function notHanded(player: string, instrument: string): string {
	return `${player} gets nothing: ${instrument} has a string down.`;
}
