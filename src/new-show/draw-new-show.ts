// The questions as rows of text: the question, the file as it grows below it or, where the screen is wide, beside
// it, what is said to the last key, and the keys that work.

import { displayWidth } from '../base/display-width.ts';
import { type DrawOptions, drawableRows } from '../screen/draw-screen.ts';
import { footerRows } from '../screen/footer.ts';
import { firstInSight } from '../screen/pane-window.ts';
import { titleRow } from '../screen/prompt-rows.ts';
import {
	type Area,
	beside,
	cutRow,
	fillRows,
	placeAt,
	type Row,
	rowWidth,
	span,
	wrapWords,
} from '../screen/row.ts';
import * as words from '../words/new-show.ts';
import { UP_DOWN } from '../words/questions.ts';
import { smallWords } from '../words/stage.ts';
import { type FileSoFar, fileSoFar } from './file-so-far.ts';
import { asked, madeOf, type NewShow } from './new-show.ts';
import { everyKey, type Question } from './question.ts';

const COMPLETE: Area = { columns: 80, rows: 24 };
/** From here on the file stands beside the question. */
const WIDE_COLUMNS = 120;
const LEAST_ROWS_FOR_HEAD = 8;
const LEAST_ROWS_FOR_TWO_OF_KEYS = 16;
const INDENT = '  ';
const GAP = 3;
/** Stands for a blank at which no line ends; the writer's texts have none. */
const HELD = '\u00A0';

/** Exactly so many rows, each at most so many cells wide; `file` is the name that it will have. */
export function drawNewShow(
	state: NewShow,
	size: Area,
	{ file, isAscii }: DrawOptions & { readonly file: string },
): Row[] {
	const area = { columns: Math.max(1, size.columns), rows: Math.max(1, size.rows) };
	const { columns, rows } = area;
	const question = state.earlier === null ? asked(state) : earlierQuestion(state);
	const head = rows >= LEAST_ROWS_FOR_HEAD ? [headRow(question, area)] : [];
	const keyRows = rows < 2 ? 0 : rows >= LEAST_ROWS_FOR_TWO_OF_KEYS ? 2 : 1;
	const saidRows = rows < 4 ? 0 : 1;
	const body = rows - head.length - keyRows - saidRows;
	const drawn = [
		...head,
		...fillRows(bodyRows(state, question, { columns, rows: body, file }), body),
		...(saidRows > 0 ? [saidRow(state, area, head.length > 0)] : []),
		...fillRows(footerRows(keysOf(state, question), { columns, rows: keyRows }), keyRows),
	];
	return drawableRows(drawn, area, isAscii);
}

function headRow({ part }: Question, area: Area): Row {
	const mark = smallMark(area);
	return placeAt(area.columns, [
		[0, [span(words.NEW_SHOW, 'title'), span(`  ${part}`)]],
		[Math.max(0, area.columns - rowWidth(mark)), mark],
	]);
}

function smallMark({ columns, rows }: Area): Row {
	const isSmall = columns < COMPLETE.columns || rows < COMPLETE.rows;
	const complete = `${COMPLETE.columns}x${COMPLETE.rows}`;
	return isSmall ? [span(smallWords(complete, columns < 30), 'title')] : [];
}

function saidRow({ message }: NewShow, area: Area, hasHead: boolean): Row {
	if (message !== null) return [span(message, 'bright')];
	return hasHead ? [] : smallMark(area);
}

function keysOf(state: NewShow, question: Question) {
	if (state.earlier !== null)
		return [...question.keys, { key: 'esc', words: words.KEYS_SAID.leave }];
	const enter =
		question.offered === null ? [] : [{ key: 'enter', words: enterWords(state, question) }];
	if (state.field !== null) return [...enter, { key: 'esc', words: words.KEYS_SAID.cancel }];
	if (state.held !== null)
		return [
			{ key: UP_DOWN, words: words.KEYS_SAID.move },
			{ key: 'enter', words: words.KEYS_SAID.put },
			{ key: 'esc', words: words.KEYS_SAID.put },
		];
	return [...enter, ...question.keys, ...everyKey(question.isText)];
}

function enterWords({ line }: NewShow, { offered, isText }: Question): string {
	const isTyped = isText && line.before + line.after !== '';
	return isTyped ? words.ENTER.next : (offered ?? words.ENTER.next);
}

/** Whether to go on with what was begun earlier. */
function earlierQuestion({ beginning, earlier }: NewShow): Question {
	const { draft } = madeOf(beginning, earlier?.answers ?? []).making;
	return {
		part: words.PARTS_ASKED.show,
		title: words.goOnWith(draft.title),
		isText: false,
		offered: words.ENTER.goOn,
		rows: [],
		list: [
			words.draftHolds(draft.players.length, draft.instruments.length, draft.songs.length),
			words.DRAFT_GOES,
		],
		hint: null,
		keys: [
			{ key: 'enter', words: words.ENTER.goOn },
			{ key: 'n', words: words.KEYS_SAID.anew },
		],
	};
}

