// One pair of hands: the order of the work against published cases of the one-machine problem, against
// enumeration, and the promise that the latest moments stand still.

import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { FreeClock } from '../../../src/plan/schedule/free-clock.ts';
import { freeClock } from '../../../src/plan/schedule/free-clock.ts';
import type { Piece, Timed } from '../../../src/plan/schedule/order-work.ts';
import { orderWork as orderedWork } from '../../../src/plan/schedule/order-work.ts';

type Job = Piece & { readonly name: string };

function jobs(
	...rows: readonly (readonly [name: string, r: number, p: number, d: number])[]
): Job[] {
	return rows.map(([name, r, seconds, d]) => ({
		name,
		seconds,
		releaseMs: r * 1000,
		dueMs: d * 1000,
		isEarly: false,
	}));
}

function orderWork<P extends Piece>(
	pieces: readonly P[],
	when: { readonly nowMs: number; readonly clock: FreeClock },
): readonly Timed<P>[] {
	return orderedWork(pieces, { ...when, intervalEndsMs: null });
}

const plain = { nowMs: 0, clock: freeClock([]) };

function names(timed: readonly Timed<Job>[]): string {
	return timed.map(({ piece }) => piece.name).join('');
}

/** Seconds by which the worst piece ends after it is due; negative when all are early. */
function worstLateness(timed: readonly Timed<Piece>[]): number {
	return Math.max(...timed.map(({ piece, finishMs }) => (finishMs - piece.dueMs) / 1000));
}

describe('published cases', () => {
	// A university course page on greedy algorithms: earliest due date first, four jobs.
	test('four jobs by due date: one late, by one', () => {
		const timed = orderWork(
			jobs(['A', 0, 3, 6], ['B', 0, 2, 8], ['C', 0, 1, 9], ['D', 0, 4, 9]),
			plain,
		);
		expect(names(timed)).toBe('ABCD');
		expect(worstLateness(timed)).toBe(1);
		const late = timed.filter(({ piece, finishMs }) => finishMs > piece.dueMs);
		expect(late.map(({ piece }) => piece.name)).toEqual(['D']);
	});

	// A widely used lecture example; its data from memory, its value computed by a short script.
	test('six jobs by due date: late by one', () => {
		const timed = orderWork(
			jobs(
				['1', 0, 3, 6],
				['2', 0, 2, 8],
				['3', 0, 1, 9],
				['4', 0, 4, 9],
				['5', 0, 3, 14],
				['6', 0, 2, 15],
			),
			plain,
		);
		expect(worstLateness(timed)).toBe(1);
	});

	// The example after the algorithm for fewest late jobs in a scheduling textbook;
	// the value for due-date order computed.
	test('five jobs by due date: late by ten', () => {
		const timed = orderWork(
			jobs(['1', 0, 7, 9], ['2', 0, 8, 17], ['3', 0, 4, 18], ['4', 0, 6, 19], ['5', 0, 6, 21]),
			plain,
		);
		expect(worstLateness(timed)).toBe(10);
	});

	// A lecture slide: earliest due date among what can be begun is not best; waiting a unit is.
	test('two jobs with releases: waiting for the urgent one, nothing is late', () => {
		const timed = orderWork(jobs(['1', 0, 5, 10], ['2', 1, 1, 2]), plain);
		expect(names(timed)).toBe('21');
		expect(worstLateness(timed)).toBe(0);
	});

	// Six jobs with releases, one order without lateness: computed by enumeration and a solver.
	test('six jobs with releases: the only order that makes none late', () => {
		const timed = orderWork(
			jobs(
				['1', 0, 5, 9],
				['2', 0, 3, 12],
				['3', 4, 4, 10],
				['4', 6, 2, 15],
				['5', 8, 6, 22],
				['6', 9, 1, 13],
			),
			plain,
		);
		expect(names(timed)).toBe('132645');
		expect(worstLateness(timed)).toBe(0);
		expect(timed.every(({ piece, startMs }) => startMs >= piece.releaseMs)).toBe(true);
	});
});

test('a piece that waits for its instrument does not hold up one that would be late behind it', () => {
	const timed = orderWork(jobs(['A', 480, 60, 600], ['B', 0, 270, 720]), plain);
	expect(names(timed)).toBe('BA');
	expect(timed.map(({ beginByMs }) => beginByMs / 1000)).toEqual([270, 540]);
	expect(worstLateness(timed)).toBeLessThanOrEqual(0);
});

test('what is late whatever is done makes nothing else late elsewhere', () => {
	const timed = orderWork(
		jobs(['A', 0, 60, 10], ['B', 200, 5, 210], ['C', 201, 1, 202], ['D', 300, 5, 400]),
		plain,
	);
	expect(names(timed)).toBe('ACBD');
	const late = timed.map(({ piece, finishMs }) => Math.max(0, finishMs - piece.dueMs) / 1000);
	expect(late).toEqual([50, 0, 0, 0]);
});

test('due together, they are done in the order given', () => {
	expect(names(orderWork(jobs(['A', 0, 9, 50], ['B', 0, 1, 50], ['C', 0, 5, 50]), plain))).toBe(
		'ABC',
	);
});

test('a hand-over in the middle pauses the work and takes nothing from it', () => {
	const clock = freeClock([{ fromMs: 30_000, untilMs: 45_000 }]);
	const [only] = orderWork(jobs(['A', 0, 60, 90]), { nowMs: 0, clock });
	expect(only).toMatchObject({ startMs: 0, finishMs: 75_000, beginByMs: 15_000 });
});

