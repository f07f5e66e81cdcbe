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
import { type Elsewhere, type Step, type Steps, stepsOf } from './steps.ts';

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
	for (const { all } of steps.flat()) {
		for (const step of all) step.cost = weighed(step.counts, weights);
	}
	return { seating, steps, weights };
}

/** The steps without those that take what another surely has there, or want in other hands what nobody else can have. */
function goingTogether(all: readonly Steps[]): readonly Steps[] {
	const held = all.map((steps) =>
		steps.map((into) => ({
			instruments: new Set(into.all.map(({ instrument }) => instrument)),
			firmly: new Set(into.all.flatMap((step) => (step.isFirm ? [step.instrument] : []))),
		})),
	);
	return all.map((steps, seat) =>
		steps.map((into, section) => {
			const others = held.flatMap((one, other) => (other === seat ? [] : (one[section] ?? [])));
			const taken = others.flatMap(({ instruments: [only = -1, ...more] }) =>
				only < 0 || more.length > 0 ? [] : [only],
			);
			const isHeld = ({ instrument, isFirm }: Elsewhere): boolean =>
				others.some((one) => (isFirm ? one.firmly : one.instruments).has(instrument));
			const areHeld = remembered((all: readonly Elsewhere[]) => all.every(isHeld));
			const isPossible = ({ instrument, elsewhere, givenUp }: Step): boolean =>
				!taken.includes(instrument) &&
				areHeld(elsewhere) &&
				(givenUp < 0 || isHeld({ instrument: givenUp, isFirm: false }));
			const left = new Set(into.all.filter(isPossible));
			if (left.size === into.all.length) return into;
			const filtered = remembered((some: readonly Step[]) => some.filter((step) => left.has(step)));
			return { from: into.from.map((lists) => lists.map(filtered)), all: [...left] };
		}),
	);
}

function weighed(counts: Counts, { of }: Weights): number {
	return counts.reduce((sum, count, place) => sum + count * (of[place] as number), 0);
}

/** More than these counts no choice can come to. */
function mostCounts({ countedFor }: Seating, steps: readonly Steps[]): Counts {
	const most = noCounts();
	for (const { all } of steps.flat()) {
		const inSection = noCounts();
		for (const { counts, begins, instrument } of all) {
			for (const [place, count] of counts.entries()) {
				if (count > (inSection[place] as number)) inSection[place] = count;
			}
			if (begins) inSection[OVER_GAP] = 1;
			if (begins && (countedFor[instrument] as number) >= 0) inSection[RETUNINGS] = 1;
		}
		for (const [place, count] of inSection.entries()) most[place] = (most[place] as number) + count;
	}
	return most;
}
