// The best plan of a night under way, by the same enumeration from how things stand now.

import { LIVE_CRITERIA } from './cost.ts';
import type { LiveState } from './live-state.ts';
import { type Best, search } from './search.ts';

const MOST_PLANS = 50;

/**
 * The least cost by the nine criteria in their order, `changed` after lateness, and the plans that have it.
 * Instruments whose strings are down cannot be had but from the section that `restrungFor` gives.
 */
export function bestLive(state: LiveState, mostPlans = MOST_PLANS): Best {
	return search(state, { criteria: LIVE_CRITERIA, mostPlans });
}
