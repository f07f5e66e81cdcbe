// In which order the work is done, and when each piece then begins and ends. One pair of hands, no
// piece put down for another.

import type { NightMs } from '../journal/entry.ts';
import type { FreeClock } from './free-clock.ts';

/** A piece of work before it has its place. */
export type Piece = {
	readonly seconds: number;
	/** Not to be begun before, whatever the time is now; `-Infinity` where nothing holds it back. */
	readonly releaseMs: NightMs;
	/** When its instrument is back, which no haste can change: `releaseMs` unless said. The order goes by this one. */
	readonly backMs?: NightMs;
	readonly dueMs: NightMs;
};

/** A piece of work in its place. */
export type Timed<P extends Piece> = {
	readonly piece: P;
	readonly startMs: NightMs;
	readonly finishMs: NightMs;
	/** The latest moment at which it can be begun without making itself or anything after it late. */
	readonly beginByMs: NightMs;
};

/**
 * The pieces in the order in which to do them, begun at `nowMs`. By when they are due, ties in the
 * order given; where that cannot work however early it is begun, because a piece waits for its
 * instrument, the order that takes what can be begun first, if that is less late. The order never
 * depends on the time, so that the latest moments stand still while nothing happens.
 *
 * @example
 * orderWork([{ seconds: 60, releaseMs: 0, backMs: 0, dueMs: 200000 }, { seconds: 45, releaseMs: 0, backMs: 0, dueMs: 100000 }], { nowMs: 10000, clock: freeClock([]) }).map(({ finishMs, beginByMs }) => [finishMs, beginByMs]) // => [[55000, 55000], [115000, 140000]]
 */
export function orderWork<P extends Piece>(
	pieces: readonly P[],
	{ nowMs, clock }: { readonly nowMs: NightMs; readonly clock: FreeClock },
): readonly Timed<P>[] {
	const byDue = inOrder(pieces.map((piece) => ({ piece, ...onFreeClock(piece, clock) })));
	const order = bestOrder(byDue);
	const latest = latestStarts(order);
	let free = clock.at(nowMs);
	return order.map(({ piece, release, length }, index): Timed<P> => {
		const start = Math.max(free, release);
		free = start + length;
		return {
			piece,
			startMs: Math.max(clock.lastMs(start), nowMs),
			finishMs: clock.firstMs(free),
			beginByMs: clock.lastMs(latest[index] ?? 0),
		};
	});
}

/** A piece on the free clock. */
type Free = {
	readonly release: number;
	readonly back: number;
	readonly due: number;
	readonly length: number;
};

function onFreeClock(piece: Piece, clock: FreeClock): Free {
	const { seconds, releaseMs, backMs = releaseMs, dueMs } = piece;
	const at = (ms: NightMs): number => (Number.isFinite(ms) ? clock.at(ms) : ms);
	return {
		release: at(releaseMs),
		back: at(backMs),
		due: clock.at(dueMs),
		length: seconds * 1000,
	};
}

function inOrder<F extends Free>(pieces: readonly F[]): readonly F[] {
	return pieces.toSorted((one, other) => one.due - other.due);
}

function bestOrder<F extends Free>(byDue: readonly F[]): readonly F[] {
	const late = inherentLateness(byDue);
	if (late.worst <= 0) return byDue;
	const byRelease = whatCanBeBegunFirst(byDue);
	const other = inherentLateness(byRelease);
	const isBetter =
		other.worst < late.worst || (other.worst === late.worst && other.total < late.total);
	return isBetter ? byRelease : byDue;
}

/** How late an order is when it is begun as early as anybody likes. */
function inherentLateness(order: readonly Free[]): {
	readonly worst: number;
	readonly total: number;
} {
	let time = Number.NEGATIVE_INFINITY;
	let worst = 0;
	let total = 0;
	for (const { back, due, length } of order) {
		time = Math.max(time, back) + length;
		worst = Math.max(worst, time - due);
		total += Math.max(0, time - due);
	}
	return { worst, total };
}

/** Of what can be begun, always the piece due first; never idle while one can be. */
function whatCanBeBegunFirst<F extends Free>(byDue: readonly F[]): readonly F[] {
	const left = [...byDue];
	const order: F[] = [];
	let time = Number.NEGATIVE_INFINITY;
	while (left.length > 0) {
		time = Math.max(time, Math.min(...left.map(({ back }) => back)));
		const index = left.findIndex(({ back }) => back <= time);
		const [next] = left.splice(Math.max(0, index), 1);
		if (next === undefined) break;
		order.push(next);
		time += next.length;
	}
	return order;
}

/**
 * Backwards through the order: each begun in time for itself and for what comes after it. What cannot
 * be on time, because its instrument comes back too late, holds nothing before it to a time in vain.
 */
function latestStarts(order: readonly Free[]): readonly number[] {
	let time = Number.NEGATIVE_INFINITY;
	const dues = order.map(({ back, due, length }) => {
		time = Math.max(time, back) + length;
		return Math.max(due, time);
	});
	let next = Number.POSITIVE_INFINITY;
	return order
		.map(({ length }, index) => ({ length, due: dues[index] ?? 0 }))
		.toReversed()
		.map(({ due, length }) => {
			next = Math.min(due, next) - length;
			return next;
		})
		.reverse();
}
