// Where a song goes straight on into the next one. A segue is written into a song for the one that follows it
// in the file's list; with any other after it, it ends like all songs.

import { findSong } from './find.ts';
import type { Session, SongItem } from './session.ts';

/**
 * Whether this item of the list goes straight on into that one.
 *
 * @example
 * isSegue(session, session.list[0], session.list[1]) // => false
 */
export function isSegue(session: Session, before: SongItem, next: SongItem): boolean {
	if (findSong(session, before.song)?.ends !== 'segue' || (next.gapSeconds ?? 0) > 0) return false;
	const { set } = session.show;
	return set.some((item, place) => {
		const after = set[place + 1];
		return (
			item.kind === 'song' &&
			item.song === before.song &&
			after?.kind === 'song' &&
			after.song === next.song
		);
	});
}

/** The song that the one on now goes straight on into; null where it just ends. */
export function segueItem(session: Session, on: SongItem): SongItem | null {
	const next = session.list.find(({ key }) => key === session.next);
	return next?.kind === 'song' && isSegue(session, on, next) ? next : null;
}
