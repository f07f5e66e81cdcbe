// A night in which one player plays one song on something else than the file asks for: to see what that
// would cost, by planning it.

import type { Session } from '../../session/session.ts';
import type { Part, Song } from '../../showfile/show.ts';
import { songSeconds } from '../../showfile/song-length.ts';
import type { Hand } from '../demand/hand.ts';
import type { Slot } from '../plan.ts';

/**
 * The session with this slot named: the song, that once it is played, asks the player for exactly this
 * from the slot's point on.
 *
 * @example
 * withPartInstead(session, slots[0], held).list[0].song // => 'harbour instead'
 */
export function withPartInstead(session: Session, { section, player }: Slot, hand: Hand): Session {
	const { show } = session;
	// A further song would shift the length that stands for one not given.
	const songs = show.songs.map((one) => ({ ...one, lengthSeconds: songSeconds(show, one) }));
	const song = songs.find(({ id }) => id === section.song);
	if (song === undefined) return session;
	const { instrument, tuning, capo } = hand;
	const id = `${song.id} instead`;
	const asked = withHand(song, {
		point: section.point,
		player,
		hand: { instrument, tuning, capo },
	});
	const instead = { ...asked, id };
	return {
		...session,
		show: { ...show, songs: [...songs, instead] },
		list: session.list.map((item) =>
			item.kind === 'song' && item.key === section.item ? { ...item, song: instead.id } : item,
		),
	};
}

/**
 * The song asking this player for exactly this from a point of it on.
 *
 * @example
 * withHand(songs.harbour, { point: 0, player: 'bo', hand: held }).parts.bo.instrument // => 'A1'
 */
export function withHand(
	song: Song,
	{ point, player, hand }: { readonly point: number; readonly player: string; readonly hand: Hand },
): Song {
	const part: Part = { kind: 'named', ...hand, leave: null, pack: null };
	if (point === 0) return { ...song, parts: { ...song.parts, [player]: part } };
	const cues = song.cues.map((cue, index) =>
		index === point - 1 ? { ...cue, hand: { ...cue.hand, [player]: part } } : cue,
	);
	return { ...song, cues };
}
