// The best choice for all players without the clock, in what is still possible.

import { type Budget, beamSearch, type Hands } from './beam-search.ts';
import { type Counts, unpacked } from './criteria.ts';
import type { Domains } from './domains.ts';
import type { SearchGraph } from './search-graph.ts';

export type Choosing = {
	readonly hands: Hands;
	readonly counts: Counts;
	/** Nothing better than this is possible; the counts themselves where that is proved. */
	readonly bound: Counts;
};

/**
 * The best choice in these domains, or the best found; null where the budget led to none. `before` is the choice
 * in wider ones: if it is still among these, it stays the best.
 *
 * @example
 * chooseHands(graph, allDomains(graph), { budget: { left: 10000 }, before: null }).counts[5] // => 2
 */
export function chooseHands(
	graph: SearchGraph,
	domains: Domains,
	{ budget, before }: { readonly budget: Budget; readonly before: Choosing | null },
): Choosing | null {
	const isStillIn = before?.hands.every((mine, seat) => {
		const size = graph.seating.seats[seat]?.hands.length as number;
		return mine.every((hand, section) => domains[seat]?.has[section * size + hand] === 1);
	});
	if (before !== null && isStillIn) return before;
	const found = beamSearch(graph, domains, budget);
	return found && { ...found, bound: unpacked(found.bound, graph.weights) };
}
