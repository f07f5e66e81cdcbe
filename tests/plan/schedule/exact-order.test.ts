// The least late order against trying every order, and against a solver on a model of its own.

import { describe, expect, test } from 'vitest';
import { exactOrder, jackson } from '../../../src/plan/schedule/one-machine.ts';
import type { ClockCase } from '../oracle/clock-case.ts';
import { clockCase, freeSeconds, latenessOf, leastByTrying } from '../oracle/clock-case.ts';
import { clockPieces } from '../oracle/clock-pieces.ts';
import { leastBySolver } from '../oracle/time-indexed.ts';

const ALL = { enoughMs: Number.NEGATIVE_INFINITY, nodes: 10_000 };
const SOLVED = Number(process.env.SOLVER_RUNS ?? 60);

function seeds(count: number): number[] {
	return Array.from({ length: count }, (_, seed) => seed + 1);
}

function found(asked: ClockCase): number {
	const { order, latenessMs, boundMs, isProved } = exactOrder(clockPieces(asked), ALL);
	expect(isProved).toBe(true);
	expect(boundMs).toBe(latenessMs);
	expect(order.toSorted((one, other) => one - other)).toEqual([...asked.chores.keys()]);
	expect(latenessOf(asked, order, freeSeconds(asked))).toBe(latenessMs);
	return latenessMs;
}

describe.each([
	['free hands', false],
	['hands that are busy now and then', true],
])('%s', (_, isBusy) => {
	test('no order of 3 to 7 pieces is less late: every one tried', () => {
		for (const seed of seeds(200)) {
			const asked = clockCase(seed, 3 + (seed % 5), isBusy);
			expect(found(asked), `seed ${seed}`).toBe(leastByTrying(asked));
		}
	});

	test('a solver finds the same for 3 to 7 pieces, in a long run up to 12', () => {
		for (const seed of seeds(SOLVED / 2)) {
			const asked = clockCase(1000 + seed, 3 + (seed % (SOLVED > 60 ? 10 : 5)), isBusy);
			expect(found(asked), `seed ${seed}`).toBe(leastBySolver(asked));
		}
	});

	test('with any piece shorter it is no later', () => {
		for (const seed of seeds(100)) {
			const asked = clockCase(2000 + seed, 8, isBusy);
			const lateness = found(asked);
			for (const place of asked.chores.keys()) {
				const chores = asked.chores.map((one, index) =>
					index === place ? { ...one, seconds: one.seconds / 2 } : one,
				);
				const shorter = exactOrder(clockPieces({ ...asked, chores }), ALL);
				expect(shorter.latenessMs).toBeLessThanOrEqual(lateness);
			}
		}
	});
});

test('the cases ask for every step: orders that are not the first one found, bounds that are not met', () => {
	const cases = seeds(200).map((seed) => clockPieces(clockCase(seed, 3 + (seed % 5), true)));
	const results = cases.map((pieces) => ({ pieces, ...exactOrder(pieces, ALL) }));
	expect(results.filter(({ nodes }) => nodes > 1).length).toBeGreaterThan(20);
	const unmet = results.filter(
		({ pieces, latenessMs }) => jackson(pieces, { isPreemptive: true }).latenessMs < latenessMs,
	);
	expect(unmet.length).toBeGreaterThan(5);
});

test('an effort that ends early says so, and how late it is at least', () => {
	const early = seeds(400).flatMap((seed) => {
		const asked = clockCase(seed, 7, true);
		const whole = exactOrder(clockPieces(asked), ALL);
		const short = exactOrder(clockPieces(asked), { ...ALL, nodes: 1 });
		if (short.isProved) expect(short.latenessMs).toBe(whole.latenessMs);
		expect(short.boundMs).toBeLessThanOrEqual(whole.latenessMs);
		expect(short.latenessMs).toBeGreaterThanOrEqual(whole.latenessMs);
		return short.isProved ? [] : [seed];
	});
	expect(early.length).toBeGreaterThan(5);
});

test('an order late enough to do ends the search', () => {
	const asked = clockCase(7, 7, true);
	const { nodes, isProved } = exactOrder(clockPieces(asked), { enoughMs: 1e6, nodes: 10_000 });
	expect([nodes, isProved]).toEqual([1, true]);
});
