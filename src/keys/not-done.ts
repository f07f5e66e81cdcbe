// What is logged as done with a hand-over though nobody has said that it is.

import type { Plan, PlannedHandOver } from '../plan/plan.ts';
import { workFor } from '../plan/schedule/work-for.ts';
import { playerName, shownInstrument } from '../showfile/shown-names.ts';
import { loggedUnmarked, notHanded } from '../words/given-words.ts';
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
	const { show, instruments } = session;
	const words = handOvers.flatMap(({ instrument, ...one }) => {
		if (instrument === null) return [];
		const shown = shownInstrument(show, instrument);
		const isBroken = (instruments[instrument]?.context.stringsDown.length ?? 0) > 0;
		const undone = notDone(plan, { instrument, ...one });
		const unmarked = undone.length === 0 ? '' : `${shown} ${undone.join(', ')}`;
		// What has a string down is never logged as handed.
		return [isBroken ? { lost: notHanded(playerName(show, one.player), shown) } : { unmarked }];
	});
	const lost = words.flatMap((one) => one.lost ?? []);
	const unmarked = words.flatMap((one) => one.unmarked || []);
	const all = [
		...lost,
		...(unmarked.length === 0 ? [] : [loggedUnmarked(unmarked, keyOf('as-it-is'))]),
	];
	return all.length === 0 ? undefined : all.join(' ');
}
