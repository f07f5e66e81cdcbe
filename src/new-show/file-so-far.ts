// The file as it grows: its lines, and which of them the last answer changed.

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

function linesOf(draft: ShowDraft): readonly string[] {
	const known = WRITTEN.get(draft);
	if (known) return known;
	const lines = writeShowFile(draft).trimEnd().split('\n');
	WRITTEN.set(draft, lines);
	return lines;
}

/** The file that would be written now, beside the one before the last answer. */
export function fileSoFar(making: Making, before: Making): FileSoFar {
	const lines = linesOf(making.draft);
	const old = linesOf(before.draft);
	const most = Math.min(lines.length, old.length);
	let newFrom = 0;
	while (newFrom < most && lines[newFrom] === old[newFrom]) newFrom += 1;
	let same = 0;
	while (same < most - newFrom && lines.at(-1 - same) === old.at(-1 - same)) same += 1;
	const newTo = lines.length - same;
	return { lines, newFrom, newTo, at: newTo > newFrom ? newTo - 1 : askedAbout(making, lines) };
}

/** A few lines below what is asked about, so that it is seen whole; the end where it is not there yet. */
function askedAbout({ draft, place }: Making, lines: readonly string[]): number {
	const song = place.ask === 'hands' ? draft.songs[place.song] : undefined;
	const isOfShow = OF_SHOW.includes(place.ask);
	const at = isOfShow ? lines.indexOf('show:') : song ? lines.indexOf(`  - id: ${song.id}`) : -1;
	return at < 0 ? lines.length - 1 : Math.min(lines.length - 1, at + (isOfShow ? 5 : 2));
}

const OF_SHOW: readonly Place['ask'][] = ['title', 'venue', 'date', 'start', 'curfew'];