const piece = fc.record({
	seconds: fc.integer({ min: 1, max: 90 }),
	releaseMs: fc.integer({ min: -300, max: 300 }).map((seconds) => seconds * 1000),
	dueMs: fc.integer({ min: 0, max: 900 }).map((seconds) => seconds * 1000),
	isEarly: fc.constant(false),
});

const windows = fc
	.array(fc.tuple(fc.integer({ min: 1, max: 200 }), fc.integer({ min: 1, max: 40 })), {
		maxLength: 6,
	})
	.map((gaps) => {
		let ms = -100_000;
		return gaps.map(([gap, length]) => {
			const fromMs = ms + gap * 1000;
			ms = fromMs + length * 1000;
			return { fromMs, untilMs: ms };
		});
	});

function permutations<T>(items: readonly T[]): readonly (readonly T[])[] {
	if (items.length < 2) return [items];
	return items.flatMap((item, index) =>
		permutations(items.filter((_, other) => other !== index)).map((rest) => [item, ...rest]),
	);
}

test('with everything at hand, no order is less late (enumeration)', () => {
	fc.assert(
		fc.property(fc.array(piece, { minLength: 1, maxLength: 5 }), (pieces) => {
			const free = pieces.map((one) => ({ ...one, releaseMs: Number.NEGATIVE_INFINITY }));
			const best = Math.min(
				...permutations(free).map((order) => {
					let time = 0;
					return Math.max(
						...order.map(({ seconds, dueMs }) => {
							time += seconds * 1000;
							return (time - dueMs) / 1000;
						}),
					);
				}),
			);
			expect(worstLateness(orderWork(free, plain))).toBe(best);
		}),
	);
});

test('pieces keep their releases, follow each other, and are done by now plus what they take', () => {
	fc.assert(
		fc.property(
			fc.array(piece, { maxLength: 8 }),
			windows,
			fc.integer({ min: -200, max: 600 }),
			(pieces, busy, now) => {
				const clock = freeClock(busy);
				const timed = orderWork(pieces, { nowMs: now * 1000, clock });
				expect(timed.map(({ piece: one }) => one)).toHaveLength(pieces.length);
				let free = clock.at(now * 1000);
				for (const { piece: one, startMs, finishMs } of timed) {
					expect(startMs).toBeGreaterThanOrEqual(Math.max(one.releaseMs, now * 1000));
					expect(clock.at(startMs)).toBeGreaterThanOrEqual(free);
					free = clock.at(startMs) + one.seconds * 1000;
					expect(clock.at(finishMs)).toBe(free);
					const isBusy = busy.some(({ fromMs, untilMs }) => fromMs <= startMs && startMs < untilMs);
					expect(isBusy).toBe(false);
				}
			},
		),
	);
});

/** What may be begun by when it is wanted, then what may not yet; null where something would be late so. */
function wishedOrder(pieces: readonly Piece[], { nowMs, clock }: typeof plain) {
	const wished = pieces.toSorted(
		(one, other) =>
			Number(one.releaseMs > nowMs) - Number(other.releaseMs > nowMs) || one.dueMs - other.dueMs,
	);
	let free = clock.at(nowMs);
	for (const { releaseMs, seconds, dueMs } of wished) {
		free = Math.max(free, clock.at(releaseMs)) + seconds * 1000;
		if (clock.firstMs(free) > dueMs) return null;
	}
	return wished;
}

test('latest moments do not depend on the time, nor the order but by what may be begun by then', () => {
	fc.assert(
		fc.property(
			fc.array(piece, { minLength: 1, maxLength: 8 }),
			windows,
			fc.tuple(fc.integer({ min: -300, max: 900 }), fc.integer({ min: -300, max: 900 })),
			(pieces, busy, [one, other]) => {
				const clock = freeClock(busy);
				const latest = [one, other].map((now) => {
					const when = { nowMs: now * 1000, clock };
					const timed = orderWork(pieces, when);
					const wished = wishedOrder(pieces, when);
					if (wished !== null) expect(timed.map(({ piece: p }) => p)).toEqual(wished);
					return pieces.map((p) => timed.find(({ piece: its }) => its === p)?.beginByMs);
				});
				expect(latest[1]).toEqual(latest[0]);
			},
		),
	);
});

test('begun at its latest moment, with all before it done, neither it nor anything after it is late', () => {
	fc.assert(
		fc.property(fc.array(piece, { minLength: 1, maxLength: 6 }), windows, (pieces, busy) => {
			const clock = freeClock(busy);
			const atHand = pieces.map((one) => ({ ...one, releaseMs: Number.NEGATIVE_INFINITY }));
			const timed = orderWork(atHand, { nowMs: 0, clock });
			const byLatest = timed.toSorted((one, other) => one.beginByMs - other.beginByMs);
			byLatest.forEach(({ beginByMs }, index) => {
				const rest = byLatest.slice(index).map(({ piece: one }) => one);
				const onTime = orderWork(rest, { nowMs: beginByMs, clock });
				for (const { piece: one, finishMs } of onTime) {
					expect(clock.at(finishMs)).toBeLessThanOrEqual(clock.at(one.dueMs));
				}
				const tooLate = orderWork(rest, { nowMs: beginByMs + 1, clock });
				expect(
					tooLate.some(({ piece: p, finishMs }) => clock.at(finishMs) > clock.at(p.dueMs)),
				).toBe(true);
			});
		}),
	);
});
