// Which criteria decide a plan: without them another plan would be taken, or might be.

import { type Criterion, compareCosts, type LIVE_CRITERIA, type PLAN_CRITERIA } from './cost.ts';
import type { LiveState } from './live-state.ts';
import { type Best, search, TooManySteps } from './search.ts';

/** Of plans that are equally good without a criterion, so many are looked at. */
const MOST_PLANS = 40;
/** A search without a criterion may take far longer than with it; one that takes more steps is given up. */
const MOST_STEPS = 10_000;

export type Asked = {
	/** All of them, in their order. */
	readonly criteria: typeof PLAN_CRITERIA | typeof LIVE_CRITERIA;
	/** Those that the answer is wanted for; all where left out. */
	readonly asked?: readonly Criterion[];
};

/**
 * The criteria of which this holds: of the plans that are best by all the others, one at least differs in
 * cost from the best plan. A planner that forgot the criterion could be caught by this state. A criterion
 * for which finding out takes too long is left out.
 */
export function decisiveCriteria(
	state: LiveState,
	best: Best,
	{ criteria, asked = criteria }: Asked,
): readonly Criterion[] {
	return asked.filter((left) => {
		const others = criteria.filter((criterion) => criterion !== left);
		const plans = bestWithin(state, others);
		return plans.some(({ cost }) => compareCosts(cost, best.cost, criteria) !== 0);
	});
}

function bestWithin(state: LiveState, criteria: readonly Criterion[]): Best['plans'] {
	try {
		return search(state, { criteria, mostPlans: MOST_PLANS, mostSteps: MOST_STEPS }).plans;
	} catch (error) {
		if (error instanceof TooManySteps) return [];
		throw error;
	}
}
