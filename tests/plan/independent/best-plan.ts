// The best plan before the doors, by enumeration from the model alone: what a planner is compared with. It
// shares nothing with the planner but the types of a show and the reading of a note's name.
//
// How the parts hang together:
//
//   show text ─▶ showOf ─▶ Show ─▶ stateBeforeDoors ─▶ LiveState ─▶ search ─▶ Best
//   chanceShow ──┘                   (or a test's own, from a session) ──┘
//
//   sounding      which open tunings and capos sound a certain way
//   holds         a state's instruments, tunings and ways of playing, numbered; what may be played where
//   moves         what the players of one section may have together: the rules of who gets what
//   stints        which hand-overs that makes, and every count the clock has no part in
//   pieces        the work for them: seconds, in one piece or two, from, wanted; busy windows
//   least-worst   the least worst lateness of work on the clock with the windows cut out
//   search        depth first over all sections, pruned by partial cost
//
// Comparing a planner with it: make a show (`chanceShow(chance, chanceSize(chance))`, `showOf`), take
// `bestPlan(show).cost` and hold the planner's cost against it, criterion by criterion; `changed` is 0. Where
// only the cost is wanted, `mostPlans` 1 ends ties at once. Whether the planner's own assignment is one of
// the best: look for it in `plans` (all of them where `count` < `mostPlans`).
//
// A slot is a player in a section. A song is one section and one more after each cue that hands over; there,
// who is not named in the cue has the cell of the line above like in any song. A section's key is the place
// of its song in `show.set`, intervals counted, then `.1`, `.2` … after cues: slot "3.1 ash". `how` says why
// it is played: kept (unnamed and sounding so), named, substituted, chosen (for `needs`), missing, none.
// What a missing slot plays is null, even where the night leaves something in the player's hands.

import type { Show } from '../../../src/showfile/show.ts';
import { stateBeforeDoors } from './before-doors.ts';
import { PLAN_CRITERIA } from './cost.ts';
import { type Best, search, TooManySteps } from './search.ts';

/** Plans kept and counted where nothing else is asked for. */
const MOST_PLANS = 50;
/** Some seconds on a small laptop; about two in a hundred shows made by chance take more. */
const MOST_STEPS = 80_000;

/**
 * The least cost by the eight criteria in their order, and the plans that have it: all of them, or as many
 * as are asked for. Each plan lists its slots by section and player; a section's key is the place of its
 * song in `show.set`, with `.1`, `.2` and so on for what follows a cue that hands over.
 *
 * @example
 * const { cost, count, plans } = bestPlan(show);
 * plans[0].slots[0]; // { slot: '0 ash', player: 'ash', how: 'named', played: { instrument: 'A1', … }, … }
 */
export function bestPlan(show: Show, mostPlans = MOST_PLANS): Best {
	return search(stateBeforeDoors(show), { criteria: PLAN_CRITERIA, mostPlans });
}

/**
 * The same, or null where it would take too long: some shows made by chance are late whatever is chosen,
 * and then nearly every plan has to be looked at. A test over many shows passes these over, and counts them.
 */
export function bestPlanWithin(
	show: Show,
	{ mostPlans = MOST_PLANS, mostSteps = MOST_STEPS } = {},
): Best | null {
	try {
		const criteria = PLAN_CRITERIA;
		return search(stateBeforeDoors(show), { criteria, mostPlans, mostSteps });
	} catch (error) {
		if (error instanceof TooManySteps) return null;
		throw error;
	}
}
