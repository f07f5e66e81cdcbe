// How far a plan is from a night that works: the three criteria that the audience would notice, and the
// curfew. What comes after them is a matter of work, not of whether it can be done.

import type { Show } from '../../showfile/show.ts';
import type { Plan } from '../plan.ts';
import { curfewWarnings } from '../what-if/curfew-warnings.ts';

/** Smaller is better, the first first; seconds for the last two. */
export type Shortfall = {
	readonly missing: number;
	readonly overGap: number;
	readonly lateness: number;
	readonly pastCurfew: number;
};

/**
 * What is wanting in a plan whose zero is the first song's planned start.
 *
 * @example
 * shortfallOf(show, plan) // => { missing: 0, overGap: 0, lateness: 0, pastCurfew: 0 }
 */
export function shortfallOf(show: Show, { cost, sections }: Plan): Shortfall {
	const { missing, overGap, lateness } = cost;
	const [past] = curfewWarnings(show, sections, 0);
	return { missing, overGap, lateness, pastCurfew: past?.overSeconds ?? 0 };
}

/**
 * Negative when the first is the better, 0 when they are alike.
 *
 * @example
 * compareShortfalls({ missing: 0, overGap: 0, lateness: 9, pastCurfew: 0 }, { missing: 1, overGap: 0, lateness: 0, pastCurfew: 0 }) // => -1
 */
export function compareShortfalls(one: Shortfall, other: Shortfall): number {
	return (
		one.missing - other.missing ||
		one.overGap - other.overGap ||
		one.lateness - other.lateness ||
		one.pastCurfew - other.pastCurfew
	);
}

/**
 * Whether nothing is wanting.
 *
 * @example
 * isWorking({ missing: 0, overGap: 0, lateness: 0, pastCurfew: 0 }) // => true
 */
export function isWorking({ missing, overGap, lateness, pastCurfew }: Shortfall): boolean {
	return missing + overGap + lateness + pastCurfew === 0;
}
