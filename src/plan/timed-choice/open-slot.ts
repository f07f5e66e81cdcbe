// Which slot to ask about next: of those that are still open and bear most on what is late, the one whose
// answer as it is says most (strong branching).

import type { NightMs } from '../../journal/entry.ts';
import type { Choosing } from '../choice/choose-hands.ts';
import type { HandAt, Possible, SearchGraph } from '../choice/search-graph.ts';
import { isOpen, possibleWith } from '../choice/search-graph.ts';
import { jackson, startingAt } from '../schedule/one-machine.ts';
import { onFreeClock } from '../schedule/order-work.ts';
import type { Weighed } from '../schedule/schedule.ts';
import { sureLatenessMs } from './sure-work.ts';

/** So many are asked what they would say. */
export const ASKED = 4;

/**
 * The slot with the hand that was chosen for it; null where none is open.
 *
 * @example
 * openSlot(graph, allPossible(graph), { choosing, weighed }) // => { seat: 1, section: 1, hand: 2 }
 */
export function openSlot(
	graph: SearchGraph,
	possible: Possible,
	chosen: { readonly choosing: Choosing; readonly weighed: Weighed },
): HandAt | null {
	let best: HandAt | null = null;
	let mostMs = -1;
	for (const at of openSlots(graph, possible, chosen).slice(0, ASKED)) {
		const yes = possibleWith(graph, possible, { at, isIt: true });
		const sureMs = yes === null ? Number.POSITIVE_INFINITY : sureLatenessMs(graph, yes);
		if (sureMs <= mostMs) continue;
		best = at;
		mostMs = sureMs;
	}
	return best;
}

/** Those of the work that makes the plan late, then all others from there back, then the rest. */
function openSlots(
	graph: SearchGraph,
	possible: Possible,
	{ choosing, weighed }: { readonly choosing: Choosing; readonly weighed: Weighed },
): readonly HandAt[] {
	const { outlook, seats, sectionCount } = graph.seating;
	const { choices } = weighed;
	const places = criticalPieces(weighed, outlook.nowMs).map(({ stint }) =>
		choices.indexOf(stint.choice),
	);
	const until = Math.max(0, ...places.map((index) => Math.floor(index / seats.length)));
	const all = [...Array(sectionCount * seats.length).keys()];
	const sectionOf = (index: number): number => Math.floor(index / seats.length);
	const before = all.filter((index) => sectionOf(index) <= until).reverse();
	const after = all.filter((index) => sectionOf(index) > until);
	return [...new Set([...places, ...before, ...after])].flatMap((index): readonly HandAt[] => {
		const at = { seat: index % seats.length, section: sectionOf(index) };
		if (!isOpen(graph, possible, at)) return [];
		return [{ ...at, hand: choosing.hands[at.seat]?.[at.section] as number }];
	});
}

/** The pieces that make the worst as late as it is in any order: they cannot all be done sooner, and none is due later. */
function criticalPieces({ pieces, clock }: Weighed, nowMs: NightMs): Weighed['pieces'] {
	const all = startingAt(clock.at(nowMs), onFreeClock(pieces, clock));
	const { heads, lengths, dues } = all;
	const { order, latest, finish } = jackson(all, { isPreemptive: true });
	const due = dues[order[latest] ?? -1] ?? 0;
	const isFrom = (head: number) => (_: unknown, place: number) =>
		(heads[place] as number) >= head && (dues[place] as number) <= due;
	// From one of the heads on there was nothing else to do, and no time to lose.
	const since = heads.toSorted().find((head) => {
		const length = lengths.filter(isFrom(head)).reduce((sum, one) => sum + one, 0);
		return head + length === finish;
	});
	return since === undefined ? [] : pieces.filter(isFrom(since));
}
