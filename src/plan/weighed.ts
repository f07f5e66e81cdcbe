// A choice with everything that follows from it: stints, hand-overs, work in its order, and the cost.

import { busyWindows } from './busy-windows.ts';
import type { Choice } from './choices.ts';
import { costOf } from './cost.ts';
import type { FreeClock } from './free-clock.ts';
import { freeClock } from './free-clock.ts';
import { handOversAhead } from './hand-overs-ahead.ts';
import type { Outlook } from './outlook.ts';
import type { Cost, PlannedHandOver, Work } from './plan.ts';
import type { Stint } from './stints.ts';
import { stintsAhead } from './stints.ts';
import { workAhead } from './work-ahead.ts';

export type Weighed = {
	readonly choices: readonly Choice[];
	readonly stints: readonly Stint[];
	readonly handOvers: readonly PlannedHandOver[];
	readonly clock: FreeClock;
	readonly work: readonly Work[];
	/** In no other order is the worst of the work less late. */
	readonly isInBestOrder: boolean;
	readonly cost: Cost;
};

/**
 * What follows from these choices.
 *
 * @example
 * weighed(outlook, choices).cost.handOvers // => 2
 */
export function weighed(outlook: Outlook, choices: readonly Choice[]): Weighed {
	const stints = stintsAhead(outlook, choices);
	const handOvers = handOversAhead(outlook, choices);
	const clock = freeClock(busyWindows(outlook.cues, handOvers));
	const { work, isProved } = workAhead(outlook, stints, { handOvers, clock });
	const cost = costOf(outlook, { choices, stints, handOvers, work });
	return { choices, stints, handOvers, clock, work, isInBestOrder: isProved, cost };
}
