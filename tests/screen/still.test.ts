// The eye learns places: nothing moves by itself, nothing shines without need, and what is needed to
// answer a question stays in sight under it.

import { describe, expect, test } from 'vitest';
import { lineOf } from '../../src/keys/text-line.ts';
import { cardColumns } from '../../src/screen/card-columns.ts';
import { drawScreen } from '../../src/screen/draw-screen.ts';
import type { Row, SpanStyle } from '../../src/screen/row.ts';
import { rowText, screenText } from '../../src/screen/row.ts';
import type { ScreenState } from '../../src/screen/screen-state.ts';
import { tallLetterRows } from '../../src/screen/stage.ts';
import { longInterval, noBackup, staying, substituted } from './pressed-states.ts';
import {
	afterABreak,
	at,
	beforeTheShow,
	calm,
	encore,
	handOverOfThree,
	interval,
	jumpPrompt,
	middleOfASong,
	over,
} from './states.ts';

const sizes = [
	{ columns: 80, rows: 24 },
	{ columns: 120, rows: 40 },
	{ columns: 200, rows: 60 },
];
const unicode = { isAscii: false };
const moments = {
	beforeTheShow: () => beforeTheShow(),
	middleOfASong,
	interval,
	encore,
	over,
	calm,
	staying,
	substituted,
	noBackup,
	longInterval,
};
const drawn = (state: ScreenState, size: (typeof sizes)[number]) =>
	drawScreen(state, size, unicode);

/** What changes from one drawing to the next: row, column and both letters. */
function changes(before: readonly Row[], after: readonly Row[]) {
	return before.flatMap((row, index) => {
		const was = rowText(row);
		const is = rowText(after[index] ?? []).padEnd(was.length);
		return Array.from(is, (letter, column) => ({
			index,
			column,
			was: was[column] ?? ' ',
			letter,
		})).filter(({ was: old, letter }) => old !== letter);
	});
}

const ofStyle = (rows: readonly Row[], style: SpanStyle) =>
	rows
		.flat()
		.filter((one) => one.style === style && !/[▀▄█]/.test(one.text))
		.map(({ text }) => text.replaceAll(' ', ''))
		.join('');

describe.each(sizes)('$columns x $rows', (size) => {
	test.each(Object.entries(moments))('a second later only digits differ: %s', (_, make) => {
		const now = make();
		const changed = changes(drawn(now, size), drawn({ ...now, nowMs: now.nowMs + 1000 }, size));
		expect(changed.length).toBeGreaterThan(0);
		for (const { was, letter } of changed) expect(was + letter).toMatch(/^[\d -][\d -]$/);
	});

	test('a number that grows longer pushes nothing: 59 minutes of seconds, word for word', () => {
		const state = { ...calm(), nowMs: at(20, 12) };
		const words = (nowMs: number) =>
			drawn({ ...state, nowMs }, size)
				.map(rowText)
				.flatMap((row, index) =>
					[...row.matchAll(/[A-Za-z+~=]+/g)].map((found) => `${index} ${found.index} ${found[0]}`),
				)
				.filter((one) => !/ (READY|RECHECK|NOT|in|now|h)$/.test(one));
		const first = words(at(20, 12));
		for (let seconds = 0; seconds < 150; seconds += 7) {
			expect(words(at(20, 12 + seconds))).toEqual(first);
		}
	});

	test('in a calm moment little is bright and nothing calls to act', () => {
		const rows = drawn(calm(), size);
		expect(ofStyle(rows, 'accent')).toBe('');
		expect(ofStyle(rows, 'bright').length).toBeGreaterThan(0);
		expect(ofStyle(rows, 'bright').length).toBeLessThanOrEqual(24);
	});

	test.each(Object.entries({ afterABreak, jumpPrompt, handOverOfThree }))(
		'under a question the cards, who keeps what and the rack stay: %s',
		(_, make) => {
			const asked = make();
			const open = screenText(drawn({ ...asked, prompt: null }, size)).split('\n');
			const rows = screenText(drawn(asked, size)).split('\n');
			const kept = open.findIndex((row) => row.startsWith('TO DO'));
			expect(kept).toBeGreaterThanOrEqual(12);
			expect(rows.slice(0, kept)).toEqual(open.slice(0, kept));
			expect(open.slice(0, kept).join('\n')).toMatch(/^7 . /m);
			expect(rows.join('\n')).toContain(asked.prompt?.title);
		},
	);

	test('no question has to be answered without its words', () => {
		for (const make of [afterABreak, jumpPrompt, handOverOfThree]) {
			const text = screenText(drawn(make(), size));
			for (const line of make().prompt?.lines ?? []) expect(text).toContain(line);
		}
	});

	test('what is to be checked before it leaves the rack is never cut while there is room', () => {
		// At 80 columns the three cards stand beside one another, else under one another.
		const { details } = cardColumns(size.columns, tallLetterRows(size) === 6 ? 2 : 1);
		const parts = size.columns < 100 ? [0, 27, 54].map((at) => [at, at + 26]) : [[details]];
		const words = parts.map(([from, to]) =>
			drawn({ ...handOverOfThree(), prompt: null }, size)
				.map((row) => rowText(row).slice(from, to).trim())
				.join(' ')
				.replace(/ +/g, ' '),
		);
		expect(words.join('\n')).toContain('check volume 7, neck pickup');
		expect(words.join('\n')).toContain('check fresh battery, volume full');
	});
});

