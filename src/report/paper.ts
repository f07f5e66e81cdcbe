// Texts set on lines of so many columns, as they go on paper and on a phone held sideways.

import { cleanText } from '../base/clean-text.ts';
import { displayWidth, fitWidth } from '../base/display-width.ts';
import { textTable } from '../base/text-table.ts';

/** A terminal's and a page's columns. */
export const PAPER_COLUMNS = 80;

/** Whole words on lines of at most `width` cells, each line indented; a word too long is cut. */
export function wrapped(text: string, width: number, indent: string): string[] {
	const lines: string[] = [];
	for (const word of text.split(' ')) {
		const last = lines.at(-1);
		const room = width - indent.length;
		if (last !== undefined && displayWidth(last) + 1 + displayWidth(word) <= room) {
			lines[lines.length - 1] = `${last} ${word}`;
		} else lines.push(fitWidth(word, Math.min(room, displayWidth(word))));
	}
	return lines.map((line) => indent + line);
}

/** Narrower than this a column of words is no column. */
const LEAST_WRAPPED_COLUMNS = 16;

/** A table of which no line is wider than paper: the last column goes on below itself, what does not fit so is cut. */
export function paperTable(
	names: readonly string[],
	rows: readonly (readonly string[])[],
): readonly string[] {
	const before = [names, ...rows].map((row) => row.slice(0, names.length - 1));
	const at = before[0]?.reduce(
		(columns, _, place) =>
			columns + 2 + Math.max(...before.map((row) => displayWidth(cleanText(row[place] ?? '')))),
		0,
	);
	const room = PAPER_COLUMNS - (at ?? 0);
	const isWrapped = room >= LEAST_WRAPPED_COLUMNS;
	const whole = rows.flatMap((row) => {
		const words = cleanText(row[names.length - 1] ?? '');
		if (!isWrapped || displayWidth(words) <= room) return [row];
		const [first = '', ...more] = wrapped(words, room, '');
		return [
			[...row.slice(0, names.length - 1), first],
			...more.map((line) => [...names.slice(1).map(() => ''), line]),
		];
	});
	return textTable(names, whole).map((line) =>
		fitWidth(line, Math.min(PAPER_COLUMNS, displayWidth(line))),
	);
}
