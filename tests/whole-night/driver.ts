// Plays the club show through a real terminal, as hands would, and looks at the journal from outside
// between the keys. What to press next is decided from what the journal says, so that a program killed
// at any moment is simply gone on with.

import { join } from 'node:path';
import { nightOnDisk } from '../../src/cli/nights/night-on-disk.ts';
import { listNights } from '../../src/disk/nights-folder.ts';
import { realDisk } from '../../src/disk/real-disk.ts';
import type { Entry } from '../../src/journal/entry.ts';
import type { JournalRecord } from '../../src/journal/record.ts';
import { findSongItem, songOnNow } from '../../src/session/find.ts';
import { openSession } from '../../src/session/open-session.ts';
import type { Session } from '../../src/session/session.ts';
import { effectiveRecords, extend, openTimeline, sessionOf } from '../../src/session/timeline.ts';
import { type PtyScreen, pause, startPtyScreen } from '../terminal/pty-screen.ts';

const FOLDER = join(import.meta.dirname, '../..');

/** What the journal on the disk says now. */
export type Seen = { readonly session: Session; readonly records: readonly JournalRecord<Entry>[] };

export function lookAtJournal(data: string): Seen {
	const folders = [join(data, 'nights')];
	const [latest] = listNights(realDisk, folders).nights;
	if (!latest) throw new Error('no night is recorded');
	const night = nightOnDisk(folders, latest.id);
	if (!night.show) throw new Error('the night has lost its show');
	const timeline = night.records.reduce(extend, openTimeline(openSession(night.show)));
	return { session: sessionOf(timeline), records: night.records };
}

export function startRun(data: string): PtyScreen {
	return startPtyScreen({
		command: process.execPath,
		args: ['dist/rackside.js', 'run', 'shows/club.yaml'],
		env: { RACKSIDE_DATA: data },
		folder: FOLDER,
		columns: 80,
		rows: 24,
	});
}

/** Something to do that takes one or more keys, until the journal shows it done. */
export type Gesture = {
	readonly keys: readonly string[];
	readonly isDone: (seen: Seen) => boolean;
};

const has = (seen: Seen, test: (entry: Entry) => boolean): boolean =>
	effectiveRecords(seen.records).some(
		({ record, isTakenBack }) => !isTakenBack && record.e.some(test),
	);

/** The moments of the night beyond its steps: at which song, and what to press. */
export function gestureAt({ session, records }: Seen): Gesture | null {
	const seen = { session, records };
	const position = session.list.findIndex(({ key }) => key === session.current) + 1;
	const isSong = songOnNow(session) !== null;
	const incidents = session.incidents.length;
	const broke = (id: number) => (now: Seen) => now.session.incidents.length >= id;
	const isAnswered = (id: string) => (now: Seen) =>
		now.session.incidents.find((one) => one.id === id)?.isOpen === false;
	if (session.phase.value === 'before' && !has(seen, ({ k }) => k === 'made-ready')) {
		return { keys: ['t', '0'], isDone: (now) => has(now, ({ k }) => k === 'made-ready') };
	}
	const open = session.incidents.find(({ isOpen }) => isOpen);
	if (open) return { keys: ['enter'], isDone: isAnswered(open.id) };
	if (isSong && position === 3 && incidents === 0) return { keys: ['b', '1'], isDone: broke(1) };
	if (isSong && position === 12 && incidents === 1) {
		const holds = session.players.ash?.holds;
		const slot = session.show.instruments.find(({ id }) => id === holds)?.slot ?? '1';
		return { keys: ['b', slot], isDone: broke(2) };
	}
	if (isSong && position === 3 && session.incidents[0]?.string === null) {
		return { keys: ['e', '3', 'enter'], isDone: (now) => now.session.incidents[0]?.string === 3 };
	}
	const oldMill = session.show.songs.find(({ title }) => title === 'Old Mill')?.id;
	if (isSong && position === 5 && !has(seen, (entry) => entry.k === 'next-chosen')) {
		return {
			keys: ['j', 'o', 'l', 'd', 'enter'],
			isDone: (now) =>
				has(now, (entry) => entry.k === 'next-chosen' && entry.inserted?.song === oldMill),
		};
	}
	if (
		isSong &&
		position === 8 &&
		!has(seen, (entry) => entry.k === 'song-ended' && entry.how === 'skipped')
	) {
		return {
			keys: ['right'],
			isDone: (now) => has(now, (entry) => entry.k === 'song-ended' && entry.how !== 'played'),
		};
	}
	const boards = Object.keys(session.boards);
	if (isSong && position >= 2 && !has(seen, ({ k }) => k === 'pedal-corrected')) {
		const letter = session.show.players.find(({ id }) => id === 'bo')?.key ?? 'b';
		return {
			keys: boards.length > 1 ? ['o', letter, '2'] : ['o', '2'],
			isDone: (now) => has(now, ({ k }) => k === 'pedal-corrected'),
		};
	}
	const memos = records.flatMap(({ e }) => e).filter(({ k }) => k === 'memo-written').length;
	if (isSong && position % 4 === 0 && memos < position / 4) {
		return {
			keys: ['m', 'o', 'k', 'enter'],
			isDone: (now) =>
				now.records.flatMap(({ e }) => e).filter(({ k }) => k === 'memo-written').length > memos,
		};
	}
	if (session.phase.value === 'over' || session.phase.value === 'packed') return null;
	return { keys: ['space'], isDone: (now) => now.records.length > records.length };
}

/** The same key may not follow itself faster than this, or it counts once. */
export const KEY_APART_MS = 310;

/** What the screen must show of a session: the song that is on, and on the pegs who holds what. */
export function wordsOf(session: Session): readonly string[] {
	const on = songOnNow(session);
	const current = findSongItem(session, session.current);
	const title = current && session.show.songs.find(({ id }) => id === current.song)?.title;
	// The backups of a break lie over the song and the keys.
	if (session.incidents.some(({ isOpen }) => isOpen)) return ['STRING BREAK'];
	const held = session.show.players.flatMap(({ id, name }) => {
		const holds = session.players[id]?.holds;
		const slot = session.show.instruments.find((one) => one.id === holds)?.slot;
		const isBroken = session.instruments[holds ?? '']?.context.stringsDown.length !== 0;
		return slot ? [`${slot.toUpperCase()} ${isBroken ? 'x' : ' '} ${name}`] : [];
	});
	return ['? all', ...(on && title ? [title] : []), ...held];
}

/** Waits until the screen shows the words; says what stood there when it does not. */
export async function mustShow(screen: PtyScreen, words: readonly string[]): Promise<void> {
	await screen.waitFor(
		(rows) => words.every((word) => rows.some((row) => row.includes(word))),
		8000,
	);
}

export { pause };
