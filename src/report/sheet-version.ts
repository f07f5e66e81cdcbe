// Which printing of a run sheet this is: a short hash of what it says, and what it says otherwise than the last one
// that was printed, so that a stale sheet is recognised.

import {
	addedSong,
	changedClock,
	changedSong,
	droppedSong,
	movedSong,
	NO_LONGER,
	noteWords,
	SHEET,
} from '../words/paper.ts';
import { changeText, pointText } from './run-sheet.ts';
import { sha256 } from './sha256.ts';
import type { Sheet, SheetSong } from './sheet.ts';

/** What a sheet says of one song, kept to be compared with the next printing. */
export type SaidSong = {
	readonly key: string;
	/** `3 Gravel`. */
	readonly name: string;
	readonly clock: string;
	readonly said: readonly string[];
};

/** Of every song that is still to come. */
export function saidBy(sheet: Sheet): readonly SaidSong[] {
	return songsOf(sheet).map((row) => ({
		key: row.key,
		name: nameOf(row),
		clock: row.clock ?? '',
		said: [
			...row.changes.map(changeText),
			...row.points.map((point) => pointText(point, false)).filter((text) => text !== ''),
			`${SHEET.gap} ${row.gap ?? SHEET.free}`,
			`${SHEET.ends} ${row.ends}`,
			...(row.starts === '' ? [] : [row.starts]),
			...(row.notes === null ? [] : [noteWords(row.notes)]),
		],
	}));
}

function songsOf({ rows }: Sheet): readonly SheetSong[] {
	return rows.filter((row) => row.kind === 'song').filter(({ isDone }) => !isDone);
}

function nameOf({ position, title }: SheetSong): string {
	return `${position} ${title}`;
}

/** Six characters that are others as soon as anything on the sheet is. */
export function sheetHash({ show, before, rows, warnings, rack, radio }: Sheet): string {
	const { title, venue, date, startMinutes, curfewMinutes, notes } = show;
	const facts = [title, venue, date, startMinutes, curfewMinutes, notes];
	const text = JSON.stringify([facts, before, rows, warnings, rack, radio]);
	return sha256(text, 'hex').slice(0, 6).toUpperCase();
}

/** What is new, gone, moved or otherwise since the last printing: the songs' keys with it, null for those gone. */
export type SheetDifference = {
	readonly key: string | null;
	readonly text: string;
	readonly isNew: boolean;
};

/** What the sheet says otherwise than before, in its own order; what was dropped comes last. */
export function differencesSince(
	before: readonly SaidSong[],
	sheet: Sheet,
): readonly SheetDifference[] {
	const now = saidBy(sheet);
	const old = new Map(before.map((song) => [song.key, song]));
	const kept = new Set(now.map(({ key }) => key));
	const inPlace = inOrder(
		before.map(({ key }) => key).filter((key) => kept.has(key)),
		now.map(({ key }) => key).filter((key) => old.has(key)),
	);
	const songs = now.flatMap(({ key, name, said }): readonly SheetDifference[] => {
		const was = old.get(key);
		if (was === undefined) return [{ key, text: addedSong(name), isNew: true }];
		const fresh = said.filter((text) => !was.said.includes(text));
		const gone = was.said.filter((text) => !said.includes(text) && !isReplaced(text, fresh));
		const texts = [...fresh, ...gone.map((text) => `${NO_LONGER} ${text}`)];
		return [
			...(inPlace.has(key) ? [] : [{ key, text: movedSong(was.name, name), isNew: false }]),
			...(texts.length === 0
				? []
				: [{ key, text: changedSong(name, texts.join('; ')), isNew: false }]),
		];
	});
	const moved = now.find(({ key, clock }) => {
		const was = old.get(key);
		return was !== undefined && was.clock !== clock;
	});
	// What is on the list and not to come is played, not dropped.
	const listed = new Set(sheet.rows.map((row) => (row.kind === 'song' ? row.key : null)));
	const dropped = before
		.filter(({ key }) => !listed.has(key))
		.map(({ name }) => ({ key: null, text: droppedSong(name), isNew: false }));
	const clocks =
		moved === undefined ? [] : [{ key: null, text: changedClock(moved.name), isNew: false }];
	return [...songs, ...dropped, ...clocks];
}

/** `gap 0:15` says enough where `gap 0:30` is gone, and what a player has now where it was another. */
function isReplaced(gone: string, fresh: readonly string[]): boolean {
	const [about] = gone.split(' ');
	return fresh.some((text) => text.split(' ')[0] === about);
}

/** The longest run of keys that stands in the same order in both: all others were moved. */
function inOrder(one: readonly string[], other: readonly string[]): ReadonlySet<string> {
	const places = one.map((key) => other.indexOf(key));
	const best: { readonly length: number; readonly from: number }[] = [];
	places.forEach((place, at) => {
		let from = -1;
		for (let before = 0; before < at; before += 1) {
			const isBelow = (places[before] ?? 0) < place;
			if (isBelow && (from < 0 || (best[before]?.length ?? 0) > (best[from]?.length ?? 0)))
				from = before;
		}
		best.push({ length: (best[from]?.length ?? 0) + 1, from });
	});
	const run = new Set<string>();
	let at = best.findIndex(({ length }) => length === Math.max(...best.map((each) => each.length)));
	while (at >= 0) {
		run.add(one[at] ?? '');
		at = best[at]?.from ?? -1;
	}
	return run;
}
