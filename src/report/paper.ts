// Texts set on lines of so many columns, as they go on paper and on a phone held sideways.

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

/** A table of which no line is wider than paper: what does not fit is cut. */
export function paperTable(
	names: readonly string[],
	rows: readonly (readonly string[])[],
): readonly string[] {
	return textTable(names, rows).map((line) =>
		fitWidth(line, Math.min(PAPER_COLUMNS, displayWidth(line))),
	);
}
