// The choice without the clock before the doors, as far as so many steps go.

import { chooseHands } from '../../src/plan/choice/choose-hands.ts';
import { allPossible, searchGraph } from '../../src/plan/choice/search-graph.ts';
import { seatingOf } from '../../src/plan/choice/seats.ts';
import { outlookOf } from '../../src/plan/demand/outlook.ts';
import { momentBefore, readyAtZero } from '../../src/plan/timed-choice/before-doors.ts';
import type { Show } from '../../src/showfile/show.ts';

export function chosenFor(show: Show, budget: number) {
	const outlook = outlookOf(momentBefore(readyAtZero(show)));
	const seating = seatingOf(outlook, null);
	const graph = searchGraph(seating);
	let chosen = null;
	// As the plan does where it has not led to any choice: with more of it.
	for (let left = budget; chosen === null; left *= 4) {
		chosen = chooseHands(graph, allPossible(graph), { budget: { left }, before: null });
	}
	return { outlook, seating, chosen, isProved: isSame(chosen.counts, chosen.bound) };
}

/** The criteria that the clock has no part in, `changed` left out. */
export function figuresOf(counts: readonly number[]): readonly number[] {
	const [missing, substituted, overGap, , ...rest] = counts;
	return [missing!, substituted!, overGap!, ...rest];
}

function isSame(one: readonly number[], other: readonly number[]): boolean {
	return one.every((count, place) => count === other[place]);
}
