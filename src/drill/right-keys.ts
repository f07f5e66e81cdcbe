// The keys by which a thing is said to the night, for a lesson to name them: the shortest way there is in this
// session.

import { playersFor, slotOf } from '../keys/rack-slots.ts';
import { matchingSongs } from '../keys/song-prompt.ts';
import type { Session } from '../session/session.ts';
import type { Instrument, Song } from '../showfile/show.ts';

/** Keys as a sentence names them: a key's name, or letters that are typed one after the other. */
export type Keys = readonly string[];

/** That the song after the next one is on, between songs. */
export const SKIP_KEYS: Keys = ['right', 'right'];

/** That several planned hand-overs are made, all of them. */
export const ALL_HANDED_KEYS: Keys = ['enter', 'enter'];

/** The key that does an action. */
export type KeyOf = (action: string) => string;

/** The keys of a list's things, as the prompts about boards and packs count them. */
const LISTED = '123456789abcdefghijklmnopqrstuvwxyz';

/** A song is known by so many letters, or as many more as it takes. */
const LEAST_LETTERS = 3;

/** That a string broke on it, and that the backup which stands first is in hands. */
export function breakKeys(keyOf: KeyOf, session: Session, instrument: string): Keys {
	return [keyOf('break'), slotOf(session, instrument), 'enter'];
}

/** That a player has this in hands. */
export function swapKeys(
	keyOf: KeyOf,
	session: Session,
	{ player, instrument }: { readonly player: string; readonly instrument: Instrument },
): Keys {
	const isAsked = playersFor(session, instrument).length > 1;
	return [
		keyOf('exchange'),
		slotOf(session, instrument.id),
		...(isAsked ? [playerKey(session, player)] : []),
	];
}

/** That a song comes next; null where no letters of its title bring it first. */
export function jumpKeys(keyOf: KeyOf, session: Session, song: Song): Keys | null {
	const title = song.title.toLowerCase();
	const counts = Array.from(title, (_, index) => index + 1);
	const count = counts.find(
		(letters) =>
			letters >= Math.min(LEAST_LETTERS, title.length) &&
			matchingSongs(session, title.slice(0, letters))[0]?.id === song.id,
	);
	if (count === undefined) return null;
	return [keyOf('jump'), title.slice(0, count).trimEnd(), 'enter'];
}

/** That the pack a player wears is suspect, and, where there is another to be had, that they wear that one now. */
export function packKeys(
	keyOf: KeyOf,
	session: Session,
	{ player, other }: { readonly player: string; readonly other: string | null },
): Keys {
	const asked = [keyOf('pack'), playerKey(session, player)];
	const place = session.show.packs.findIndex(({ id }) => id === other);
	return [...asked, '-', ...(place < 0 ? [] : [...asked, LISTED[place] ?? ''])];
}

/** That a pedal does not switch. */
export function stuckKeys(
	keyOf: KeyOf,
	session: Session,
	{ player, pedal }: { readonly player: string; readonly pedal: string },
): Keys {
	const isAsked = Object.keys(session.boards).length > 1;
	const place = session.show.boards[player]?.findIndex(({ id }) => id === pedal) ?? 0;
	return [
		keyOf('put-aside'),
		'0',
		...(isAsked ? [playerKey(session, player)] : []),
		LISTED[place] ?? '',
	];
}

function playerKey({ show }: Session, player: string): string {
	return show.players.find(({ id }) => id === player)?.key ?? '';
}
