// What entries about songs do: begun, stepped through, ended, chosen to come next.

import type { Ahead } from '../../machines/show.ts';
import { cueIndex, cuePoints } from '../../machines/song.ts';
import { songAtPoint } from '../../machines/song-machine.ts';
import type { Entry } from '../journal/entry.ts';
import type { RecordId } from '../journal/record.ts';
import { newItem } from './apply-set.ts';
import { aboveSong } from './cells.ts';
import { findSong, findSongItem, keyAfter, nextSongItem, songOnNow } from './find.ts';
import { setBoards } from './move-parts.ts';
import { NONE_STAYING } from './open-session.ts';
import type { ListItem, Run, Session, SongItem } from './session.ts';
import { ahead, moveShow, nextAfter } from './show-phase.ts';

/** The session with this item of the list on. */
export function beginSong(session: Session, key: string, at: number): Session {
	const item = findSongItem(session, key);
	const song = item && findSong(session, item.song);
	if (!item || !song) return session;
	const run: Run = { beganAtMs: at, endedAtMs: null, how: null };
	const begun = moveShow(
		changeItem(session, key, (one) =>
			one.kind === 'song'
				? { ...one, isPassedOver: false, isDropped: false, runs: [...one.runs, run] }
				: one,
		),
		{ type: 'songBegan' },
	);
	return setBoards(
		{
			...begun,
			current: key,
			next: keyAfter(begun.list, key),
			song: songAtPoint(song, 0),
			zeroAtMs: session.zeroAtMs ?? at,
			phaseSinceMs: at,
			settled: { item: key, players: settledAhead(session, key) },
		},
		cuePoints(song)[0]?.boards ?? {},
	);
}

function settledAhead(session: Session, key: string): Session['settled']['players'] {
	if (session.settled.item !== key) return {};
	return Object.fromEntries(
		Object.entries(session.settled.players).filter(([, point]) => point === 0),
	);
}

/** Who was said to stay for the song that comes next is settled for it from here on; an interval takes all from hands. */
function staysAhead(session: Session, stands: Ahead): Partial<Session> {
	const { item, players } = session.staying;
	if (item === null || stands === 'interval' || nextSongItem(session)?.key !== item) return {};
	const settled = Object.fromEntries(players.map((player) => [player, 0]));
	return { settled: { item, players: settled }, staying: NONE_STAYING };
}

/** The session at this cue point of the song that is on. */
export function reachCue(
	session: Session,
	{ item, index }: Extract<Entry, { k: 'cue-reached' }>,
): Session {
	const on = songOnNow(session);
	if (!on || session.song === null) return session;
	if (item !== undefined && item !== on.item.key) return session;
	const state = songAtPoint(on.song, index);
	const reached = cueIndex(state);
	return setBoards({ ...session, song: state }, cuePoints(on.song)[reached]?.boards ?? {});
}

/** The session with the song that is on ended, and what stands after it come. */
export function endSong(
	session: Session,
	{ item: key, at, how }: Extract<Entry, { k: 'song-ended' }>,
): Session {
	if (session.phase.value !== 'song') return session;
	if (key !== undefined && key !== session.current) return session;
	const end = { endedAtMs: at, how };
	const ended = changeItem(session, session.current, (item) =>
		item.kind === 'song'
			? {
					...item,
					runs: item.runs.map((run) => (run.endedAtMs === null ? { ...run, ...end } : run)),
				}
			: item,
	);
	const stands = ahead(ended);
	return moveShow(
		{
			...ended,
			song: null,
			phaseSinceMs: at,
			next: nextAfter(ended, stands),
			// The same song may be played again, and then its hand-overs are to be made.
			settled: { item: null, players: {} },
			...staysAhead(ended, stands),
		},
		{ type: 'songEnded', ahead: stands },
	);
}

/** The session with this song to come next; one from off the list is put in, or takes the place of that before which it is put. */
export function chooseNext(
	session: Session,
	entry: Extract<Entry, { k: 'next-chosen' }>,
	of: RecordId,
): Session {
	const key = entry.item ?? of;
	let list = session.list;
	if (entry.inserted) {
		list = withInserted(session, key, entry.inserted);
	} else {
		list = list.map((item) =>
			item.key === key && item.kind === 'song'
				? { ...item, isPassedOver: false, isDropped: false }
				: item,
		);
	}
	// In the place of a song after an interval it leaves the interval before it.
	const before = entry.inserted?.before ?? session.next;
	const next = before === session.next ? key : session.next;
	const chosen = { ...session, list, next: entry.inserted ? next : key };
	return session.phase.value === 'song'
		? chosen
		: moveShow(chosen, { type: 'nextChosen', ahead: ahead(chosen) });
}

function withInserted(
	session: Session,
	key: string,
	{ song, before, gapSeconds }: NonNullable<Extract<Entry, { k: 'next-chosen' }>['inserted']>,
): readonly ListItem[] {
	const { list } = session;
	const found = list.findIndex((item) => item.key === before);
	const at = found < 0 ? list.length : found;
	const following = list[at];
	const isBeforeEncore = following?.kind === 'song' && following.isEncore;
	const isAfterEncore = findSongItem(session, session.current)?.isEncore === true;
	const isPutIn = gapSeconds !== undefined;
	const inserted: SongItem = {
		...newItem(
			key,
			song,
			isPutIn ? isAfterEncore && (isBeforeEncore || following === undefined) : isBeforeEncore,
		),
		gapSeconds: gapSeconds ?? null,
		above: aboveSong(session.show, song),
	};
	const displaced = isPutIn ? undefined : following;
	return [
		...list.slice(0, at),
		inserted,
		...list
			.slice(at)
			.map((item) =>
				item === displaced && item.kind === 'song' ? { ...item, isPassedOver: true } : item,
			),
	];
}

function changeItem(
	session: Session,
	key: string | null,
	change: (item: ListItem) => ListItem,
): Session {
	return { ...session, list: session.list.map((item) => (item.key === key ? change(item) : item)) };
}
