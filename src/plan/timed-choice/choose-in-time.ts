// Who plays what so that the work is done in time: branch and bound around the choice without the clock. What
// that choice comes to is weighed with the clock; where it is late, the slot that bears most on it is asked
// whether it stays as it is, and both answers are gone on with, the one that can be less late first (best
// first search), until nothing can be better or the budget is gone.

import type { Budget } from '../choice/beam-search.ts';
import { choicesOf } from '../choice/choices.ts';
import type { Choosing } from '../choice/choose-hands.ts';
import { chooseHands } from '../choice/choose-hands.ts';
import { type Counts, compared, OVER_GAP } from '../choice/criteria.ts';
import type { HandAt, Possible, SearchGraph } from '../choice/search-graph.ts';
import { isOpen, possibleWith } from '../choice/search-graph.ts';
import type { Outlook } from '../demand/outlook.ts';
import type { Told } from '../demand/told.ts';
import { jackson, startingAt } from '../schedule/one-machine.ts';
import { onFreeClock } from '../schedule/order-work.ts';
import type { Schedule, Weighed } from '../schedule/schedule.ts';
import { scheduleOf, weigh } from '../schedule/schedule.ts';
import type { WithoutClock } from './choose-without-clock.ts';
import { chooseWithoutClock } from './choose-without-clock.ts';
import { sureLatenessMs } from './sure-work.ts';

/** The best choice with what follows from it. */
export type InTime = {
	readonly schedule: Schedule;
	readonly counts: Counts;
	/** Worked out when it is asked for: of a choice that another follows nobody asks. */
	readonly proof: () => Proof;
};

