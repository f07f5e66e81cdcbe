// The best choice for all players without the clock. What each player alone comes to at the least, from
// everywhere on, leads the search for all of them together: where nobody is in another's way it leads straight
// to the best.

import { type Budget, beamSearch } from './beam-search.ts';
import { type CostToGo, costToGo } from './cost-to-go.ts';
import { countHands, type Hands } from './count-hands.ts';
import { type Counts, unpacked } from './criteria.ts';
import type { Possible, SearchGraph } from './search-graph.ts';
import type { Seat } from './seats.ts';

export type Choosing = {
	readonly hands: Hands;
	readonly counts: Counts;
	/** Nothing better than this is possible; the counts themselves where that is proved. */
	readonly bound: Counts;
	readonly toGo: readonly CostToGo[];
};

/**
 * The best choice in what is possible, or the best found; null where there is none. `before` is the choice
 * where more was possible: if it still is, it stays the best.
 *
 * @example
 * chooseHands(graph, allPossible(graph), { budget: { left: 10000 }, before: null }).counts[5] // => 2
 */
export function chooseHands(
	graph: SearchGraph,
	possible: Possible,
	{ budget, before }: { readonly budget: Budget; readonly before: Choosing | null },
): Choosing | null {
	if (before !== null && isPossible(graph, possible, before)) return before;
	const toGo = possible.map((_, seat) =>
		costToGo(graph, possible, { seat, before: before?.toGo[seat] ?? null }),
	);
	budget.left -= toGo.reduce((sum, { effort }) => sum + 2 * effort, 0);
	const { hands, bound } = beamSearch({ graph, possible, toGo, budget });
	if (hands === null) return null;
	return { hands, counts: countHands(graph, hands), bound: unpacked(bound, graph.weights), toGo };
}

function isPossible({ seating }: SearchGraph, possible: Possible, { hands }: Choosing): boolean {
	return hands.every((mine, seat) => {
		const size = (seating.seats[seat] as Seat).hands.length;
		return mine.every((hand, section) => possible[seat]?.[section * size + hand] === 1);
	});
}
