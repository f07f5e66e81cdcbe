// The latest moments at which each piece of work can be begun. They go by an order that stands as long as all
// can be on time, and what the time is now plays no part: so they stand still while nothing happens.

import type { FreeClock } from './free-clock.ts';
import { nearRank, nodesFor } from './least-late.ts';
import {
	endsInOrder,
	exactOrder,
	latenessInOrder,
	type PiecesOfWork,
	startingAt,
} from './one-machine.ts';

/**
 * Free milliseconds at which each piece has to be begun, by their places in the lists (given by when they are
 * due): in time for itself and for what comes after it. What cannot be on time, because it cannot be begun
 * early enough, holds nothing before it to a time in vain.
 *
 * @example
 * latestStarts({ heads: Float64Array.of(0, 0), lengths: Float64Array.of(45, 60), dues: Float64Array.of(100, 200), nightMs: (free) => free }, freeClock([])) // => Float64Array.of(55, 140)
 */
export function latestStarts(pieces: PiecesOfWork, clock: FreeClock): Float64Array {
	const order = standingOrder(pieces, clock);
	const ends = endsInOrder(pieces, order);
	const latest = pieces.dues.map((due, place) => Math.max(clock.at(due), ends[place] as number));
	let next = Number.POSITIVE_INFINITY;
	for (const place of order.toReversed()) {
		next = Math.min(latest[place] as number, next) - (pieces.lengths[place] as number);
		latest[place] = next;
	}
	return latest;
}

/**
 * By when they are due if everything can be on time so; else the order that can be begun latest with
 * everything on time; where nothing can bring all of it about, the least late one, begun as early as
 * anybody likes.
 *
 * @example
 * standingOrder({ heads: Float64Array.of(480, -Infinity), lengths: Float64Array.of(60, 270), dues: Float64Array.of(600, 720), nightMs: (free) => free }, freeClock([])) // => [1, 0]
 */
export function standingOrder(pieces: PiecesOfWork, clock: FreeClock): readonly number[] {
	const { heads, lengths, dues } = pieces;
	const byDue = [...lengths.keys()];
	const onFree = { ...pieces, dues: dues.map(clock.at), nightMs: (free: number): number => free };
	// So early that what nothing holds back can all be done before anything else matters.
	const inAll = lengths.reduce((sum, length) => sum + length, 0);
	const early = Math.min(...heads.filter(Number.isFinite), ...onFree.dues) - inAll;
	if (latenessInOrder(startingAt(early, onFree), byDue) <= 0) return byDue;
	const soon = startingAt(early, pieces);
	const most = nodesFor(byDue.length);
	const least = exactOrder(soon, { enoughMs: 0, nodes: most });
	if (least.latenessMs > 0) return nearRank(soon, least.order, byDue);
	// All that is due up to a moment has to be done by then: no order that is on time can be begun later than
	// that; each round brings it down to what may be.
	let start = Number.POSITIVE_INFINITY;
	let sum = 0;
	for (const place of byDue) {
		sum += lengths[place] as number;
		start = Math.min(start, (onFree.dues[place] as number) - sum);
	}
	for (let nodes = most; nodes > 0; ) {
		const begun = startingAt(start, onFree);
		const found = exactOrder(begun, { enoughMs: 0, nodes });
		if (found.latenessMs <= 0) return nearRank(begun, found.order, byDue);
		if (found.boundMs <= 0) break;
		start -= found.boundMs;
		nodes -= found.nodes + 1;
	}
	return nearRank(soon, least.order, byDue);
}
