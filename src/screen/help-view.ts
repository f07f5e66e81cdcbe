// Every key with its words, and what the marks on the rack mean.

import { displayWidth } from '../base/display-width.ts';
import type { KeyWords } from '../keys/prompt-view.ts';
import { HEADINGS, helpPart } from '../words/views.ts';
import { legendRows } from './rack-view.ts';
import { type Area, beside, cutRow, fillRow, fillRows, type Row, span, wrapWords } from './row.ts';

/** A column narrower than this breaks the words too often to be read. */
const LEAST_COLUMNS = 50;
const LONGEST_WORDS_ROWS = 9;

/**
 * Keys read downwards, their words whole on as many lines as they need, then the marks. Where not
 * all fit, those from the picked one on; the heading says which.
 */
export function helpRows(
	help: readonly KeyWords[],
	picked: number,
	{ columns, rows }: Area,
): Row[] {
	const legend = legendRows(columns);
	const room = Math.max(1, rows - 1 - legend.length);
	const most = Math.max(1, Math.floor(columns / LEAST_COLUMNS));
	const keyColumns = Math.min(16, Math.max(0, ...help.map(({ key }) => displayWidth(key))) + 2);
	for (let across = 1; across <= most; across += 1) {
		const width = Math.floor(columns / across);
		const entries = help.map((one) => entryRows(one, keyColumns, width - 3));
		const first = across < most ? 0 : firstOf(entries, { picked, room, across });
		const blocks = inColumns(entries.slice(first), room, across);
		const count = blocks.reduce((sum, block) => sum + block.count, 0);
		if (across < most && count < help.length) continue;
		const isPart = count < help.length;
		const lines = blocks.reduce<readonly Row[]>(
			(left, block, column) =>
				beside(left, marked(block.rows, isPart ? entries[picked] : undefined), column * width),
			[],
		);
		const part = isPart ? [span(helpPart(first + 1, first + count, help.length), 'dim')] : [];
		const heading = [span(HEADINGS.keys, 'title'), ...part];
		const drawn = isPart ? fillRows(lines, room) : lines.slice(0, room);
		return [heading, ...drawn, ...legend].slice(0, rows).map((row) => cutRow(row, columns));
	}
	return [];
}

function entryRows({ key, words }: KeyWords, keyColumns: number, width: number): Row[] {
	const lines = wrapWords(words, {
		columns: Math.max(1, width - keyColumns),
		rows: LONGEST_WORDS_ROWS,
	});
	return lines.map((line, index) => [
		...fillRow([span(index === 0 ? key : '')], keyColumns),
		span(line, 'dim'),
	]);
}

/** Two cells before each row, with a mark before the entry that is picked. */
function marked(rows: readonly Row[], entry: readonly Row[] | undefined): Row[] {
	return rows.map((row) => [span(entry !== undefined && row === entry[0] ? '> ' : '  '), ...row]);
}

type Entries = readonly (readonly Row[])[];
type Block = { readonly rows: readonly Row[]; readonly count: number };

/** As many entries as fit, none divided between columns; one alone that is too tall is cut. */
function inColumns(entries: Entries, room: number, across: number): readonly Block[] {
	let next = 0;
	return Array.from({ length: across }, () => {
		const rows: Row[] = [];
		const from = next;
		for (let entry = entries[next]; entry !== undefined; entry = entries[next]) {
			if (rows.length > 0 && rows.length + entry.length > room) break;
			rows.push(...entry);
			next += 1;
		}
		return { rows, count: next - from };
	});
}

/** The first entry to show: the picked one, but none so late that rows stay empty at the end. */
function firstOf(
	entries: Entries,
	{
		picked,
		room,
		across,
	}: { readonly picked: number; readonly room: number; readonly across: number },
): number {
	const countFrom = (first: number) =>
		inColumns(entries.slice(first), room, across).reduce((sum, { count }) => sum + count, 0);
	let first = 0;
	while (first < picked && first + countFrom(first) < entries.length) first += 1;
	return first;
}
