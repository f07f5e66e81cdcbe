// What a choice counts, criterion by criterion: with the gaps that hand-overs share, and every re-tuning.

import { countOverGap } from '../schedule/fit.ts';
import { added, type Counts, noCounts, OVER_GAP, RETUNINGS } from './criteria.ts';
import { type Hands, moveOf } from './moves.ts';
import { countsOf, type SearchGraph } from './search-graph.ts';
import { BEGINS, type Steps } from './steps.ts';

/**
 * The counts of this choice.
 *
 * @example
 * countHands(graph, hands)[5] // => 2
 */
export function countHands(graph: SearchGraph, hands: Hands): Counts {
	const { seating, steps } = graph;
	const tunings = new Int16Array(seating.instrumentCount);
	let counts = noCounts();
	for (let section = 0; section < seating.sectionCount; section += 1) {
		const seconds: number[] = [];
		const gap = seating.gapSeconds[section] as number;
		let retunings = 0;
		let apart = 0;
		for (let seat = 0; seat < seating.seats.length; seat += 1) {
			const { step, hand, flags, instrument } = moveOf(graph, hands, { seat, section });
			const own = countsOf(seating, steps[seat] as Steps, { seat, section, step });
			counts = added(counts, own);
			if ((flags & BEGINS) === 0) continue;
			apart += own[OVER_GAP] as number;
			seconds.push(seating.handOverSeconds[instrument] as number);
			const tuning = seating.seats[seat]?.tuningOf[hand] as number;
			if (tunings[instrument] !== tuning) retunings += 1;
			tunings[instrument] = tuning;
		}
		const shared = countOverGap(seconds, gap) - apart;
		counts = counts.map((count, place) => {
			if (place === RETUNINGS) return count + retunings;
			return place === OVER_GAP ? count + shared : count;
		});
	}
	return counts;
}
