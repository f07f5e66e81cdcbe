// Everything that a plan says but its warnings: choosing, the work it makes, and what that costs.

import type { Budget } from '../choice/beam-search.ts';
import {
	BACKUP,
	type Counts,
	HAND_OVERS,
	MISSING,
	OVER_GAP,
	PREFERENCE,
	RETUNINGS,
	SUBSTITUTED,
} from '../choice/criteria.ts';
import { isLarge } from '../demand/large-night.ts';
import type { Outlook } from '../demand/outlook.ts';
import { outlookOf } from '../demand/outlook.ts';
import type { Moment } from '../demand/sections-ahead.ts';
import { toldTonight } from '../demand/told.ts';
import type { Cost, Plan } from '../plan.ts';
import type { Choice } from '../schedule/choice.ts';
import type { InTime } from './choose-in-time.ts';
import { chooseInTime, LATENESS } from './choose-in-time.ts';
import type { WithoutClock } from './choose-without-clock.ts';
import { idleRestrings, restrungInTime } from './restrings.ts';
import { capoMovesOf, slotsOf, staysOf } from './slots.ts';

export type PlanCore = { readonly plan: Plan; readonly choices: readonly Choice[] };

export type PlanHow = {
	/** How many steps of the choosing may be looked at; counted, never timed, so that the same night gives the same plan. */
	readonly budget?: number;
	/** What several plans are made from together: this one takes of it what it uses, and no more than there is. */
	readonly from?: Budget;
	/** What was chosen before for the same session, and is to be gone by again. */
	readonly known?: WithoutClock;
};

/** While a night is under way, answers come with the keys: two hundredths of a second at the most. */
const LIVE_BUDGET = 40_000;

/**
 * The plan without warnings, and the choices behind it: a pure function of the moment, so that a what-if
 * is planned by asking for the session that it would lead to. Of plans that are equally late, it is the one
 * that changes least of what people were told tonight.
 *
 * @example
 * planCore({ session, nowMs: 0, plannedZeroMs: 0 }).plan.isProved // => true
 */
export function planCore(
	moment: Moment,
	{ budget = LIVE_BUDGET, from, known }: PlanHow = {},
): PlanCore {
	const { session } = moment;
	const most = Math.min(budget, from?.left ?? budget);
	const first = outlookOf(moment);
	// What there is for a key does not lead through a large night: once it is gone, the rest is gone through greedily.
	const isAnewInEach = budget === LIVE_BUDGET && isLarge(first.show, first.sections);
	const left: Budget = { left: most, ...(isAnewInEach && { isAnewInEach }) };
	const told = toldTonight(session, first);
	const choose = (outlook: Outlook): InTime =>
		chooseInTime({ outlook, told, budget: left, ...(known && { known }) });
	const { outlook, best } = restrungInTime(session, { outlook: first, choose });
	if (from !== undefined) from.left -= most - left.left;
	const { schedule } = best;
	const { isProved, bound } = best.proof();
	const { choices, handOvers, work, latenessMs } = schedule;
	const cost = costOf(best.counts, latenessMs / 1000);
	const plan: Plan = {
		isProved,
		bound: isProved || bound === null ? null : readableBound(bound, cost),
		cost,
		sections: outlook.sections,
		slots: slotsOf(choices),
		handOvers,
		capoMoves: capoMovesOf(choices),
		stays: staysOf(choices, outlook.sections),
		work,
		idle: idleRestrings(outlook, schedule),
		warnings: [],
	};
	return { plan, choices };
}

/**
 * A bound as it can be read beside the cost: up to the first figure that could be better. What stands behind
 * that one bounds nothing by itself.
 */
function readableBound(bound: Counts, cost: Cost): Cost {
	const least = costOf(bound.toSpliced(LATENESS, 1), (bound[LATENESS] ?? 0) / 1000);
	const figures = Object.keys(least) as (keyof Cost)[];
	const first = figures.findIndex((figure) => least[figure] !== cost[figure]);
	return Object.fromEntries(
		figures.map((figure, place) => [figure, first >= 0 && place > first ? 0 : least[figure]]),
	) as Cost;
}

/** The counts of a choice, with the seconds by which its latest work is late. */
function costOf(counts: Counts, latenessSeconds: number): Cost {
	return {
		missing: counts[MISSING] ?? 0,
		substituted: counts[SUBSTITUTED] ?? 0,
		overGap: counts[OVER_GAP] ?? 0,
		lateness: latenessSeconds,
		backup: counts[BACKUP] ?? 0,
		handOvers: counts[HAND_OVERS] ?? 0,
		retunings: counts[RETUNINGS] ?? 0,
		preference: counts[PREFERENCE] ?? 0,
	};
}
