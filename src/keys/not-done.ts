// What is logged as done with a hand-over though nobody has said that it is.

import type { Plan, PlannedHandOver } from '../plan/plan.ts';
import { workFor } from '../plan/schedule/work-for.ts';
import { shownInstrument } from '../showfile/shown-names.ts';
import { loggedUnmarked } from '../words/given-words.ts';
import { NOT_DONE } from '../words/questions.ts';
import type { KeyContext } from './key-context.ts';

/** In words; a touch-up changes nothing that is logged. */
export function notDone(plan: Plan, of: PlannedHandOver): readonly string[] {
	return workFor(plan, of).flatMap(({ job }) => NOT_DONE[job]);
}

/** To be said where no question named it before; undefined where all was done. */
export function saysNotDone(
	{ session, plan, keyOf }: KeyContext,
	handOvers: readonly PlannedHandOver[],
): string | undefined {
	const undone = handOvers.flatMap((one) => {
		const words = notDone(plan, one);
		return one.instrument === null || words.length === 0
			? []
			: [`${shownInstrument(session.show, one.instrument)} ${words.join(', ')}`];
	});
	return undone.length === 0 ? undefined : loggedUnmarked(undone, keyOf('as-it-is'));
}
