// The clock by published examples and by looking at every order.

import fc from 'fast-check';
import { expect, test } from 'vitest';
import { type Job, leastWorst, preemptiveLeastWorst } from './least-worst.ts';
import { type WorkingClock, workingClock } from './working-clock.ts';

const open = workingClock([]);

function jobs(...rows: readonly [number, number, number][]): readonly Job[] {
	return rows.map(([from, seconds, wanted]) => ({ from, seconds, wanted }));
}

/** The classic one-machine example with heads and tails, its tails taken from 50: an optimum of 50 is a lateness of 0. */
const HEADS_AND_TAILS = jobs(
	[10, 5, 43],
	[13, 6, 24],
	[11, 7, 26],
	[20, 4, 29],
	[30, 3, 42],
	[0, 6, 33],
	[30, 2, 50],
);

test('published examples come out as published', () => {
	expect(leastWorst(HEADS_AND_TAILS, open)).toBe(0);
	expect(preemptiveLeastWorst(HEADS_AND_TAILS, open)).toBe(-1);
	// A lecture's example that earliest due date is not best, where waiting one unit is.
	expect(leastWorst(jobs([0, 5, 10], [1, 1, 2]), open)).toBe(0);
	expect(leastWorst(jobs([0, 6, 20], [2, 2, 5], [4, 3, 9]), open)).toBe(-1);
});

test('what ends where a window begins ends before it, and lateness counts the window', () => {
	const clock = workingClock([{ from: 1695, to: 1710 }]);
	expect(leastWorst(jobs([1425, 270, 1695]), clock)).toBe(0);
	expect(leastWorst(jobs([1440, 270, 1695]), clock)).toBe(30);
});

test('no order of any jobs is less late, with windows cut out of the clock', () => {
	const job = fc.record({
		from: fc.integer({ min: 0, max: 60 }),
		seconds: fc.integer({ min: 1, max: 20 }),
		wanted: fc.integer({ min: 5, max: 90 }),
	});
	const window = fc
		.record({ from: fc.integer({ min: 0, max: 90 }), seconds: fc.integer({ min: 1, max: 15 }) })
		.map(({ from, seconds }) => ({ from, to: from + seconds }));
	const lists = [fc.array(job, { minLength: 1, maxLength: 6 }), fc.array(window, { maxLength: 4 })];
	fc.assert(
		fc.property(lists[0] as fc.Arbitrary<Job[]>, lists[1] as fc.Arbitrary<never[]>, (all, cuts) => {
			const clock = workingClock(cuts);
			const least = Math.min(...orders(all).map((order) => worstOf(order, cuts)));
			expect(leastWorst(all, clock)).toBe(least);
			expect(preemptiveLeastWorst(all, clock)).toBeLessThanOrEqual(least);
		}),
		{ numRuns: 300 },
	);
});

function orders<Item>(items: readonly Item[]): readonly Item[][] {
	if (items.length === 0) return [[]];
	return items.flatMap((item, i) =>
		orders(items.filter((_, at) => at !== i)).map((rest) => [item, ...rest]),
	);
}

/** Second by second, without any arithmetic of windows. */
function worstOf(order: readonly Job[], cuts: readonly { from: number; to: number }[]): number {
	let [now, worst] = [0, -Infinity];
	for (const { from, seconds, wanted } of order) {
		now = Math.max(now, from);
		for (let left = seconds; left > 0; now += 1) {
			if (!cuts.some((cut) => cut.from <= now && now < cut.to)) left -= 1;
		}
		worst = Math.max(worst, now - wanted);
	}
	return worst;
}

test('the two readings of the clock agree', () => {
	const clock: WorkingClock = workingClock([
		{ from: 10, to: 20 },
		{ from: 15, to: 25 },
		{ from: 40, to: 45 },
	]);
	expect([0, 10, 12, 25, 30, 40, 45].map(clock.workedAt)).toEqual([0, 10, 10, 10, 15, 25, 25]);
	expect([10, 11, 25, 26].map(clock.momentAt)).toEqual([10, 26, 40, 46]);
	expect([9, 10, 24, 25].map(clock.freeFrom)).toEqual([9, 25, 25, 25]);
});
