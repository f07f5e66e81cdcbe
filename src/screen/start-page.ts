// The first screen: what there is to begin with, a number each, the one that is most likely wanted first.

import { START, START_KEYS } from '../words/start-page.ts';
import { type DrawOptions, drawableRows } from './draw-screen.ts';
import { footerRows } from './footer.ts';
import { firstInSight } from './pane-window.ts';
import {
	type Area,
	cutRow,
	fillRow,
	fillRows,
	type Row,
	rowWidth,
	type Span,
	span,
} from './row.ts';

export type StartItem = {
	/** The key that opens it. */
	readonly key: string;
	readonly label: string;
	/** What it is about, in a line. */
	readonly detail: string;
};

export type StartPage = {
	readonly items: readonly StartItem[];
	/** The item that enter opens. */
	readonly picked: number;
	/** Today, in the upper corner. */
	readonly day: string;
	/** Said below the items; null for nothing. */
	readonly note: string | null;
};

/** Cells before an item's label: the mark, the key and what stands around them. */
const INDENT = 6;
/** From here on the lines below the title are worth their room. */
const LEAST_ROWS_FOR_ABOUT = 12;

/** Exactly as many rows as the terminal has, for any size from one cell up. */
export function drawStartPage(page: StartPage, size: Area, { isAscii }: DrawOptions): Row[] {
	const area = { columns: Math.max(1, size.columns), rows: Math.max(1, size.rows) };
	const { columns } = area;
	const foot = area.rows > 2 ? footer(page, columns) : [];
	const room = area.rows - foot.length;
	const head = headRows(page, area);
	const body = bodyRows(page, { columns, rows: room - head.length });
	return drawableRows([...fillRows([...head, ...body], room), ...foot], area, isAscii);
}

function headRows({ day }: StartPage, { columns, rows }: Area): Row[] {
	if (rows <= 3) return [];
	const title = [span(START.title, 'title')];
	const corner = [span(day, 'dim')];
	const at = columns - rowWidth(corner);
	const first = at > rowWidth(title) + 1 ? [...fillRow(title, at), ...corner] : title;
	if (rows < LEAST_ROWS_FOR_ABOUT) return [first];
	return [first, [span(START.about, 'dim')], []];
}

/** Items with their detail below and a blank row between, as far as there is room for that. */
function bodyRows(page: StartPage, { columns, rows }: Area): Row[] {
	const { items, picked, note } = page;
	const notes: Row[] = note === null ? [] : [[], [span(' '.repeat(INDENT)), span(note, 'dim')]];
	const room = Math.max(0, rows - notes.length);
	const all = items.length;
	if (room >= 3 * all - 1) {
		const blocks = items.flatMap((item, index) => [
			...(index > 0 ? [[]] : []),
			...tallItem(item, index === picked),
		]);
		return [...blocks, ...notes];
	}
	if (room >= 2 * all)
		return [...items.flatMap((item, index) => tallItem(item, index === picked)), ...notes];
	const first = firstInSight(all, picked, Math.max(1, rows));
	return items
		.slice(first, first + Math.max(1, rows))
		.map((item, index) => cutRow(lowItem(item, first + index === picked), columns));
}

function itemHead({ key, label }: StartItem, isPicked: boolean): Row {
	return [
		span(isPicked ? '> ' : '  '),
		span(key.padEnd(INDENT - 2), 'bright'),
		span(label, isPicked ? 'bright' : 'plain'),
	];
}

function tallItem(item: StartItem, isPicked: boolean): Row[] {
	return [itemHead(item, isPicked), [span(' '.repeat(INDENT)), detail(item, isPicked)]];
}

function lowItem(item: StartItem, isPicked: boolean): Row {
	return [...itemHead(item, isPicked), span('  '), detail(item, isPicked)];
}

function detail(item: StartItem, isPicked: boolean): Span {
	return span(item.detail, isPicked ? 'plain' : 'dim');
}

function footer({ items }: StartPage, columns: number): Row[] {
	const numbered = items.filter(({ key }) => key !== '?').length;
	const keys = [
		{ key: START_KEYS.numbers(numbered), words: START_KEYS.open },
		{ key: START_KEYS.pick, words: START_KEYS.pickWords },
		...(items.length > numbered ? [{ key: '?', words: START_KEYS.walk }] : []),
		{ key: 'esc', words: START_KEYS.quit },
	];
	return footerRows(keys, { columns, rows: 1 });
}
