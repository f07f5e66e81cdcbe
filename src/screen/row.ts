// One line of a drawn screen as pieces of text with a style each, and the few ways of cutting and
// placing such lines. Everything drawn is made of these, so that no line is ever too wide.

import { cleanText } from '../base/clean-text.ts';
import { displayWidth, fitWidth } from '../base/display-width.ts';

/**
 * `accent` is for "act now" only; `unready` for what is stale, not ready or broken and can wait;
 * `bright` for the few cells that the eye shall find first; `title` names a place on the screen, and
 * `dim` is what need not be read. What a style means is told by its words too.
 */
export type SpanStyle = 'plain' | 'dim' | 'title' | 'bright' | 'unready' | 'accent';

export type Span = { readonly text: string; readonly style: SpanStyle };

/** Pieces from left to right. */
export type Row = readonly Span[];

/** How many cells and lines there are to draw in. */
export type Area = { readonly columns: number; readonly rows: number };

/** A piece of text, cleaned of everything that could move a cursor. */
export function span(text: string, style: SpanStyle = 'plain'): Span {
	return { text: cleanText(text), style };
}

// Tall letters are most of what is not ASCII, and one cell each: asking for less each time halves
// the time that a large screen takes.
const ONE_CELL_EACH = /^[\x20-\x7e▀▄█▌▐▖▗▘▝▙▛▜▟▚▞…]*$/;

function cellsOf(text: string): number {
	return ONE_CELL_EACH.test(text) ? text.length : displayWidth(text);
}

/** The cells that the row fills. */
export function rowWidth(row: Row): number {
	return row.reduce((width, { text }) => width + cellsOf(text), 0);
}

/** The row's words without their styles. */
export function rowText(row: Row): string {
	return row.map(({ text }) => text).join('');
}

/** The rows as text, a line each, without blanks at their ends. */
export function screenText(rows: readonly Row[]): string {
	return rows.map((row) => rowText(row).trimEnd()).join('\n');
}

/** The row, at most so many cells wide; what is cut away is marked. */
export function cutRow(row: Row, columns: number): Row {
	if (rowWidth(row) <= columns) return row;
	const kept: Span[] = [];
	let used = 0;
	for (const [index, piece] of row.entries()) {
		const width = cellsOf(piece.text);
		const isLast = row.slice(index + 1).every(({ text }) => text.trim() === '');
		if (used + width < columns || (isLast && used + width <= columns)) {
			kept.push(piece);
			used += width;
			continue;
		}
		// One more letter makes sure that a piece that just fits is marked as cut too.
		const text = fitWidth(isLast ? piece.text : `${piece.text}x`, columns - used);
		return text === '' ? kept : [...kept, { text, style: piece.style }];
	}
	return kept;
}

/** The row, exactly so many cells wide. */
export function fillRow(row: Row, columns: number): Row {
	const missing = columns - rowWidth(row);
	if (missing === 0) return row;
	if (missing > 0) return [...row, { text: ' '.repeat(missing), style: 'plain' }];
	const short = cutRow(row, columns);
	// What was cut may end a cell early, before half of a wide letter.
	return rowWidth(short) < columns ? fillRow(short, columns) : short;
}

/** Rows placed at fixed columns, left to right; each ends a cell before the next begins. */
export function placeAt(
	columns: number,
	placed: readonly (readonly [at: number, row: Row])[],
): Row {
	const inside = placed.filter(([at]) => at < columns);
	return inside.flatMap(([at, row], index) => {
		const next = inside[index + 1]?.[0];
		const lead = index === 0 && at > 0 ? [span(' '.repeat(at))] : [];
		if (next === undefined) return [...lead, ...cutRow(row, columns - at)];
		const width = Math.max(0, next - at);
		return [...lead, ...fillRow(cutRow(row, Math.max(0, width - 1)), width)];
	});
}

/** Two blocks of rows side by side, the right one beginning at column `at`. */
export function beside(left: readonly Row[], right: readonly Row[], at: number): Row[] {
	return Array.from({ length: Math.max(left.length, right.length) }, (_, index) => [
		...fillRow(left[index] ?? [], at),
		...(right[index] ?? []),
	]);
}

/** Exactly so many rows: cut at the end, or blank ones added. */
export function fillRows(rows: readonly Row[], count: number): Row[] {
	return Array.from({ length: Math.max(0, count) }, (_, index) => rows[index] ?? []);
}

/** The text on as many lines of this width as are allowed; the last one is cut when more is left. */
export function wrapWords(text: string, { columns, rows }: Area): string[] {
	const lines: string[] = [];
	for (const word of text.split(' ').filter((one) => one !== '')) {
		const last = lines[lines.length - 1];
		const longer = last === undefined ? word : `${last} ${word}`;
		const isFull = lines.length === rows;
		if (last !== undefined && (isFull || displayWidth(longer) <= columns)) {
			lines[lines.length - 1] = longer;
		} else if (!isFull) lines.push(word);
	}
	return lines.map((line) => (displayWidth(line) > columns ? fitWidth(line, columns) : line));
}
