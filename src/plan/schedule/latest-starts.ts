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
 * By when they are due if everything can be on time so; else the order that can be begun latest with everything on
 * time; where nothing can bring that about, the least late one, begun as early as anybody likes.
 */
function standingOrder(pieces: PiecesOfWork, clock: FreeClock): readonly number[] {
	const byDue = [...pieces.lengths.keys()];
	const onFree = { ...pieces, dues: pieces.dues.map(clock.at), nightMs: (free: number) => free };
	// So early that what nothing holds back can all be done before anything else matters.
	const inAll = pieces.lengths.reduce((sum, length) => sum + length, 0);
	const early = Math.min(...pieces.heads.filter(Number.isFinite), ...onFree.dues) - inAll;
	const soon = startingAt(early, pieces);
	if (latenessInOrder(soon, byDue) <= 0) return byDue;
	const most = nodesFor(byDue.length);
	const least = exactOrder(soon, { enoughMs: 0, nodes: most });
	if (least.latenessMs > 0) return nearRank(soon, least.order, byDue);
	// Begun too late by what no order can make up for, it is begun so much earlier.
	let start = Math.max(...onFree.dues);
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
