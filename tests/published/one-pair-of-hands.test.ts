// The order of work on one machine with releases and due times, against published cases. Those "computed"
// come from enumeration by a short independent script and from the solver HiGHS; none from our code.

import { describe, expect, test } from 'vitest';
import type { PiecesOfWork } from '../../src/plan/schedule/one-machine.ts';
import { exactOrder, jackson, latenessInOrder } from '../../src/plan/schedule/one-machine.ts';

type Job = readonly [release: number, length: number, due: number];

function pieces(jobs: readonly Job[]): PiecesOfWork {
	return {
		heads: Float64Array.from(jobs, ([release]) => release),
		lengths: Float64Array.from(jobs, ([, length]) => length),
		dues: Float64Array.from(jobs, ([, , due]) => due),
		nightMs: (free) => free,
	};
}

function best(jobs: readonly Job[], nodes = 1000) {
	return exactOrder(pieces(jobs), { enoughMs: Number.NEGATIVE_INFINITY, nodes });
}

/** Jobs counted from 1, as they are printed. */
function inOrder(jobs: readonly Job[], order: readonly number[]): number {
	return latenessInOrder(
		pieces(jobs),
		order.map((job) => job - 1),
	);
}

describe('seven jobs with heads and tails', () => {
	// The classic example for one machine with heads and tails, as printed in the documentation of an open library
	// for scheduling: 50 at best, 53 by what is wanted first, 58 in the order 1 to 7. That 49 is the bound with
	// pieces put down, and that the optimum is 50 (24 with 26 less), computed. A tail is what follows the
	// job before all is done: due so much before nothing.
	const heads = [10, 13, 11, 20, 30, 0, 30];
	const lengths = [5, 6, 7, 4, 3, 6, 2];
	const tails = [7, 26, 24, 21, 8, 17, 0];
	const jobs = heads.map((head, at): Job => [head, lengths[at]!, -tails[at]!]);

	test('the best order takes 50', () => {
		expect(best(jobs)).toMatchObject({ latenessMs: 50, boundMs: 50, isProved: true });
		expect(inOrder(jobs, [6, 3, 2, 4, 1, 5, 7])).toBe(50);
	});

	test('the first order looked at takes 53, and is not called proved', () => {
		expect(best(jobs, 1)).toMatchObject({ latenessMs: 53, isProved: false });
	});

	test('one after the other they take 58', () => {
		expect(inOrder(jobs, [1, 2, 3, 4, 5, 6, 7])).toBe(58);
	});

	test('with pieces put down it is 49', () => {
		expect(jackson(pieces(jobs), { isPreemptive: true }).latenessMs).toBe(49);
	});
});

test('four jobs at hand: late by one, only the last', () => {
	// A university course page on greedy algorithms.
	const jobs: Job[] = [
		[0, 3, 6],
		[0, 2, 8],
		[0, 1, 9],
		[0, 4, 9],
	];
	expect(best(jobs)).toMatchObject({ order: [0, 1, 2, 3], latenessMs: 1 });
	expect(inOrder(jobs.slice(0, 3), [1, 2, 3])).toBeLessThanOrEqual(0);
});

test('six jobs at hand: late by one; by six when the shortest goes first', () => {
	// A widely used lecture example; its data from memory, its values computed.
	const jobs: Job[] = [
		[0, 3, 6],
		[0, 2, 8],
		[0, 1, 9],
		[0, 4, 9],
		[0, 3, 14],
		[0, 2, 15],
	];
	expect(best(jobs).latenessMs).toBe(1);
	expect(inOrder(jobs, [3, 2, 6, 1, 5, 4])).toBe(6);
});

describe('five jobs of which some must be late', () => {
	// The example after the algorithm for the fewest late jobs in a scheduling textbook;
	// what due-date order comes to, computed.
	const jobs: Job[] = [
		[0, 7, 9],
		[0, 8, 17],
		[0, 4, 18],
		[0, 6, 19],
		[0, 6, 21],
	];

	test('the worst is late by ten', () => {
		expect(best(jobs).latenessMs).toBe(10);
		expect(inOrder(jobs, [1, 2, 3, 4, 5])).toBe(10);
	});

	test('three can be on time together, the last three, and no four', () => {
		expect(best(jobs.slice(2)).latenessMs).toBeLessThanOrEqual(0);
		for (const without of jobs) {
			expect(best(jobs.filter((job) => job !== without)).latenessMs).toBeGreaterThan(0);
		}
	});
});

test('two jobs with releases: waiting for the urgent one is better than never being idle', () => {
	// A lecture slide states that earliest due first is not best without putting down; values computed.
	const jobs: Job[] = [
		[0, 5, 10],
		[1, 1, 2],
	];
	expect(best(jobs)).toMatchObject({ order: [1, 0], latenessMs: 0 });
	expect(best(jobs, 1).latenessMs).toBe(4);
	expect(jackson(pieces(jobs), { isPreemptive: true }).latenessMs).toBe(0);
});

test('three jobs with releases: early by one, also without putting down', () => {
	// Computed.
	const jobs: Job[] = [
		[0, 6, 20],
		[2, 2, 5],
		[4, 3, 9],
	];
	expect(jackson(pieces(jobs), { isPreemptive: true }).latenessMs).toBe(-1);
	expect(best(jobs).latenessMs).toBe(-1);
	expect(best(jobs, 1).latenessMs).toBe(3);
});

test('six jobs with releases: one order alone makes none late', () => {
	// Computed.
	const jobs: Job[] = [
		[0, 5, 9],
		[0, 3, 12],
		[4, 4, 10],
		[6, 2, 15],
		[8, 6, 22],
		[9, 1, 13],
	];
	const { order, latenessMs } = best(jobs);
	expect(latenessMs).toBe(0);
	expect(order.map((job) => job + 1)).toEqual([1, 3, 2, 6, 4, 5]);
});
