// A drill at the keys: looked on to, asked, answered in so many seconds or missed, and each moment by itself.

import { describe, expect, test } from 'vitest';
import { drawMoments } from '../../src/drill/draw-moments.ts';
import { type DrillResult, drill } from '../../src/drill/drill.ts';
import { ledNight } from '../../src/drill/led-night.ts';
import { keyOfAction } from '../../src/keys/key-choices.ts';
import { drawScreen } from '../../src/screen/draw-screen.ts';
import { rowText } from '../../src/screen/row.ts';
import { exampleShow, handClock } from './example-shows.ts';
import { pressesOf } from './presses-of.ts';

const show = exampleShow('club.yaml');
const drawn = drawMoments(
	{ show, handMs: () => 0 },
	{ seed: 5, count: 8, keyOf: (id) => keyOfAction(id, {}) },
);

function begin(bestOf = (): number | null => null) {
	const { handMs, pass } = handClock();
	const results: DrillResult[] = [];
	const led = ledNight(
		drill({
			options: { show, handMs },
			moments: drawn,
			bestOf,
			onResult: (one) => results.push(one),
		}),
		handMs,
	);
	const seconds = (count: number) => {
		for (let left = count * 4; left > 0; left -= 1) {
			pass(250);
			led.tick();
		}
	};
	const press = (...keys: readonly string[]) => {
		for (const key of keys) {
			pass(400);
			led.press(key);
		}
	};
	const band = () => led.screen().band ?? { label: '', words: '', under: '' };
	const untilAsked = () => {
		while (band().under.includes('times as fast')) seconds(0.25);
	};
	return { led, results, seconds, press, band, untilAsked };
}

describe('a drill', () => {
	test('asks each moment in turn, counts until its keys, and ends', () => {
		const { led, results, seconds, press, band, untilAsked } = begin();
		const cut: string[] = [];
		const note = () => {
			const rows = drawScreen(led.screen(), { columns: 80, rows: 24 }, { isAscii: false });
			cut.push(
				...rows
					.slice(0, 2)
					.map(rowText)
					.filter((row) => row.includes('…')),
			);
		};
		for (const [index, { words, keys, kind }] of drawn.entries()) {
			expect(band().label).toBe(`${index + 1}/8`);
			note();
			untilAsked();
			note();
			expect(band().words).toBe(words.happens);
			seconds(2);
			expect(results).toHaveLength(index);
			press(...pressesOf(keys));
			note();
			expect(results[index]?.kind).toBe(kind);
			// Two seconds and 0.4 for each key.
			expect(results[index]?.seconds).toBeCloseTo(2 + 0.4 * pressesOf(keys).length, 1);
			expect(led.wantsToLeave()).toBe(false);
			seconds(1);
			press('enter');
		}
		expect(led.wantsToLeave()).toBe(true);
		expect(cut).toEqual([]);
	});

	test('what is not answered in 30 s is missed, and what would have been right is said with its keys', () => {
		const { results, seconds, band, untilAsked } = begin();
		const [first] = drawn;
		untilAsked();
		seconds(30);
		expect(results).toEqual([]);
		seconds(1);
		expect(results).toEqual([{ kind: first?.kind, seconds: null }]);
		expect(band().words).toBe(`Missed. Right: ${first?.words.right}`);
		expect(band().under).toContain(first?.keys.join('  '));
	});

	test('what comes too late, or is taken back in time, is as it was left', () => {
		const { results, seconds, press, untilAsked } = begin();
		const keys = pressesOf(drawn[0]?.keys ?? []);
		untilAsked();
		seconds(29);
		press(...keys.slice(0, -1));
		seconds(2);
		press(...keys.slice(-1));
		expect(results.map(({ seconds: taken }) => taken)).toEqual([null]);
	});

	test('keys pressed before it happens change nothing of the moment', () => {
		const { led, results, press, untilAsked } = begin();
		const before = drawn[0]?.strike.records.length ?? 0;
		press('d', 'i', ...pressesOf(drawn[0]?.keys ?? []));
		expect(results).toEqual([]);
		untilAsked();
		expect(results).toEqual([]);
		expect(led.screen().session.incidents).toHaveLength(
			drawn[0]?.strike.records.filter(({ e }) => e.some(({ k }) => k === 'string-broke')).length ??
				-1,
		);
		expect(before).toBeGreaterThan(0);
		press(...pressesOf(drawn[0]?.keys ?? []));
		expect(results).toHaveLength(1);
	});

	test('an enter that was meant for the night does not take the answer away', () => {
		const { press, band, untilAsked } = begin();
		untilAsked();
		press(...pressesOf(drawn[0]?.keys ?? []), 'enter');
		expect(band().label).toBe('1/8');
		press('enter', 'enter');
		expect(band().label).toBe('2/8');
	});

	test('the best is told beside the time, and beaten in the same drill', () => {
		const { press, band, untilAsked } = begin(() => 60);
		untilAsked();
		expect(band().under).toContain('your best 60.0 s');
		press(...pressesOf(drawn[0]?.keys ?? []));
		expect(band().words).toMatch(/^Right in \d\.\d s, your best by 5\d\.\d s\.$/);
	});

	test('the log tells the night, and not how it was set up', () => {
		const { led, untilAsked } = begin();
		untilAsked();
		const lines = [...led.screen().log].map(({ words }) => words);
		expect(lines.length).toBeGreaterThan(3);
		expect(lines.filter((words) => words.includes('resumed'))).toEqual([]);
	});
});
