// How far a plan is from a night that works: the three criteria that the audience would notice, and the
// curfew. What comes after them is a matter of work, not of whether it can be done.

import type { Show } from '../../showfile/show.ts';
import type { Plan } from '../plan.ts';
import { curfewWarnings } from '../what-if/curfew-warnings.ts';

const FIGURES = ['missing', 'overGap', 'lateness', 'pastCurfew'] as const;

/** Smaller is better, the first first; seconds for the last two. */
export type Shortfall = Readonly<Record<(typeof FIGURES)[number], number>>;

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
	const figure = FIGURES.find((name) => one[name] !== other[name]);
	return figure === undefined ? 0 : one[figure] - other[figure];
}

/**
 * Whether nothing is wanting.
 *
 * @example
 * isWorking({ missing: 0, overGap: 0, lateness: 0, pastCurfew: 0 }) // => true
 */
export function isWorking(shortfall: Shortfall): boolean {
	return FIGURES.every((name) => shortfall[name] === 0);
}
