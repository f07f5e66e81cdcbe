// Everything that a plan says but its warnings: choosing, the work it makes, and what that costs.

import type { Choice } from './choices.ts';
import { chooseAll } from './choose.ts';
import { outlookOf } from './outlook.ts';
import type { Plan } from './plan.ts';
import { capoMovesOf, slotsOf } from './slots.ts';
import type { Moment } from './timeline.ts';
import { toldTonight } from './told.ts';

export type PlanCore = { readonly plan: Plan; readonly choices: readonly Choice[] };

export type PlanHow = {
	/** How many steps of the choosing may be looked at; counted, never timed, so that the same night gives the same plan. */
	readonly budget?: number;
};

/** While a night is under way, answers come with the keys: two hundredths of a second at the most. */
const LIVE_BUDGET = 60_000;

/**
 * The plan without warnings, and the choices behind it: a pure function of the moment, so that a what-if
 * is planned by asking for the session that it would lead to. Of plans that are equally late, it is the one
 * that changes least of what people were told tonight.
 *
 * @example
 * planCore({ session, nowMs: 0, plannedZeroMs: 0 }).plan.isProved // => true
 */
export function planCore(moment: Moment, { budget = LIVE_BUDGET }: PlanHow = {}): PlanCore {
	const { session } = moment;
	const outlook = outlookOf(moment);
	const told = toldTonight(session, outlook);
	const { choices, handOvers, work, cost, isProved, bound } = chooseAll({
		outlook,
		told,
		budget,
	});
	const plan: Plan = {
		isProved,
		bound,
		cost,
		sections: outlook.sections,
		slots: slotsOf(choices),
		handOvers,
		capoMoves: capoMovesOf(choices),
		work,
		warnings: [],
	};
	return { plan, choices };
}
