// Which slot to ask about next: of those that are still open, the first whose work makes the plan late.

import type { Choosing } from '../choice/choose-hands.ts';
import type { HandAt, Possible, SearchGraph } from '../choice/search-graph.ts';
import { isOpen } from '../choice/search-graph.ts';
import { jackson, startingAt } from '../schedule/one-machine.ts';
import { onFreeClock } from '../schedule/order-work.ts';
import type { Weighed } from '../schedule/schedule.ts';

/**
 * The slot with the hand that was chosen for it: of the work that makes the plan late, then the last before
 * that, then the first after; null where none is open.
 *
 * @example
 * openSlot(graph, allPossible(graph), { choosing, weighed }) // => null
 */
export function openSlot(
	graph: SearchGraph,
	possible: Possible,
	{ choosing, weighed }: { readonly choosing: Choosing; readonly weighed: Weighed },
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
