// The work that is left for one very hand-over.

import type { Plan, PlannedHandOver, Work } from '../plan.ts';

/**
 * In the order in which to do it; empty where all is done.
 *
 * @example
 * workFor(plan, { section: plan.sections[0], player: 'ash', instrument: 'nothing of the kind' }) // => []
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
