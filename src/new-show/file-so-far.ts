// The file as it grows: its lines, and which of them the last answer changed.

import { cleanText } from '../base/clean-text.ts';
import { addToShowFile } from '../setlist/add-to-file.ts';
import type { ShowDraft } from '../setlist/show-draft.ts';
import { writeShowFile } from '../setlist/write-show-file.ts';
import type { Making, Place } from './making.ts';

export type FileSoFar = {
	readonly lines: readonly string[];
	/** Indexes of the lines that are new: from, and before this one. */
	readonly newFrom: number;
	readonly newTo: number;
	/** The line to be seen above all. */
	readonly at: number;
};

const WRITTEN = new WeakMap<ShowDraft, readonly string[]>();

/** The text of the file that would be written now; null where what is added has no place in the one that is there. */
export function fileText({ draft, adding }: Making): string | null {
	if (!adding) return writeShowFile(draft);
	const { instruments, songs, set } = adding.draft;
	return addToShowFile(adding.text, {
		...draft,
		players: [],
		instruments: draft.instruments.slice(instruments.length),
		songs: draft.songs.slice(songs.length),
		set: draft.set.slice(set.length),
		remarks: [],
	});
}

function linesOf(making: Making): readonly string[] {
	const known = WRITTEN.get(making.draft);
	if (known) return known;
	const text = fileText(making) ?? making.adding?.text ?? '';
	const lines = text.trimEnd().split('\n').map(cleanText);
	WRITTEN.set(making.draft, lines);
	return lines;
}

/** The file that would be written now, beside the one before the last answer. */
export function fileSoFar(making: Making, before: Making): FileSoFar {
	const lines = linesOf(making);
	const old = linesOf(before);
	const most = Math.min(lines.length, old.length);
	let newFrom = 0;
	while (newFrom < most && lines[newFrom] === old[newFrom]) newFrom += 1;
	let same = 0;
	while (same < most - newFrom && lines.at(-1 - same) === old.at(-1 - same)) same += 1;
	const newTo = lines.length - same;
	return { lines, newFrom, newTo, at: newTo > newFrom ? newTo - 1 : askedAbout(making, lines) };
}

/** A few lines below what is asked about, so that it is seen whole; the end where it is not there yet. */
function askedAbout({ draft, place, adding }: Making, lines: readonly string[]): number {
	const isOfShow = OF_SHOW.includes(place.ask);
	const song = place.ask === 'hands' ? draft.songs[place.song] : undefined;
	// What is added goes behind the last of its part, and that may stand far above the end.
	const part = OF_RACK.includes(place.ask)
		? draft.instruments
		: OF_SONGS.includes(place.ask)
			? draft.songs
			: [];
	const id = song?.id ?? (adding ? part.at(-1)?.id : undefined);
	const at = isOfShow
		? lines.indexOf('show:')
		: lines.findLastIndex((line) => id !== undefined && ENTRY.exec(line)?.[1] === id);
	return at < 0 ? lines.length - 1 : Math.min(lines.length - 1, at + (isOfShow ? 5 : 2));
}

/** How an entry of a list begins, on lines of its own or on one. */
const ENTRY = /^\s*-\s+\{?\s*id:\s*["']?([^"',}\s]+)/;
const OF_RACK: readonly Place['ask'][] = ['instrument', 'kind', 'tuning', 'whose'];
const OF_SONGS: readonly Place['ask'][] = ['song', 'length'];
const OF_SHOW: readonly Place['ask'][] = ['title', 'venue', 'date', 'start', 'curfew'];
