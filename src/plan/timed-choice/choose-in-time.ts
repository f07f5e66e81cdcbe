// Who plays what so that the work is done in time: branch and bound around the choice without the clock (A. H. Land,
// A. G. Doig 1960, from memory). What that choice comes to is weighed with the clock; where it is late, the slot
// that bears most on it is asked whether it stays as it is, and both answers are gone on with, the one that can be
// less late first (best first search), until nothing can be better or the budget is gone.

import type { Budget } from '../choice/beam-search.ts';
import { choicesOf } from '../choice/choices.ts';
import { type Choosing, chooseHands } from '../choice/choose-hands.ts';
import { type Counts, compared, OVER_GAP } from '../choice/criteria.ts';
import { type Domains, type HandAt, narrowed } from '../choice/domains.ts';
import type { SearchGraph } from '../choice/search-graph.ts';
import type { Outlook } from '../demand/outlook.ts';
import type { Told } from '../demand/told.ts';
import { type Schedule, scheduleOf, type Weighed, weigh } from '../schedule/schedule.ts';
import { chooseWithoutClock, type WithoutClock } from './choose-without-clock.ts';
import { openSlot } from './open-slot.ts';
import { sureLatenessMs } from './sure-work.ts';

/** The best choice with what follows from it. */
export type InTime = {
	readonly schedule: Schedule;
	readonly counts: Counts;
	readonly isProved: boolean;
	/** What nothing is better than, with the milliseconds of lateness in their place. */
	readonly bound: Counts;
};

export type ChooseAsked = {
	readonly outlook: Outlook;
	/** What the plan before gave; null when there is none. */
	readonly told: Told | null;
	readonly budget: Budget;
	/** What was chosen before for the same session. */
	readonly known?: WithoutClock;
};

/** The place of the lateness among the counts: after what weighs more. */
export const LATENESS = OVER_GAP + 1;

/** What weighing a choice with the clock takes of the budget, for each slot of it. */
const WEIGHING = 60;

/** What is possible still, with the best of it as long as the clock is left out. */
type Node = {
	readonly domains: Domains;
	readonly choosing: Choosing;
	readonly weighed: Weighed;
	/** What that one comes to, lateness in its place. */
	readonly full: Counts;
	/** What any of them comes to at least. */
	readonly least: Counts;
};

/**
 * The best choice there is, as far as the budget goes.
 *
 * @example
 * chooseInTime({ outlook, told: null, budget: { left: 100000 } }).isProved // => true
 */
export function chooseInTime({ outlook, told, budget, known }: ChooseAsked): InTime {
	const { graph, ...first } = chooseWithoutClock({ outlook, told, budget }, known);
	let best = nodeAt(graph, { ...first, budget, parent: null });
	let open: readonly Node[] = [best];
	const ended = () => ({
		schedule: scheduleOf(outlook, best.weighed),
		counts: best.choosing.counts,
	});
	for (;;) {
		open = open.filter(({ least }) => compared(least, best.full) < 0).sort(inTurn);
		const [node] = open;
		if (node === undefined)
			return { ...ended(), isProved: graph.weights.isWhole, bound: best.full };
		const slot = budget.left > 0 ? openSlot(graph, node.domains, node) : null;
		const children = slot === null ? [] : branches(graph, node, { slot, budget });
		best = children.reduce(
			(one, other) => (compared(other.full, one.full) < 0 ? other : one),
			best,
		);
		// Where nothing is open any more it comes to what it came to, if no other order of the work is less late.
		const isLookedAt = slot !== null || node.weighed.isInBestOrder;
		if (budget.left <= 0 || !isLookedAt) {
			return { ...ended(), isProved: false, bound: node.least };
		}
		open = [...open.slice(1), ...children];
	}
}

/** What could be better goes first; of what could be as good, what comes closest to it as it is. */
function inTurn(one: Node, other: Node): number {
	return compared(one.least, other.least) || compared(one.full, other.full);
}

/** The node with the slot as it is, and without. */
function branches(
	graph: SearchGraph,
	parent: Node,
	{ slot, budget }: { readonly slot: HandAt; readonly budget: Budget },
): readonly Node[] {
	return [true, false].flatMap((isIt) => {
		const domains = narrowed(graph, parent.domains, { at: slot, isIt });
		const choosing = domains && chooseHands(graph, domains, { budget, before: parent.choosing });
		return domains && choosing ? [nodeAt(graph, { domains, choosing, budget, parent })] : [];
	});
}

type Unweighed = Pick<Node, 'domains' | 'choosing'> & {
	readonly budget: Budget;
	readonly parent: Node | null;
};

function nodeAt(graph: SearchGraph, { domains, choosing, budget, parent }: Unweighed): Node {
	const { seating } = graph;
	budget.left -= WEIGHING * seating.sectionCount * seating.seats.length;
	const weighed =
		choosing === parent?.choosing
			? parent.weighed
			: weigh(seating.outlook, choicesOf(seating, choosing.hands));
	const { latenessMs } = weighed;
	const full = choosing.counts.toSpliced(LATENESS, 0, latenessMs);
	// With the budget gone it proves nothing any more.
	const isAsked = latenessMs > 0 && budget.left > 0;
	const sureMs = isAsked ? sureLatenessMs(graph, domains, weighed) : 0;
	const own = choosing.bound.toSpliced(LATENESS, 0, Math.min(sureMs, latenessMs));
	const least = parent !== null && compared(own, parent.least) < 0 ? parent.least : own;
	return { domains, choosing, weighed, full, least };
}
