// Everything that a plan says but its warnings: choosing, the work it makes, and what that costs.

import { busyWindows } from './busy-windows.ts';
import type { Choice } from './choose.ts';
import { chooseAll } from './choose.ts';
import { costOf } from './cost.ts';
import { freeClock } from './free-clock.ts';
import { handOversAhead } from './hand-overs-ahead.ts';
import { outlookOf } from './outlook.ts';
import type { Plan } from './plan.ts';
import { capoMovesOf, slotsOf } from './slots.ts';
import { stintsAhead } from './stints.ts';
import type { Moment } from './timeline.ts';
import { workAhead } from './work-ahead.ts';

export type PlanCore = { readonly plan: Plan; readonly choices: readonly Choice[] };

/**
 * The plan without warnings, and the choices behind it.
 *
 * @example
 * planCore({ session, nowMs: 0, plannedZeroMs: 0 }).plan.isProved // => false
 */
export function planCore(moment: Moment): PlanCore {
	const outlook = outlookOf(moment);
	const choices = chooseAll(outlook);
	const stints = stintsAhead(outlook, choices);
	const handOvers = handOversAhead(outlook, choices);
	const clock = freeClock(busyWindows(moment.session, outlook.sections, handOvers));
	const work = workAhead(outlook, stints, { handOvers, clock });
	const plan: Plan = {
		isProved: false,
		bound: null,
		cost: costOf(outlook, { choices, stints, handOvers, work }),
		sections: outlook.sections,
		slots: slotsOf(choices),
		handOvers,
		capoMoves: capoMovesOf(choices),
		work,
		warnings: [],
	};
	return { plan, choices };
}
