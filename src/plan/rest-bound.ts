// The least that one player can still cost from a hand on, were there nobody else: how far a choice for
// several is from what it could be at best.

import type { Possible } from './possible-hands.ts';
import type { Seating } from './seats.ts';
import type { Steps } from './steps.ts';
import { BEGINS } from './steps.ts';
import type { SureRetunings } from './sure-retunings.ts';

export type RestAsked = {
	readonly seating: Seating;
	readonly seat: number;
	readonly steps: Steps;
	readonly possible: Possible;
	/** Each step's own cost, packed. */
	readonly stepCosts: Float64Array;
	readonly overGapWeight: number;
	readonly retuningWeight: number;
	readonly isSure: SureRetunings;
};

/**
 * For each section and hand, section by section, the least packed cost of all that comes after it.
 *
 * @example
 * restBound(restAsked)[0] // => Infinity
 */
export function restBound(asked: RestAsked): Float64Array {
	const { seating, steps, possible, stepCosts, isSure } = asked;
	const { first, to, flags } = steps;
	const seat = seating.seats[asked.seat];
	const mine = possible[asked.seat];
	const size = seat?.size ?? 0;
	const rest = new Float64Array(seating.sectionCount * size).fill(Number.POSITIVE_INFINITY);
	if (seat === undefined || mine === undefined || rest.length === 0) return rest;
	rest.fill(0, rest.length - size);
	for (let section = seating.sectionCount - 1; section > 0; section -= 1) {
		const row = section * size;
		const gap = seating.gapSeconds[section] ?? 0;
		for (let hand = 0; hand < size; hand += 1) {
			if (mine[row - size + hand] === 0) continue;
			let least = Number.POSITIVE_INFINITY;
			const end = first[row + hand + 1] ?? 0;
			for (let step = first[row + hand] ?? 0; step < end; step += 1) {
				const next = to[step] ?? 0;
				if (mine[row + next] === 0) continue;
				let cost = (stepCosts[step] ?? 0) + (rest[row + next] ?? 0);
				if (((flags[step] ?? 0) & BEGINS) !== 0) {
					const instrument = seat.instrumentOf[next] ?? 0;
					const tuning = seat.tuningOf[next] ?? 0;
					if ((seating.handOverSeconds[instrument] ?? 0) > gap) cost += asked.overGapWeight;
					const isAnother = seat.instrumentOf[hand] !== instrument;
					const isRetuned = isAnother
						? isSure(section, instrument, tuning)
						: seat.tuningOf[hand] !== tuning;
					if (isRetuned) cost += asked.retuningWeight;
				}
				if (cost < least) least = cost;
			}
			rest[row - size + hand] = least;
		}
	}
	return rest;
}
