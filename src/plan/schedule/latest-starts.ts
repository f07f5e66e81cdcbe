// The latest moments at which each piece of work can be begun. They go by an order that stands as long as all
// can be on time, and what the time is now plays no part: so they stand still while nothing happens.

import { exactOrder } from './exact-order.ts';
import { nearRank, nodesFor } from './least-late.ts';
import type { Waiting } from './pieces-of-work.ts';
import { latenessInOrder, piecesFrom } from './pieces-of-work.ts';

/**
 * Free milliseconds at which each piece has to be begun, by their places in the lists (given by when they are
 * due): in time for itself and for what comes after it. What cannot be on time, because it cannot be begun
 * early enough, holds nothing before it to a time in vain.
 *
 * @example
 * latestStarts({ releases: Float64Array.of(0, 0), lengths: Float64Array.of(45, 60), freeDues: Float64Array.of(100, 200), dues: Float64Array.of(100, 200), nightMs: (free) => free }) // => Float64Array.of(55, 140)
 */
export function latestStarts(waiting: Waiting): Float64Array {
	const { releases, lengths, freeDues } = waiting;
	const order = standingOrder(waiting);
	const latest = new Float64Array(order.length);
	let time = Number.NEGATIVE_INFINITY;
	for (const place of order) {
		time = Math.max(time, releases[place] as number) + (lengths[place] as number);
		latest[place] = Math.max(freeDues[place] as number, time);
	}
	let next = Number.POSITIVE_INFINITY;
	for (const place of order.toReversed()) {
		next = Math.min(latest[place] as number, next) - (lengths[place] as number);
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
 * standingOrder({ releases: Float64Array.of(480, -Infinity), lengths: Float64Array.of(60, 270), freeDues: Float64Array.of(600, 720), dues: Float64Array.of(600, 720), nightMs: (free) => free }) // => [1, 0]
 */
export function standingOrder(waiting: Waiting): readonly number[] {
	const byDue = [...waiting.lengths.keys()];
	const early = beforeAll(waiting);
	const onFree = { ...waiting, dues: waiting.freeDues, nightMs: (free: number): number => free };
	if (latenessInOrder(piecesFrom(early, onFree), byDue) <= 0) return byDue;
	const soon = piecesFrom(early, waiting);
	const most = nodesFor(byDue.length);
	const least = exactOrder(soon, { enoughMs: 0, nodes: most });
	if (least.latenessMs > 0) return nearRank(soon, least.order, byDue);
	// No order that is on time can be begun later than this; each round brings it down to what may be.
	let start = latestOfAll(waiting);
	for (let nodes = most; nodes > 0; ) {
		const pieces = piecesFrom(start, onFree);
		const found = exactOrder(pieces, { enoughMs: 0, nodes });
		if (found.latenessMs <= 0) return nearRank(pieces, found.order, byDue);
		if (found.boundMs <= 0) break;
		start -= found.boundMs;
		nodes -= found.nodes + 1;
	}
	return nearRank(soon, least.order, byDue);
}

/** So early that what nothing holds back can all be done before anything else matters. */
function beforeAll({ releases, lengths, freeDues }: Waiting): number {
	const first = Math.min(...releases.filter(Number.isFinite), ...freeDues);
	return first - lengths.reduce((sum, length) => sum + length, 0);
}

/** All that is due up to a moment has to be done by then. */
function latestOfAll({ lengths, freeDues }: Waiting): number {
	let sum = 0;
	let latest = Number.POSITIVE_INFINITY;
	lengths.forEach((length, place) => {
		sum += length;
		latest = Math.min(latest, (freeDues[place] as number) - sum);
	});
	return latest;
}
