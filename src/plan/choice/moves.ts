// A choice for all, and what each player does in it from one section to the next.

import type { SearchGraph } from './search-graph.ts';
import type { Seat } from './seats.ts';
import type { Steps } from './steps.ts';

/** A choice for all: for each seat, the hand in each section. */
export type Hands = readonly Int16Array[];

export type Move = {
	readonly seat: number;
	readonly hand: number;
	/** The number of the step among those of the seat. */
	readonly step: number;
	readonly flags: number;
	readonly takenBy: number;
	/** In hands from here on; -1 for none. */
	readonly instrument: number;
};

/**
 * What a seat does in a section.
 *
 * @example
 * moveOf(graph, hands, { seat: 0, section: 0 }).hand // => 2
 */
export function moveOf(
	{ seating, steps }: SearchGraph,
	hands: Hands,
	{ seat, section }: { readonly seat: number; readonly section: number },
): Move {
	const one = seating.seats[seat] as Seat;
	const before = section === 0 ? one.start : (hands[seat]?.[section - 1] as number);
	const hand = hands[seat]?.[section] as number;
	const step = stepBetween(steps[seat] as Steps, section * one.hands.length + before, hand);
	return {
		seat,
		hand,
		step,
		flags: steps[seat]?.flags[step] as number,
		takenBy: steps[seat]?.takenBy[step] as number,
		instrument: one.instrumentOf[hand] as number,
	};
}

/** Of several ways to the same hand, the first is the one that weighs least. */
function stepBetween({ first, to }: Steps, from: number, hand: number): number {
	for (let step = first[from] as number; step < (first[from + 1] as number); step += 1) {
		if (to[step] === hand) return step;
	}
	throw new Error('hands that no step leads to');
}
