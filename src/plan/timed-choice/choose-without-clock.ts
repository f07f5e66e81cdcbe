// The choice that the clock is held against first. It goes by the session and by which sections are ahead,
// not by when they are: as long as only the clock goes on it is the same, and is not made again.

import type { Budget } from '../choice/beam-search.ts';
import type { Choosing } from '../choice/choose-hands.ts';
import { chooseHands } from '../choice/choose-hands.ts';
import type { Possible, SearchGraph } from '../choice/search-graph.ts';
import { allPossible, searchGraph } from '../choice/search-graph.ts';
import { seatingOf } from '../choice/seats.ts';
import type { Outlook } from '../demand/outlook.ts';
import type { Told } from '../demand/told.ts';

export type FirstChoice = {
	readonly graph: SearchGraph;
	readonly possible: Possible;
	readonly choosing: Choosing;
};

/** What was chosen without the clock for one session, by all else that it goes by. */
export type WithoutClock = Map<string, FirstChoice & { readonly taken: number }>;

type Asked = {
	readonly outlook: Outlook;
	readonly told: Told | null;
	readonly budget: Budget;
};

/** This share of the budget at the most goes into the first choice without the clock: lateness weighs more than most of it. */
const WITHOUT_CLOCK = 0.6;
/** So much is gone on with where a budget has not led to any choice. */
const LEAST = 50_000;
/** What it takes of the budget to put everything into numbers, for each step of the graph. */
const NUMBERING = 3;

/**
 * The best choice without the clock, as far as its share of the budget goes; out of `known` where it was
 * made before for the same session, for as much of the budget.
 *
 * @example
 * chooseWithoutClock({ outlook, told: null, budget: { left: 100000 } }).choosing.counts[5] // => 2
 */
export function chooseWithoutClock(asked: Asked, known?: WithoutClock): FirstChoice {
	if (known === undefined) return chosen(asked);
	const { outlook, budget } = asked;
	const key = goesBy(asked);
	const found = known.get(key);
	if (found === undefined) {
		const before = budget.left;
		const made = chosen(asked);
		known.set(key, { ...made, taken: before - budget.left });
		return made;
	}
	budget.left -= found.taken;
	const { graph } = found;
	return { ...found, graph: { ...graph, seating: { ...graph.seating, outlook } } };
}

/** All that the choice goes by, beside the session. */
function goesBy({ outlook: { sections, restrungFor }, budget }: Asked): string {
	const ahead = sections.map(({ item, point, hasBegun, gapSeconds, isAfterInterval }) => [
		item,
		point,
		hasBegun,
		gapSeconds,
		isAfterInterval,
	]);
	return JSON.stringify([budget.left, [...restrungFor], ahead]);
}

function chosen({ outlook, told, budget }: Asked): FirstChoice {
	const graph = searchGraph(seatingOf(outlook, told));
	budget.left -= graph.steps.reduce((sum, { to }) => sum + NUMBERING * to.length, 0);
	const first: Budget = { ...budget, left: Math.max(0, budget.left) * WITHOUT_CLOCK };
	budget.left -= first.left;
	const possible = allPossible(graph);
	let choosing = chooseHands(graph, possible, { budget: first, before: null });
	// There is always a choice; where players hang together closely it takes more to find the first. Many
	// players with much to choose from would take millions of steps: they are led through greedily.
	for (let tries = 0; choosing === null; tries += 1) {
		const most = LEAST * 4 ** Math.max(0, tries - 1);
		const more: Budget = { left: most, ...(tries > 0 ? { isAnewInEach: true } : {}) };
		choosing = chooseHands(graph, possible, { budget: more, before: null });
		budget.left -= most - more.left;
	}
	budget.left += first.left;
	return { graph, possible, choosing };
}