export type Proof = {
	readonly isProved: boolean;
	/** What nothing is better than, with the milliseconds of lateness in their place; null where the choice is proved. */
	readonly bound: Counts | null;
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
const WEIGHING = 45;
/** And what bounding its lateness takes. */
const BOUNDING = 15;

/** What is possible still, with the best of it as long as the clock is left out. */
type Node = {
	readonly possible: Possible;
	readonly choosing: Choosing;
	readonly weighed: Weighed;
	/** What that one comes to, lateness in its place. */
	readonly full: Counts;
	/** What any of them comes to at least. */
	readonly least: () => Counts;
};

/**
 * The best choice there is, as far as the budget goes.
 *
 * @example
 * chooseInTime({ outlook, told: null, budget: { left: 100000 } }).proof().isProved // => true
 */
export function chooseInTime({ outlook, told, budget, known }: ChooseAsked): InTime {
	const first = chooseWithoutClock({ outlook, told, budget }, known);
	const { graph } = first;
	const root = weighedNode(graph, { ...first, budget, parent: null });
	const { isWhole } = graph.weights;
	const proofOf = (least: Counts, { full }: Node): Proof =>
		compared(least, full) >= 0
			? { isProved: isWhole, bound: null }
			: { isProved: false, bound: least };
	if (budget.left <= 0)
		return { ...ended(outlook, root), proof: () => proofOf(root.least(), root) };
	let best = root;
	let open: readonly Node[] = [root];
	for (;;) {
		const node = open.reduce<Node | null>(
			(first, one) => (first === null || isBefore(one, first) ? one : first),
			null,
		);
		if (node === null || compared(node.least(), best.full) >= 0) {
			return { ...ended(outlook, best), proof: () => ({ isProved: isWhole, bound: null }) };
		}
		const slot = budget.left <= 0 ? null : openSlot(graph, node.possible, node);
		if (slot === null && budget.left > 0 && node.weighed.isInBestOrder) {
			// Nothing is open any more: it comes to what it came to.
			open = open.filter((one) => one !== node);
			continue;
		}
		const children = slot && branches(graph, node, { slot, budget });
		// Of what was not looked at to the end nothing better is known than of all of it.
		if (children === null || budget.left <= 0) {
			const known = (children ?? []).reduce(better, best);
			return { ...ended(outlook, known), proof: () => ({ isProved: false, bound: node.least() }) };
		}
		best = children.reduce(better, best);
		open = [...open, ...children].filter(
			(one) => one !== node && compared(one.least(), best.full) < 0,
		);
	}
}

function ended(outlook: Outlook, node: Node): Pick<InTime, 'schedule' | 'counts'> {
	return { schedule: scheduleOf(outlook, node.weighed), counts: node.choosing.counts };
}

function better(one: Node, other: Node): Node {
	return compared(other.full, one.full) < 0 ? other : one;
}

/** What could be better goes first; of what could be as good, what comes closest to it as it is. */
function isBefore(one: Node, other: Node): boolean {
	const least = compared(one.least(), other.least());
	return least < 0 || (least === 0 && compared(one.full, other.full) < 0);
}

/** The node with the slot as it is, and without. */
function branches(
	graph: SearchGraph,
	node: Node,
	{ slot, budget }: { readonly slot: HandAt; readonly budget: Budget },
): readonly Node[] {
	return [true, false].flatMap((isIt) => {
		const possible = possibleWith(graph, node.possible, { at: slot, isIt });
		const child = possible && nodeAt(graph, possible, { budget, parent: node });
		return child === null ? [] : [child];
	});
}

function nodeAt(
	graph: SearchGraph,
	possible: Possible,
	{ budget, parent }: { readonly budget: Budget; readonly parent: Node },
): Node | null {
	const choosing = chooseHands(graph, possible, { budget, before: parent.choosing });
	return choosing && weighedNode(graph, { possible, choosing, budget, parent });
}

type Unweighed = Pick<Node, 'possible' | 'choosing'> & {
	readonly budget: Budget;
	readonly parent: Node | null;
};

function weighedNode(graph: SearchGraph, { possible, choosing, budget, parent }: Unweighed): Node {
	const { seating } = graph;
	budget.left -= (WEIGHING + BOUNDING) * seating.sectionCount * seating.seats.length;
	const all =
		choosing === parent?.choosing
			? parent.weighed
			: weigh(seating.outlook, choicesOf(seating, choosing.hands));
	const { latenessMs } = all;
	const full = choosing.counts.toSpliced(LATENESS, 0, latenessMs);
	let known: Counts | null = null;
	const least = (): Counts => {
		if (known !== null) return known;
		const sureMs = latenessMs === 0 ? 0 : sureLatenessMs(graph, possible);
		const own = choosing.bound.toSpliced(LATENESS, 0, Math.min(sureMs, latenessMs));
		const above = parent?.least() ?? own;
		known = compared(own, above) < 0 ? above : own;
		return known;
	};
	return { possible, choosing, weighed: all, full, least };
}

/**
 * Which slot to ask about next, with the hand that was chosen for it: of those that are still open the first of the
 * work that makes the plan late, then the last before that, then the first after; null where none is open.
 */
function openSlot(
	graph: SearchGraph,
	possible: Possible,
	{ choosing, weighed }: Pick<Node, 'choosing' | 'weighed'>,
): HandAt | null {
	const { outlook, seats, sectionCount } = graph.seating;
	const late = latePieces(weighed, outlook.nowMs).map(({ stint }) =>
		weighed.choices.indexOf(stint.choice),
	);
	const all = [...Array(sectionCount * seats.length).keys()];
	const until = (Math.floor(Math.max(0, ...late) / seats.length) + 1) * seats.length;
	const inTurn = [...late, ...all.slice(0, until).reverse(), ...all.slice(until)];
	const slots = inTurn.map((index) => ({
		seat: index % seats.length,
		section: Math.floor(index / seats.length),
	}));
	const open = slots.find((slot) => isOpen(graph, possible, slot));
	return open === undefined
		? null
		: { ...open, hand: choosing.hands[open.seat]?.[open.section] as number };
}

/** What is done without a pause up to the latest: it cannot all be done sooner. */
function latePieces({ pieces, clock }: Weighed, nowMs: number): Weighed['pieces'] {
	const waiting = startingAt(clock.at(nowMs), onFreeClock(pieces, clock));
	const { order, since, latest } = jackson(waiting, { isPreemptive: true });
	return order.slice(since, latest + 1).map((place) => pieces[place] as (typeof pieces)[number]);
}
