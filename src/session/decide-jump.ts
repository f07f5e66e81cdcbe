// The command that makes another song the next one. The list goes on after it, so what is on the list stands
// where it stands, and what is not is put in.

import type { Entry } from '../journal/entry.ts';
import type { Command } from './command.ts';
import { type Decision, no, yes } from './decision.ts';
import { findSong, findSongItem, isBehind, nextSongItem } from './find.ts';
import type { Session, SongItem } from './session.ts';
import { comingItems } from './set-places.ts';

/** Before a song put in: common practice, no source. */
const PUT_IN_GAP_SECONDS = 15;

/** Another song next: the list's own where it was not played yet, else from off it or once more. */
export function chooseNext(
	session: Session,
	{ song: id, place = 'before-next' }: Extract<Command, { do: 'choose-next' }>,
	atMs: number,
): Decision {
	const song = findSong(session, id);
	if (!song) return no({ code: 'unknown-song' });
	const next = nextSongItem(session);
	if (next?.song === id && findSongItem(session, session.next))
		return no({ code: 'next-already', song: id });
	const listed = notYetPlayed(session, id);
	if (listed !== null) {
		// One that was passed by is brought forward: nothing that came after it is played again or left out.
		const isPassed = listed.isPassedOver || isBehind(session, listed.key);
		const brought: readonly Entry[] = isPassed
			? [
					{
						k: 'song-moved',
						at: atMs,
						item: listed.key,
						before: session.next,
						isEncore: isInEncore(session),
					},
				]
			: [];
		return yes(...brought, { k: 'next-chosen', at: atMs, item: listed.key });
	}
	const inserted =
		place === 'instead-of-next'
			? { song: id, before: next?.key ?? null }
			: { song: id, before: session.next, gapSeconds: PUT_IN_GAP_SECONDS };
	return yes({ k: 'next-chosen', at: atMs, inserted });
}

/** The first of these that is to come; else one that was passed by. */
function notYetPlayed(session: Session, song: string): SongItem | null {
	const coming = comingItems(session);
	const places = session.list.filter(
		(item): item is SongItem => item.kind === 'song' && item.song === song,
	);
	const isOpen = ({ key, runs }: SongItem): boolean =>
		key !== session.current && runs.every(({ how }) => how === 'skipped');
	return places.find((item) => coming.includes(item)) ?? places.find(isOpen) ?? null;
}

/** Whether what comes directly after what is on belongs to the encore. */
function isInEncore(session: Session): boolean {
	const following = findSongItem(session, session.next);
	const isBeforeEncore = following === null ? session.next === null : following.isEncore;
	return findSongItem(session, session.current)?.isEncore === true && isBeforeEncore;
}
