// The two lowest places: the answer to the last key with what must never be missed, and the keys that
// work now.

import { keyOfAction } from '../keys/key-choices.ts';
import type { KeyWords } from '../keys/prompt-view.ts';
import { lockedWords, PLACES, smallWords } from '../words/stage.ts';
import { lastSection } from './last-section.ts';
import { type Area, cutRow, fillRow, placeAt, type Row, rowWidth, span, wrapWords } from './row.ts';
import type { ScreenState } from './screen-state.ts';
import { storageMark } from './storage.ts';

/** From here on everything that belongs on the screen is on it. */
const COMPLETE: Area = { columns: 80, rows: 24 };

/** Below this height every row is needed more than the end of a long answer. */
const LEAST_ROWS_FOR_TWO = 12;

/** The answer to the last key, on two rows if it needs them; at the right what must be seen in every view and size. */
export function messageRows(state: ScreenState, area: Area): Row[] {
	const { columns, rows } = area;
	const marks = marksRow(state, area);
	const at = columns - rowWidth(marks);
	const text = state.isLocked
		? lockedWords(keyOfAction('lock', state.preferences.keys))
		: (state.message ?? '');
	// The views that have no place of its own for it show here what the last step was.
	if (text === '' && state.view !== 'stage' && state.prompt === null) {
		return [[...fillRow(lastSection(state, { columns: at, rows: 1 })[0] ?? [], at), ...marks]];
	}
	// Where both do not fit, an answer goes before the marks: it is gone with the next key.
	if (at < 20 && text !== '') return [cutRow([span(text, 'bright'), ...marks], columns)];
	if (at <= 0) return [cutRow(marks, columns)];
	const most = rows < LEAST_ROWS_FOR_TWO ? 1 : 2;
	const lines = wrapWords(text, { columns: at - 1, rows: most });
	return (lines.length === 0 ? [''] : lines).map((line, index, all) =>
		placeAt(columns, [
			[0, [span(line, 'bright')]],
			...(index === all.length - 1 ? [[at, marks] as const] : []),
		]),
	);
}

/** What must be seen in every view and size. */
export function marksRow(state: ScreenState, { columns, rows }: Area): Row {
	const isSmall = columns < COMPLETE.columns || rows < COMPLETE.rows;
	const storage = storageMark(state);
	const tags = [
		...(state.isRehearsal ? [PLACES.rehearsal] : []),
		...(state.follows ? [PLACES.follows] : []),
		...(isSmall ? [smallWords(`${COMPLETE.columns}x${COMPLETE.rows}`, columns < 30)] : []),
	];
	const marks = tags.map((tag) => span(`  ${tag}`, 'title'));
	return storage === null ? marks : [span(`  ${storage.label}`, storage.style), ...marks];
}

/** As many keys as fit, most needed first; the one that shows all of them, or leaves a question, always has its place. */
export function footerRows(keys: readonly KeyWords[], { columns, rows }: Area): Row[] {
	const all = keys.find(({ key }) => key === '?') ?? keys.find(({ key }) => key === 'esc');
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

/** The line with that key: with its words where they fit, never cut itself. */
function withAll(line: Row, all: KeyWords, columns: number): Row {
	const whole = keySpans(all);
	const item = line.length > 0 && rowWidth(whole) + 6 > columns ? [span(all.key)] : whole;
	if (line.length === 0) return item;
	return [...cutRow(line, Math.max(0, columns - rowWidth(item) - 2)), span('  '), ...item];
}

function keySpans({ key, words }: KeyWords): Row {
	return [span(key), span(` ${words}`, 'dim')];
}
