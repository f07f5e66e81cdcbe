// What is to be done before the next show, on a terminal: a line each with its reason under it; where that is too much,
// the reason of the one that is picked below all.

import { KINDS, type TomorrowPage, tickOf, tomorrowTitle } from '../report/tomorrow-forms.ts';
import { lineWords, type TomorrowLine } from '../report/tomorrow-line.ts';
import { TOMORROW, TOMORROW_KEYS, TOMORROW_KINDS } from '../words/tomorrow.ts';
import { type DrawOptions, drawableRows } from './draw-screen.ts';
import { footerRows } from './footer.ts';
import { firstInSight } from './pane-window.ts';
import {
	type Area,
	fillRow,
	fillRows,
	type Row,
	rowWidth,
	type SpanStyle,
	span,
	wrapWords,
} from './row.ts';

export type TomorrowView = TomorrowPage & {
	/** Place of the picked line, from 0, in the order in which they are drawn. */
	readonly picked: number;
	/** Said below the lines; null for nothing. */
	readonly note: string | null;
};

/** Cells before a line's words: the mark and the box. */
const INDENT = 6;
/** Rows for a reason at the most. */
const WHY_ROWS = 2;

/** The lines in the order in which they are drawn. */
export function drawnOrder(lines: readonly TomorrowLine[]): readonly TomorrowLine[] {
	return KINDS.flatMap((kind) => lines.filter((line) => line.kind === kind));
}

/** Exactly as many rows as the terminal has, for any size from one cell up. */
export function drawTomorrow(view: TomorrowView, size: Area, { isAscii }: DrawOptions): Row[] {
	const area = { columns: Math.max(1, size.columns), rows: Math.max(1, size.rows) };
	const foot = area.rows > 2 ? footer(area.columns) : [];
	const head = area.rows > 4 ? [headRow(view, area.columns), []] : [];
	const room = area.rows - foot.length - head.length;
	const tall = bodyRows(view, area.columns);
	const isTall = view.note === null && tall.rows.length <= room;
	const why = isTall || area.rows <= 8 ? [] : whyRows(view, area.columns);
	const { rows, pickedRow } = isTall ? tall : bodyRows(view, null);
	const left = room - why.length;
	const first = firstInSight(rows.length, pickedRow, Math.max(1, left));
	const body = fillRows(rows.slice(first, first + Math.max(1, left)), left);
	return drawableRows([...head, ...body, ...why, ...foot], area, isAscii);
}

function headRow(view: TomorrowView, columns: number): Row {
	const open = view.lines.filter((line) => !view.ticked.has(tickOf(line))).length;
	const title = [span(tomorrowTitle(view), 'title')];
	const corner = [span(TOMORROW.left(open, view.lines.length), 'dim')];
	const at = columns - rowWidth(corner);
	return at > 12 ? [...fillRow(title, at), ...corner] : title;
}

/** `columns`: with each line's reason, wrapped to so many; null without. */
function bodyRows(
	{ lines, ticked, picked }: TomorrowView,
	columns: number | null,
): {
	readonly rows: readonly Row[];
	readonly pickedRow: number;
} {
	const order = drawnOrder(lines);
	if (order.length === 0) return { rows: [[span(TOMORROW.nothing)]], pickedRow: 0 };
	const rows: Row[] = [];
	let pickedRow = 0;
	order.forEach((line, place) => {
		if (order[place - 1]?.kind !== line.kind) {
			if (place > 0) rows.push([]);
			rows.push([span(TOMORROW_KINDS[line.kind], 'title')]);
		}
		const isPicked = place === picked;
		const isDone = ticked.has(tickOf(line));
		if (isPicked) pickedRow = rows.length;
		rows.push([
			span(isPicked ? '> ' : '  '),
			span(isDone ? '[x] ' : '[ ] ', isDone ? 'dim' : 'bright'),
			span(lineWords(line), isDone ? 'dim' : isPicked ? 'bright' : 'plain'),
		]);
		if (columns !== null) rows.push(...reasonRows(line.why, columns, 'dim'));
	});
	return { rows, pickedRow };
}

function whyRows({ lines, picked, note }: TomorrowView, columns: number): Row[] {
	const words = note ?? drawnOrder(lines)[picked]?.why ?? '';
	const said = reasonRows(words, columns, note === null ? 'plain' : 'bright');
	return [[], ...fillRows(said, WHY_ROWS)];
}

function reasonRows(words: string, columns: number, style: SpanStyle): Row[] {
	const area = { columns: Math.max(1, columns - INDENT), rows: WHY_ROWS };
	return wrapWords(words, area).map((line) => [span(' '.repeat(INDENT)), span(line, style)]);
}

function footer(columns: number): Row[] {
	const keys = [
		{ key: TOMORROW_KEYS.pick, words: TOMORROW_KEYS.pickWords },
		{ key: TOMORROW_KEYS.tick, words: TOMORROW_KEYS.tickWords },
		{ key: TOMORROW_KEYS.leave, words: TOMORROW_KEYS.leaveWords },
	];
	return footerRows(keys, { columns, rows: 1 });
}
