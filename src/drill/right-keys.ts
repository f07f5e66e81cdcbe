// The keys by which a thing is said to the night, for a lesson to name them: the shortest way there is in this
// session.

import { playersFor, slotOf } from '../keys/rack-slots.ts';
import { matchingSongs } from '../keys/song-prompt.ts';
import type { Session } from '../session/session.ts';
import type { Instrument, Song } from '../showfile/show.ts';

/** Keys as a sentence names them; see `key-groups.ts`. */
export type Keys = readonly string[];

/** The key that does an action. */
export type KeyOf = (action: string) => string;

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

function playerKey({ show }: Session, player: string): string {
	return show.players.find(({ id }) => id === player)?.key ?? '';
}
