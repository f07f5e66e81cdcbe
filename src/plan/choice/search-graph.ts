// The search graph of all players: what each can do alone, and what every step of it weighs.

import {
	type Counts,
	noCounts,
	OVER_GAP,
	RETUNINGS,
	type Weights,
	weightsFor,
} from './criteria.ts';
import { remembered } from './remembered.ts';
import type { Seating } from './seats.ts';
import { type Step, type Steps, stepsOf } from './steps.ts';

export type SearchGraph = {
	readonly seating: Seating;
	/** For each seat. */
	readonly steps: readonly Steps[];
	readonly weights: Weights;
};

/**
 * The graph of this seating.
 *
 * @example
 * searchGraph(seatingOf(outlook, null)).steps.length // => 3
 */
export function searchGraph(seating: Seating): SearchGraph {
	const steps = goingTogether(seating.seats.map((_, seat) => stepsOf(seating, seat)));
	const weights = weightsFor(mostCounts(seating, steps));
	for (const section of steps.flat()) {
		for (const from of section) for (const step of from) step.cost = weighed(step.counts, weights);
	}
	return { seating, steps, weights };
}

/** The steps without those that take what another surely has there, or want in other hands what nobody else can have. */
function goingTogether(all: readonly Steps[]): readonly Steps[] {
	const held = all.map((steps) =>
		steps.map((from) => {
			const into = [...new Set(from.flat())];
			const instruments = new Set(into.map(({ instrument }) => instrument));
			const firm = into.filter(({ isFirm }) => isFirm);
			return { instruments, firmly: new Set(firm.map(({ instrument }) => instrument)) };
		}),
	);
	return all.map((steps, seat) =>
		steps.map((from, section) => {
			const others = held.flatMap((one, other) => (other === seat ? [] : (one[section] ?? [])));
			const isPossible = ({ instrument: taken, elsewhere }: Step): boolean =>
				(taken < 0 ||
					!others.some((one) => one.instruments.size === 1 && one.instruments.has(taken))) &&
				elsewhere.every(({ instrument, isFirm }) =>
					others.some((one) => (isFirm ? one.firmly : one.instruments).has(instrument)),
				);
			const filtered = remembered((some: readonly Step[]) => some.filter(isPossible));
			return from.map(filtered);
		}),
	);
}

function weighed(counts: Counts, { of }: Weights): number {
	return counts.reduce((sum, count, place) => sum + count * (of[place] as number), 0);
}

/** More than these counts no choice can come to. */
function mostCounts({ countedFor }: Seating, steps: readonly Steps[]): Counts {
	const most = noCounts();
	for (const section of steps.flat()) {
		const inSection = noCounts();
		for (const step of new Set(section.flat())) {
			for (const [place, count] of step.counts.entries()) {
				inSection[place] = Math.max(inSection[place] as number, count);
			}
			if (!step.begins) continue;
			inSection[OVER_GAP] = 1;
			if ((countedFor[step.instrument] as number) >= 0) inSection[RETUNINGS] = 1;
		}
		for (const [place, count] of inSection.entries()) most[place] = (most[place] as number) + count;
	}
	return most;
}
