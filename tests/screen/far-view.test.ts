// The view to be read from afar: drawn at three sizes for the moments of a night, how far off it is read, and
// that nothing in it moves by itself.

import fc from 'fast-check';
import stringWidth from 'string-width';
import { describe, expect, test } from 'vitest';
import { drawScreen } from '../../src/screen/draw-screen.ts';
import { rowText, screenText } from '../../src/screen/row.ts';
import type { ScreenState } from '../../src/screen/screen-state.ts';
import { tallRows } from '../../src/screen/tall-glyphs.ts';
import { expectDrawn } from './expect-drawn.ts';
import { noBackup, staying, substituted } from './pressed-states.ts';
import {
	afterABreak,
	beforeTheShow,
	handOverOfThree,
	interval,
	jumpPrompt,
	middleOfASong,
	notSaved,
	over,
	sixPlayers,
	wideNames,
} from './states.ts';

const small = { columns: 80, rows: 24 };
const sizes = [small, { columns: 120, rows: 40 }, { columns: 200, rows: 60 }];

function with_(state: ScreenState, change: Partial<ScreenState['plan']>): ScreenState {
	return { ...state, plan: { ...state.plan, ...change } };
}

const oneChange = (): ScreenState => {
	const state = middleOfASong();
	return with_(state, { handOvers: state.plan.handOvers.slice(0, 1) });
};
const withCapo = (): ScreenState => {
	const state = middleOfASong();
	return with_(state, { handOvers: state.plan.handOvers.slice(1) });
};

const states: Readonly<Record<string, () => ScreenState>> = {
	'one-change': oneChange,
	'one-change-with-capo': withCapo,
	'two-at-once': middleOfASong,
	'three-at-once': () => ({ ...handOverOfThree(), prompt: null }),
	'after-a-break': () => ({ ...afterABreak(), prompt: null }),
	'no-backup': noBackup,
	'nobody-changes': () => with_(middleOfASong(), { handOvers: [], work: [] }),
	interval,
	over,
	'a-question': jumpPrompt,
	'not-saved': notSaved,
	staying,
	'six-players': sixPlayers,
};

function drawn(state: ScreenState, size: { columns: number; rows: number }, isAscii = false) {
	return screenText(drawScreen({ ...state, view: 'far' }, size, { isAscii }));
}

describe('drawn', () => {
	for (const size of sizes) {
		const sized = `${size.columns}x${size.rows}`;
		test.each(Object.keys(states))(`%s at ${sized}`, (name) => {
			expectDrawn(`far-${name}-${sized}`, drawn(states[name]!(), size));
		});
	}
});

describe('what must be found', () => {
	test('in ASCII where the terminal has no other letters', () => {
		const ascii = drawn(oneChange(), small, true);
		expect(ascii).toMatch(/^[\x20-\x7e\n]*$/);
		expectDrawn('far-ascii-80x24', ascii);
	});

	test.each([
		{ columns: 20, rows: 4 },
		{ columns: 40, rows: 10 },
		{ columns: 60, rows: 15 },
	])('on a small screen: $columns x $rows', (size) => {
		expectDrawn(`far-small-${size.columns}x${size.rows}`, drawn(oneChange(), size));
	});

	test('on the smallest screen who, which slot, in what, ready or not and when', () => {
		expect(drawn(oneChange(), { columns: 40, rows: 4 })).toMatch(
			/ASH .*in +2:33 .*4 Dace, drop D, RECHECK/,
		);
	});

	test('a question and its keys, whatever its height', () => {
		for (const { columns, rows } of [
			...sizes,
			{ columns: 60, rows: 12 },
			{ columns: 40, rows: 8 },
		]) {
			const text = drawn(jumpPrompt(), { columns, rows });
			expect(text).toMatch(/Next song: /);
			expect(text.split('\n').at(-1)).toMatch(/esc cancel/);
		}
	});

	test('the answer to a key, and that the night is not kept, in a row', () => {
		const state = { ...notSaved(), message: 'There is nothing to take back.' };
		const rows = drawn(state, small).split('\n');
		expect(rows[0]).toMatch(/^NOT SAVED +In memory only, the disk is full/);
		expect(rows.at(-1)).toMatch(/^There is nothing to take back\. +NOT SAVED$/);
	});
});

