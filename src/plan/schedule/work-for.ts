// The work that is left for one very hand-over.

import type { Plan, PlannedHandOver, Work } from '../plan.ts';

/**
 * In the order in which to do it; empty where all is done.
 *
 * @example
 * workFor(plan, plan.handOvers[0]) // => [{ job: 'touch-up', … }]
 */
export function workFor(
	plan: Pick<Plan, 'work'>,
	{ section, player, instrument }: Pick<PlannedHandOver, 'section' | 'player' | 'instrument'>,
): readonly Work[] {
	return plan.work.filter(
		(one) =>
			one.instrument === instrument &&
			one.player === player &&
			one.section.item === section.item &&
			one.section.point === section.point,
	);
}
