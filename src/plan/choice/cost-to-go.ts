// What the rest of the night costs one player alone at the least, from each hand on: dynamic programming from the
// last section back (R. Bellman 1957, from memory). What is to be tuned again depends on how the instruments are
// found, so a rest says which tunings it wants to find; of those that cost no less, however the instruments are
// tuned by then, none is kept (dominance).

import type { Step } from './steps.ts';

/** One way for the rest to be gone: what it costs with every instrument found as it wants it. */
export type Rest = {
	readonly cost: number;
	/** For each instrument whose tuning matters, the step that begins with it first. */
	readonly wants: readonly Step[];
};

/** How many rests of one hand are kept at the most: what is dropped only lowers the bound. */
const MOST_RESTS = 24;

/** The rest of nothing. */
export const NO_REST: readonly Rest[] = [{ cost: 0, wants: [] }];

/**
 * The rest behind a step and before it.
 *
 * @example
 * restBefore({ ...step, cost: 5, isTuned: false }, NO_REST[0], 1).cost // => 5
 */
export function restBefore(step: Step, rest: Rest, retuning: number): Rest {
	const cost = step.cost + rest.cost;
	if (!step.isTuned) return step.cost === 0 ? rest : { cost, wants: rest.wants };
	const wanted = rest.wants.find(({ instrument }) => instrument === step.instrument);
	if (wanted?.tuning === step.tuning) return { cost, wants: rest.wants };
	const wants = [step, ...rest.wants.filter((one) => one !== wanted)];
	return { cost: wanted === undefined ? cost : cost + retuning, wants };
}

/**
 * The cheapest first, without what another makes needless.
 *
 * @example
 * bestRests([{ cost: 2, wants: [] }, { cost: 1, wants: [] }], 1) // => [{ cost: 1, wants: [] }]
 */
export function bestRests(rests: Rest[], retuning: number): readonly Rest[] {
	rests.sort((one, other) => one.cost - other.cost);
	const best: Rest[] = [];
	let most = Number.POSITIVE_INFINITY;
	for (const rest of rests) {
		if (rest.cost >= most) break;
		if (best.some((one) => dominates(one, rest, retuning))) continue;
		// What is dropped costs no less than the last that is kept: that one asks for no tunings.
		if (best.length === MOST_RESTS - 1) return [...best, { ...rest, wants: [] }];
		best.push(rest);
		most = Math.min(most, rest.cost + rest.wants.length * retuning);
	}
	return best;
}

function dominates(one: Rest, other: Rest, retuning: number): boolean {
	let cost = one.cost;
	for (const { instrument, tuning } of one.wants) {
		const isSame = other.wants.some(
			(want) => want.instrument === instrument && want.tuning === tuning,
		);
		if (!isSame) cost += retuning;
	}
	return cost <= other.cost;
}

/**
 * The least that any of these rests costs with each instrument found in this tuning; infinite where there is none.
 *
 * @example
 * leastOf(NO_REST, Uint8Array.of(), 1) // => 0
 */
export function leastOf(rests: readonly Rest[], tunings: Uint8Array, retuning: number): number {
	let least = Number.POSITIVE_INFINITY;
	for (const { cost, wants } of rests) {
		if (cost >= least) break;
		let sum = cost;
		for (const { instrument, tuning } of wants) if (tunings[instrument] !== tuning) sum += retuning;
		if (sum < least) least = sum;
	}
	return least;
}