test('no size is exceeded, whatever is shown', () => {
	const names = Object.values({ ...states, beforeTheShow, wideNames, substituted });
	const size = fc.record({
		columns: fc.oneof(fc.integer({ min: 1, max: 80 }), fc.integer({ min: 1, max: 240 })),
		rows: fc.oneof(fc.integer({ min: 1, max: 24 }), fc.integer({ min: 1, max: 70 })),
	});
	const more = fc.record({
		message: fc.option(fc.string({ unit: 'grapheme', maxLength: 120 })),
		isLocked: fc.boolean(),
		isRehearsal: fc.boolean(),
	});
	const made = names.map((make) => make());
	fc.assert(
		fc.property(
			fc.constantFrom(...made),
			size,
			more,
			fc.boolean(),
			(state, area, rest, isAscii) => {
				const rows = drawScreen({ ...state, ...rest, view: 'far' }, area, { isAscii });
				expect(rows).toHaveLength(area.rows);
				for (const row of rows) {
					expect(stringWidth(rowText(row))).toBeLessThanOrEqual(area.columns);
					if (isAscii) expect(rowText(row)).toMatch(/^[\x20-\x7e]*$/);
				}
			},
		),
		{ numRuns: Number(process.env.RACKSIDE_RUNS ?? 200) },
	);
});

/** A 14-inch panel of 16:9 is 174 mm high: 14 × 25.4 × 9 / √(16² + 9²). */
const PANEL_MM = (14 * 25.4 * 9) / Math.hypot(16, 9);
/** Preferred height of a letter in minutes of arc: ISO 9241-303, from memory. */
const PREFERRED_ARC_MINUTES = 20;

/** How far off letters of this scale are read. */
function metres(scale: number, rows: number): number {
	const letterMm = (3 * scale * PANEL_MM) / rows;
	return letterMm / 1000 / Math.tan(((PREFERRED_ARC_MINUTES / 60) * Math.PI) / 180);
}

/** The scale of the letters on screen, seen in what is drawn: the run of equal rows that a stroke is made of. */
function seenScale(text: string, words: string): number | null {
	const rows = text.split('\n');
	for (let scale = 20; scale > 0; scale -= 1) {
		const [first = []] = tallRows(words, { style: 'plain', scale, isAscii: false });
		if (rows.some((row) => row.includes(rowText(first).trimEnd()))) return scale;
	}
	return null;
}

// Those at 80x24 are in DEVELOPERS.md.
test.each([
	['one change', oneChange, 'drop D', [7.5, 9.0, 9.0]],
	['with a capo', withCapo, 'E std', [7.5, 6.7, 7.5]],
	['three at once', handOverOfThree, 'drop D', [3.7, 4.5, 4.5]],
] as const)('%s is read further off than two metres', (_, make, words, distances) => {
	const state = { ...make(), prompt: null };
	for (const [index, size] of sizes.entries()) {
		const scale = seenScale(drawn(state, size), words) ?? 0;
		expect(metres(scale, size.rows)).toBeCloseTo(distances[index] ?? 0, 1);
	}
});

test('nothing moves by itself: a second later only the digits of the countdown are others', () => {
	const at = (state: ScreenState, ms: number) => ({ ...state, nowMs: state.nowMs + ms });
	for (const make of [oneChange, withCapo, middleOfASong]) {
		for (const size of sizes) {
			const before = drawn(make(), size).split('\n');
			for (const ms of [1000, 2000, 45_000, 93_000]) {
				const rows = drawn(at(make(), ms), size).split('\n');
				const from = before.findIndex((row, index) => index > 1 && row === '');
				expect(rows.slice(from)).toEqual(before.slice(from));
				// Above are the player's first letter or the countdown's word, and its digits.
				const left = (some: readonly string[]) => some.slice(0, from).map((row) => row.slice(0, 6));
				expect(left(rows)).toEqual(left(before));
			}
		}
	}
});

test('no letter changes its size when the night is not kept any more', () => {
	const { save } = notSaved();
	for (const make of [oneChange, withCapo, middleOfASong]) {
		for (const size of sizes) {
			const rows = drawn({ ...make(), save }, size).split('\n');
			expect(rows[0]).toMatch(/^NOT SAVED/);
			expect(rows.slice(1, -1)).toEqual(drawn(make(), size).split('\n').slice(1, -1));
		}
	}
});
