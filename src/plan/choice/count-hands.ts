// What a choice counts, criterion by criterion: with the gaps that hand-overs share, and every re-tuning.

import { countOverGap } from '../schedule/fit.ts';
import { BACKUP, type Counts, noCounts, OVER_GAP, PREFERENCE, RETUNINGS } from './criteria.ts';
import { FLAGGED, type SearchGraph } from './search-graph.ts';
import type { Seat } from './seats.ts';
import { BEGINS, type Steps } from './steps.ts';

/** A choice for all: for each seat, the hand in each section. */
export type Hands = readonly Int16Array[];

/**
 * The counts of this choice.
 *
 * @example
 * countHands(graph, hands)[5] // => 2
 */
export function countHands({ seating, steps }: SearchGraph, hands: Hands): Counts {
	const tunings = new Int16Array(seating.instrumentCount);
	const counts = noCounts();
	const count = (place: number, more: number): void => {
		counts[place] = (counts[place] as number) + more;
	};
	for (let section = 0; section < seating.sectionCount; section += 1) {
		const seconds: number[] = [];
		for (const [seat, mine] of hands.entries()) {
			const { start, instrumentOf, tuningOf } = seating.seats[seat] as Seat;
			const all = steps[seat] as Steps;
			const before = section === 0 ? start : (mine[section - 1] as number);
			const hand = mine[section] as number;
			const step = stepBetween(all, section * all.size + before, hand);
			const flags = all.flags[step] as number;
			for (const [flag, place] of FLAGGED) if (flags & flag) count(place, 1);
			count(BACKUP, all.backup[step] as number);
			count(PREFERENCE, all.preference[step] as number);
			if ((flags & BEGINS) === 0) continue;
			const instrument = instrumentOf[hand] as number;
			seconds.push(seating.handOverSeconds[instrument] as number);
			if (tunings[instrument] !== tuningOf[hand]) count(RETUNINGS, 1);
			tunings[instrument] = tuningOf[hand] as number;
		}
		count(OVER_GAP, countOverGap(seconds, seating.gapSeconds[section] as number));
	}
	return counts;
}

/** Of several ways to the same hand, the first is the one that weighs least. */
function stepBetween({ first, to }: Steps, from: number, hand: number): number {
	const steps = to.subarray(first[from] as number, first[from + 1] as number);
	const step = steps.indexOf(hand);
	if (step < 0) throw new Error('hands that no step leads to');
	return (first[from] as number) + step;
}
