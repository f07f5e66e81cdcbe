// How far an exchange, or staying on what is in hands, settles what a player has in a song: until the next cue that hands them something
// of its own. Apart, since deciding and the plan must agree on it.

import { cuePoints } from '../../machines/song.ts';
import { findSong, findSongItem, isOverAnInterval } from './find.ts';
import type { Session } from './session.ts';

/**
 * The cue point of this list item from which on the player's planned hand-overs are open: 0 where
 * nothing settled them, infinity where no later cue names the player.
 */
export function openFromPoint(session: Session, key: string, player: string): number {
	const { settled, staying } = session;
	// An interval takes all from hands, and nobody stays on anything over it.
	const isStaying =
		staying.item === key && staying.players.includes(player) && !isOverAnInterval(session, key);
	const settledAt =
		(settled.item === key ? settled.players[player] : undefined) ?? (isStaying ? 0 : undefined);
	const item = findSongItem(session, key);
	const song = item && findSong(session, item.song);
	if (settledAt === undefined || song === null) return 0;
	const own = cuePoints(song).find(
		({ index, hand }) => index > settledAt && Object.hasOwn(hand, player),
	);
	return own?.index ?? Number.POSITIVE_INFINITY;
}
