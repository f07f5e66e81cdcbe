// The two lowest places: the answer to the last key with what must never be missed, and the keys that
// work now.

import type { KeyWords } from '../keys/prompt-view.ts';
import { type Area, cutRow, placeAt, type Row, rowWidth, span } from './row.ts';
import type { ScreenState } from './screen-state.ts';
import { saveProblem } from './status-section.ts';

/** From here on everything that belongs on the screen is on it. */
const COMPLETE: Area = { columns: 80, rows: 24 };

/** The answer to the last key; at the right what must be seen in every view and size. */
export function messageRow(state: ScreenState, { columns, rows }: Area): Row {
	const isSmall = columns < COMPLETE.columns || rows < COMPLETE.rows;
	const tags = [
		...(saveProblem(state) === null ? [] : ['NOT SAVED']),
		...(state.isRehearsal ? ['REHEARSAL'] : []),
		...(isSmall
			? [columns < 30 ? 'small' : `small: ${COMPLETE.columns}x${COMPLETE.rows} shows all`]
			: []),
	];
	const marks = tags.map((tag) => span(`  ${tag}`, tag === 'NOT SAVED' ? 'accent' : 'title'));
	const left = state.isLocked
		? [span('LOCKED: l, then esc, unlocks', 'bright')]
		: [span(state.message ?? '', 'bright')];
	const at = columns - rowWidth(marks);
	// Where both do not fit, an answer goes before the marks: it is gone with the next key.
	if (at < 20 && (state.isLocked || state.message !== null))
		return cutRow([...left, ...marks], columns);
	return at <= 0
		? cutRow(marks, columns)
		: placeAt(columns, [
				[0, left],
				[at, marks],
			]);
}

/** As many keys as fit, most needed first; the one that shows all of them always has its place. */
export function footerRows(keys: readonly KeyWords[], { columns, rows }: Area): Row[] {
	const all = keys.find(({ key }) => key === '?');
	const rest = keys.filter((one) => one !== all);
	const lines: Row[] = [];
	let line: Row = [];
	let isFull = false;
	for (const one of rest) {
		const item = keySpans(one);
		const isLastLine = lines.length === rows - 1;
		const reserved = isLastLine && all ? rowWidth(keySpans(all)) + 2 : 0;
		if (line.length > 0 && rowWidth(line) + 2 + rowWidth(item) > columns - reserved) {
			if (isLastLine) {
				isFull = true;
				break;
			}
			lines.push(line);
			line = [];
		}
		line = line.length === 0 ? item : [...line, span('  '), ...item];
	}
	if (all) {
		const isCrowded = line.length > 0 && rowWidth(line) + 2 + rowWidth(keySpans(all)) > columns;
		if (isCrowded && !isFull && lines.length < rows - 1) {
			lines.push(line);
			line = [];
		}
		line = withAll(line, all, columns);
	}
	return [...lines, line].slice(0, rows).map((one) => cutRow(one, columns));
}

/** The line with the key that shows all: with its words where they fit, never cut itself. */
function withAll(line: Row, all: KeyWords, columns: number): Row {
	const whole = keySpans(all);
	const item = line.length > 0 && rowWidth(whole) + 6 > columns ? [span(all.key)] : whole;
	if (line.length === 0) return item;
	return [...cutRow(line, Math.max(0, columns - rowWidth(item) - 2)), span('  '), ...item];
}

function keySpans({ key, words }: KeyWords): Row {
	return [span(key), span(` ${words}`, 'dim')];
}
