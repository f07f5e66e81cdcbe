// What the plan promises of work that waits for its instruments: least late from any moment on, and the
// latest moments mean what they say. Judged second by second, by trying every order.

import { describe, expect, test } from 'vitest';
import { freeClock } from '../../../src/plan/schedule/free-clock.ts';
import { orderWork } from '../../../src/plan/schedule/order-work.ts';
import { chance } from '../oracle/chance.ts';
import type { ClockCase } from '../oracle/clock-case.ts';
import {
	begunFrom,
	clockCase,
	freeSeconds,
	latenessOf,
	latesOf,
	leastByTrying,
} from '../oracle/clock-case.ts';

/** Cases that begin after a while, so that latest moments come after the first second; some in no hurry. */
const cases = Array.from({ length: 400 }, (_, seed): ClockCase => {
	const { chores, busy } = clockCase(seed, 3 + (seed % 4), seed % 3 > 0);
	const later = 100 + (seed % 4) * 3;
	return {
		chores: chores.map((one) => ({ ...one, from: one.from + 100, wanted: one.wanted + later })),
		busy: busy.map(([from, until]) => [from + 100, until + 100]),
	};
});

function planned({ chores, busy }: ClockCase, now: number) {
	const pieces = chores.map(({ from, seconds, wanted }) => ({
		seconds,
		releaseMs: from * 1000,
		dueMs: wanted * 1000,
		isEarly: false,
	}));
	const windows = busy.map(([from, until]) => ({ fromMs: from * 1000, untilMs: until * 1000 }));
	const clock = freeClock(windows);
	const timed = orderWork(pieces, { nowMs: now * 1000, clock, intervalEndsMs: null });
	const order = timed
		.toSorted((one, other) => one.beginByMs - other.beginByMs)
		.map(({ piece }) => pieces.indexOf(piece));
	return {
		shown: timed.map(({ piece }) => pieces.indexOf(piece)),
		late: Math.max(0, ...timed.map(({ piece, finishMs }) => (finishMs - piece.dueMs) / 1000)),
		/** The order that the latest moments go by, and each piece's moment by its place in the case. */
		order,
		beginBy: pieces.map((piece) => timed.find((one) => one.piece === piece)!.beginByMs / 1000),
	};
}

test('from any moment on the worst is least late', () => {
	const dice = chance(1);
	for (const asked of cases) {
		const now = 90 + dice.below(40);
		const { late, shown } = planned(asked, now);
		const then = begunFrom(asked, now);
		expect(late).toBe(Math.max(0, leastByTrying(then)));
		expect(Math.max(0, latenessOf(then, shown, freeSeconds(then)))).toBe(late);
	}
});

describe('a latest moment', () => {
	test('is early enough for it and all after it, and a second later is not', () => {
		for (const asked of cases) {
			const { order, beginBy } = planned(asked, 0);
			const unhurried = latesOf(asked, order, freeSeconds(asked));
			for (const [place, piece] of order.entries()) {
				const moment = beginBy[piece]!;
				const getsLate = (second: number): boolean => {
					const then = begunFrom(asked, second);
					return latesOf(then, order.slice(place), freeSeconds(then)).some(
						(late, index) => late > Math.max(0, unhurried[place + index]!),
					);
				};
				expect(getsLate(moment)).toBe(false);
				expect(getsLate(moment + 1)).toBe(true);
			}
		}
	});

	test('is, for the first, as late as any order allows', () => {
		const fitting = cases.filter((asked) => leastByTrying(asked) <= 0);
		expect(fitting.length).toBeGreaterThan(50);
		for (const asked of fitting) {
			const first = Math.min(...planned(asked, 0).beginBy);
			expect(leastByTrying(begunFrom(asked, first))).toBeLessThanOrEqual(0);
			expect(leastByTrying(begunFrom(asked, first + 1))).toBeGreaterThan(0);
		}
	});

	test('stands still, and all is on time until the first of them is over', () => {
		for (const asked of cases) {
			const { beginBy } = planned(asked, 0);
			const first = Math.min(...beginBy);
			for (const now of [90, first, first + 1, first + 30]) {
				expect(planned(asked, now).beginBy).toEqual(beginBy);
			}
			if (leastByTrying(asked) <= 0) expect(planned(asked, first).late).toBe(0);
		}
	});
});

test('the order goes by due times unless that makes something late', () => {
	let others = 0;
	for (const asked of cases) {
		const byDue = [...asked.chores.keys()].sort(
			(one, other) => asked.chores[one]!.wanted - asked.chores[other]!.wanted,
		);
		const { shown } = planned(asked, 0);
		if (latenessOf(asked, byDue, freeSeconds(asked)) <= 0) expect(shown).toEqual(byDue);
		else if (latenessOf(asked, shown, freeSeconds(asked)) <= 0) others += 1;
	}
	expect(others).toBeGreaterThan(10);
});