type Body = Area & { readonly file: string };

function bodyRows(state: NewShow, question: Question, { columns, rows, file }: Body): Row[] {
	const shown = state.earlier === null ? state : madeOf(state.beginning, state.earlier.answers);
	const soFar = fileSoFar(shown.making, shown.before);
	const heading = shown.making.adding ? words.fileAddedTo(file) : words.fileSoFar(file);
	if (columns >= WIDE_COLUMNS) {
		const at = Math.floor(columns * 0.48);
		const left = questionRows(state, question, { columns: at - GAP, rows });
		const right = fileRows(soFar, heading, { columns: columns - at, rows });
		return beside(fillRows(left, rows), right, at);
	}
	// On few rows the question has all of them that it needs.
	const needed = questionHeight(question, columns);
	const half = Math.floor(rows / 2);
	const asks = rows >= 20 ? half : Math.min(rows, Math.max(half, Math.min(needed, rows - 4)));
	return [
		...fillRows(questionRows(state, question, { columns, rows: asks }), asks),
		...fileRows(soFar, heading, { columns, rows: rows - asks }),
	];
}

function questionHeight(question: Question, columns: number): number {
	const about = question.offered === null && question.hint === null ? 0 : 1;
	const list = inColumns(question.list, columns - INDENT.length).length;
	return 1 + about + question.rows.length + list;
}

function questionRows(state: NewShow, question: Question, { columns, rows }: Area): Row[] {
	const { title, isText, offered, hint, list } = question;
	const isTyped = isText && state.line.before + state.line.after !== '';
	const first = titleRow({ title, field: isText ? state.line : null }, columns);
	const takes = offered === null || isTyped ? [] : [words.enterTakes(offered)];
	const known = [...takes, ...(hint === null ? [] : [hint])].join('   ');
	const about: Row[] = known === '' ? [] : [cutRow([span(`${INDENT}${known}`, 'dim')], columns)];
	const short = inColumns(list, columns - INDENT.length);
	const room = Math.max(0, rows - 1 - about.length);
	// What is picked is seen before what can be chosen for it.
	const picks = Math.min(question.rows.length, Math.max(1, room - Math.min(short.length, 3)), room);
	const picked = Math.min(state.picked, question.rows.length - 1);
	const from = firstInSight(question.rows.length, picked, picks);
	const pickRows = question.rows.slice(from, from + picks).map((line, index): Row => {
		const isPicked = from + index === picked;
		const mark = isPicked ? (state.held === null ? '>' : '<>') : '';
		return [span(mark.padEnd(3), 'bright'), span(line, isPicked ? 'bright' : 'plain')];
	});
	const rest = short.map((line): Row => [span(`${INDENT}${line}`)]);
	return [first, ...about, ...pickRows, ...rest].slice(0, rows);
}

/** Short things in as many columns as fit, each column from top to bottom. */
function inColumns(list: readonly string[], columns: number): readonly string[] {
	const widest = Math.max(1, ...list.map(displayWidth));
	const count = Math.max(1, Math.floor((columns + 2) / (widest + 2)));
	const high = Math.ceil(list.length / count);
	return Array.from({ length: high }, (_, row) =>
		list
			.filter((_, index) => index % high === row)
			.map((one) => one + ' '.repeat(Math.max(0, widest - displayWidth(one))))
			.join('  ')
			.trimEnd(),
	);
}

/** The part of the file around what was just added, each line wrapped under itself. */
function fileRows(soFar: FileSoFar, heading: string, { columns, rows }: Area): Row[] {
	if (rows < 2) return [];
	const wrapped = soFar.lines.flatMap((line, index) => {
		const isNew = index >= soFar.newFrom && index < soFar.newTo;
		return wrapLine(line, columns).map((text) => ({ text, isNew, index }));
	});
	const room = rows - 1;
	const last = wrapped.findLastIndex(({ index }) => index === soFar.at);
	const from = Math.max(0, Math.min(wrapped.length - room, last + 3 - room));
	const shown = wrapped
		.slice(from, from + room)
		.map(({ text, isNew }): Row => [span(text, isNew ? 'bright' : 'plain')]);
	return fillRows([cutRow([span(heading, 'title')], columns), ...shown], rows);
}

/** In a map on one line, between its keys; else between words. */
function wrapLine(line: string, columns: number): readonly string[] {
	if (displayWidth(line) <= columns) return [line];
	const indent = /^\s*(?:- )?/.exec(line)?.[0] ?? '';
	const under = ' '.repeat(Math.min(indent.length + 2, Math.max(0, columns - 10)));
	const area = { columns: Math.max(1, columns - under.length), rows: 20 };
	const text = line.slice(indent.length);
	const keys = text.replace(/(?<!,) /g, HELD);
	const isWhole = keys.split(' ').every((key) => displayWidth(key) <= area.columns);
	const parts = isWhole
		? wrapWords(keys, area).map((part) => part.replaceAll(HELD, ' '))
		: wrapWords(text, area);
	return parts.map((part, index) => (index === 0 ? indent : under) + part);
}
