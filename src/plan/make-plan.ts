// The plan of a night under way: who plays what from here on, what work that makes, whether it fits.

import type { Moment } from './demand/sections-ahead.ts';
import type { Plan } from './plan.ts';
import type { PlanHow } from './timed-choice/plan-core.ts';
import { planCore } from './timed-choice/plan-core.ts';
import { warningsNow } from './warnings/warnings.ts';

/**
 * The plan at this moment, the same for the same moment. Pieces of work that are done and songs that
 * were played are not in it.
 *
 * @example
 * makePlan({ session, nowMs: 0, plannedZeroMs: 0 }).cost.missing // => 0
 */
export function makePlan(moment: Moment, how: PlanHow = {}): Plan {
	const { plan, choices } = planCore(moment, how);
	return { ...plan, warnings: warningsNow({ ...moment, plan, choices }) };
}
