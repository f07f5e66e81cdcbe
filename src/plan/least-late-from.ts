// The order in which the worst piece of work is least late when all is begun at a given moment, the rest
// no later for it than need be, and as near to the order in which the pieces are due as that allows.

import type { ExactOrder } from './exact-order.ts';
import { exactOrder } from './exact-order.ts';
import type { PiecesOfWork, Waiting } from './pieces-of-work.ts';
import { finishesInOrder, latenessInOrder, piecesFrom } from './pieces-of-work.ts';

/** Sets of orders looked at for one list of work: twenty times the most that chance ever asked for. */
export const NODES = 2000;

/** With more pieces late than this there is no rest to see to: all hangs together. */
const SET_ASIDE = 4;

/**
 * The least late order from this moment on; one in which nothing is late is as good as any other.
 *
 * @example
 * leastLateFrom(480, { releases: Float64Array.of(480, -Infinity), lengths: Float64Array.of(60, 270), freeDues: Float64Array.of(600, 720), dues: Float64Array.of(600, 720), nightMs: (free) => free }).order // => [0, 1]
 */
export function leastLateFrom(start: number, waiting: Waiting): ExactOrder {
	const pieces = piecesFrom(start, waiting);
	const found = exactOrder(pieces, { enoughMs: 0, nodes: NODES });
	return { ...found, order: nearDueOrder(pieces, restInTime(pieces, found)) };
}

/**
 * Where something is late whatever is done, an order in which it alone is: the latest is wanted no sooner
 * than it can be done, and all are put in order again, until nothing is late that need not be. The order
 * found where that does not come about, or much is late.
 */
function restInTime(pieces: PiecesOfWork, found: ExactOrder): readonly number[] {
	let { order, latenessMs } = found;
	const now = finishesInOrder(pieces, order);
	const late = order.filter((piece) => (now[piece] ?? 0) > (pieces.dues[piece] ?? 0));
	if (late.length < 2 || late.length > SET_ASIDE) return order;
	const relaxed = { ...pieces, dues: pieces.dues.slice() };
	while (latenessMs > 0) {
		const finishes = finishesInOrder(pieces, order);
		const latest = order.find(
			(piece) => (finishes[piece] ?? 0) - (relaxed.dues[piece] ?? 0) >= latenessMs,
		);
		const isAside = latest !== undefined && relaxed.dues[latest] !== pieces.dues[latest];
		const isWorse = latenessMs > found.latenessMs;
		if (latest === undefined || isAside || isWorse) return found.order;
		relaxed.dues[latest] = finishes[latest] ?? 0;
		({ order, latenessMs } = exactOrder(relaxed, { enoughMs: 0, nodes: NODES }));
	}
	return order;
}

/**
 * The order with pieces exchanged that stand against their due times, wherever neither becomes late by
 * that, or later than it is.
 *
 * @example
 * nearDueOrder({ heads: Float64Array.of(0, 0), lengths: Float64Array.of(5, 5), dues: Float64Array.of(20, 30), nightMs: (free) => free }, [1, 0]) // => [0, 1]
 */
export function nearDueOrder(pieces: PiecesOfWork, order: readonly number[]): readonly number[] {
	const finishes = finishesInOrder(pieces, order);
	const dues = pieces.dues.map((due, piece) => Math.max(due, finishes[piece] ?? 0));
	let now = order;
	for (let place = 1; place < now.length; place = place < 1 ? 1 : place + 1) {
		const before = now[place - 1] ?? 0;
		const after = now[place] ?? 0;
		if (before < after) continue;
		const other = now.with(place - 1, after).with(place, before);
		if (latenessInOrder({ ...pieces, dues }, other) > 0) continue;
		now = other;
		place -= 2;
	}
	return now;
}
