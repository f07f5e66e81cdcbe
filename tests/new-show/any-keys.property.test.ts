// Whatever is pressed and pasted, the questions go on, the screen fits, and the file as it grows can be read.

import * as fc from 'fast-check';
import { expect, test } from 'vitest';
import { drawNewShow } from '../../src/new-show/draw-new-show.ts';
import {
	keptOf,
	madeOf,
	type NewShow,
	paste,
	press,
	startNewShow,
} from '../../src/new-show/new-show.ts';
import { rowWidth } from '../../src/screen/row.ts';
import { writeShowFile } from '../../src/setlist/write-show-file.ts';
import { readShow } from '../../src/showfile/read-show.ts';
import { ALL, BEGINNING, keysOf, pressed } from './lamplit.ts';

const RUNS = Number(process.env.PROPERTY_RUNS ?? 150);

const key = fc.oneof(
	{ weight: 6, arbitrary: fc.constant('enter') },
	{ weight: 4, arbitrary: fc.constantFrom(...'123456789abcdefghijklmnopqrstuvwxyz0=-.: ') },
	{
		weight: 3,
		arbitrary: fc.constantFrom(
			...['up', 'down', 'left', 'right', 'tab', 'backspace', 'delete', 'home', 'end', 'space'],
			...['pageup', 'pagedown', 'f1', 'ctrl-a', 'ctrl-e', 'ctrl-k', 'ctrl-u', 'ctrl-w'],
		),
	},
	{ weight: 1, arbitrary: fc.string({ unit: 'grapheme', minLength: 1, maxLength: 1 }) },
);
const act = fc.oneof(
	{ weight: 8, arbitrary: key.map((one) => ({ key: one })) },
	{
		weight: 2,
		arbitrary: fc
			.oneof(
				fc.string({ unit: 'binary', maxLength: 60 }),
				fc.constantFrom(
					'Lantern 4:05',
					'dd c2',
					'2030',
					'a: [b, {c: "',
					'\u001b[2J',
					'\u202e',
					'#',
					'!',
				),
			)
			.map((text) => ({ paste: text })),
	},
);

const PARTS = ['show', 'players', 'rack', 'songs', 'order'] as const;

/** From the first question on, or from further along the way of a whole show. */
const start = fc
	.nat({ max: PARTS.length })
	.map((count) => pressed(keysOf(...PARTS.slice(0, count))));

const size = fc.record({
	columns: fc.integer({ min: 1, max: 210 }),
	rows: fc.integer({ min: 1, max: 60 }),
});

function readable({ making: { draft } }: NewShow): void {
	// No show may be without a song; until there is one, one is added for the reader.
	const song = draft.set.length === 0 ? 'songs: [{id: first}]\nset: [first]\n' : '';
	const text = `${writeShowFile(draft)}\n${song}`;
	const { show, problems } = readShow(() => Buffer.from(text), 'any.yaml');
	if (show === null) throw new Error(`${JSON.stringify(problems)}\n${text}`);
}

test('any keys: no fault, a file that can be read, a screen that fits', {
	timeout: 120_000,
}, () => {
	fc.assert(
		fc.property(start, fc.array(act, { maxLength: 60 }), size, (from, acts, area) => {
			let state: NewShow = from;
			for (const one of acts) {
				const before = state.making;
				state = 'key' in one ? press(state, one.key) : paste(state, one.paste);
				if (state.making !== before) readable(state);
			}
			const rows = drawNewShow(state, area, { file: 'any.yaml', isAscii: false });
			expect(rows).toHaveLength(area.rows);
			for (const row of rows) expect(rowWidth(row)).toBeLessThanOrEqual(area.columns);
		}),
		{ numRuns: RUNS },
	);
});

const orderKey = fc.constantFrom(
	'up',
	'down',
	'up',
	'down',
	'g',
	'g',
	'h',
	'p',
	'k',
	'u',
	'enter',
	'esc',
);

test('any order: intervals and encores stand where they can', { timeout: 120_000 }, () => {
	const from = pressed(keysOf(...PARTS.slice(0, 4)));
	fc.assert(
		fc.property(fc.array(orderKey, { maxLength: 80 }), (keys) => {
			let state: NewShow = from;
			for (const one of keys) {
				const before = state.making;
				state = press(state, one);
				if (state.making !== before) readable(state);
			}
		}),
		{ numRuns: RUNS },
	);
});

test('any keys: what is kept gives the same show again', { timeout: 120_000 }, () => {
	fc.assert(
		fc.property(start, fc.array(act, { maxLength: 60 }), (from, acts) => {
			const state = acts.reduce<NewShow>(
				(one, next) => ('key' in next ? press(one, next.key) : paste(one, next.paste)),
				from,
			);
			const kept = JSON.parse(JSON.stringify(keptOf(state)));
			const again = press(startNewShow(BEGINNING, kept), 'enter');
			if (kept.answers.length + kept.typed.length > 0) expect(again.making).toEqual(state.making);
			expect(madeOf(BEGINNING, kept.answers).used).toEqual(state.answers);
		}),
		{ numRuns: RUNS },
	);
});

test('a whole show with any one key in between can still be read', { timeout: 120_000 }, () => {
	const keys = keysOf(...ALL);
	fc.assert(
		fc.property(fc.nat({ max: keys.length }), key, (at, more) => {
			readable(pressed([...keys.slice(0, at), more, ...keys.slice(at)]));
		}),
		{ numRuns: RUNS },
	);
});