test('a field for text stays where it is while lines below it come and go', () => {
	const rowOf = (lines: readonly string[]) => {
		const state = jumpPrompt();
		const prompt = { ...state.prompt!, lines };
		return screenText(drawn({ ...state, prompt }, sizes[0]!))
			.split('\n')
			.findIndex((row) => row.startsWith('Next song'));
	};
	expect([[], ['a'], ['a', 'b', 'c', 'd', 'e', 'f', 'g']].map(rowOf)).toEqual(
		Array(3).fill(rowOf([])),
	);
});

test.each([...sizes, { columns: 40, rows: 10 }, { columns: 20, rows: 8 }])(
	'of a long text the end is seen, where one types: $columns x $rows',
	(size) => {
		const field = lineOf(`${'word '.repeat(60)}and the last`);
		const prompt = { title: 'Memo, then enter', field, lines: [], choices: [] };
		for (const view of ['stage', 'log'] as const) {
			const text = screenText(drawn({ ...middleOfASong(), view, prompt }, size));
			expect(text).toMatch(size.columns >= 40 ? /Memo,.* word and the last_/ : /last_/);
		}
	},
);

test.each(sizes)('a long answer is seen to its end: $columns x $rows', (size) => {
	const message =
		'Amber is in E standard, capo 2; The longest title of all wants Dace in half-step down, capo 11.';
	for (const view of ['stage', 'rack', 'log'] as const) {
		const state = { ...middleOfASong(), view, message, isRehearsal: true };
		const rows = drawn(state, size).map(rowText);
		expect(rows).toHaveLength(size.rows);
		const text = rows.join(' ').replace(/ +/g, ' ');
		expect(text.replace(' REHEARSAL', '')).toContain(message);
		expect(text).toContain('REHEARSAL');
	}
});

test('an age of hours stands apart from its word', () => {
	const state = middleOfASong();
	for (const minutes of [16, 61, 640]) {
		const text = screenText(drawn({ ...state, nowMs: at(minutes + 4, 10) }, sizes[1]!));
		expect(text).toMatch(/(READY|RECHECK) +\d+:\d\d/);
		expect(text).not.toMatch(/(READY|RECHECK|DOWN|now|in)\d/);
	}
});

test.each(sizes)('what has no slot goes by its name: $columns x $rows', (size) => {
	const state = middleOfASong();
	const { show } = state.session;
	const instruments = show.instruments.map((one) =>
		one.id === 'i4' ? { ...one, slot: null } : one,
	);
	const session = { ...state.session, show: { ...show, instruments } };
	const text = screenText(drawn({ ...state, session }, size));
	expect(text).toMatch(/ASH (Dace +in +2:33| +in +2:33 Dace +for 7 Lantern)/);
	expect(text).toMatch(/TO DO +Dace +~/);
	expect(text).not.toMatch(/slot Dace/);
});
