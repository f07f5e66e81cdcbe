// What entries about songs do: begun, stepped through, ended, chosen to come next.

import { cueIndex, cuePoints } from '../../machines/song.ts';
import { songAtPoint, songBegun } from '../../machines/song-machine.ts';
import type { Entry } from '../journal/entry.ts';
import { newItem } from './apply-set.ts';
import { aboveSong } from './cells.ts';
import { findSong, findSongItem, keyAfter, songOnNow } from './find.ts';
import { setBoards } from './move-parts.ts';
import type { ListItem, Run, Session } from './session.ts';
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
			song: songBegun(song),
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

/** The session at this cue point of the song that is on. */
export function reachCue(session: Session, index: number): Session {
	const on = songOnNow(session);
	if (!on || session.song === null) return session;
	if (cueIndex(session.song) === null) return session;
	const state = songAtPoint(on.song, index);
	const reached = cueIndex(state);
	return setBoards(
		{ ...session, song: state },
		reached === null ? {} : (cuePoints(on.song)[reached]?.boards ?? {}),
	);
}

/** The session with the song that is on ended, and what stands after it come. */
export function endSong(session: Session, end: { endedAtMs: number; how: Run['how'] }): Session {
	if (session.phase.value !== 'song') return session;
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
			phaseSinceMs: end.endedAtMs,
			next: nextAfter(ended, stands),
			// The same song may be played again, and then its hand-overs are to be made.
			settled: { item: null, players: {} },
		},
		{ type: 'songEnded', ahead: stands },
	);
}

/** The session with this song to come next; one from off the list takes the place of that before which it is put. */
export function chooseNext(session: Session, entry: Extract<Entry, { k: 'next-chosen' }>): Session {
	let list = session.list;
	if (entry.inserted) {
		const { song, before } = entry.inserted;
		const displaced = list.find((item) => item.key === before);
		const isEncore = displaced?.kind === 'song' && displaced.isEncore;
		const inserted = {
			...newItem(entry.item, song, isEncore),
			above: aboveSong(session.show, song),
		};
		const at = displaced ? list.indexOf(displaced) : list.length;
		const rest = list
			.slice(at)
			.map((item) =>
				item === displaced && item.kind === 'song' ? { ...item, isPassedOver: true } : item,
			);
		list = [...list.slice(0, at), inserted, ...rest];
	} else {
		list = list.map((item) =>
			item.key === entry.item && item.kind === 'song'
				? { ...item, isPassedOver: false, isDropped: false }
				: item,
		);
	}
	const chosen = { ...session, list, next: entry.item };
	return session.phase.value === 'song'
		? chosen
		: moveShow(chosen, { type: 'nextChosen', ahead: ahead(chosen) });
}

function changeItem(
	session: Session,
	key: string | null,
	change: (item: ListItem) => ListItem,
): Session {
	return { ...session, list: session.list.map((item) => (item.key === key ? change(item) : item)) };
}
