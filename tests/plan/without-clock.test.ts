// Small shows made up by chance: the choice without the clock is held against everything that could be
// played instead, slots that have to stay empty among them.

import { expect, test } from 'vitest';
import { boardOf } from '../../src/plan/board.ts';
import { chooseHands } from '../../src/plan/choose-hands.ts';
import { outlookOf } from '../../src/plan/outlook.ts';
import { readyAtZero } from '../../src/plan/plan-before-doors.ts';
import { seatingOf } from '../../src/plan/seats.ts';
import { bestOf, figure, SHOWS, smallShows } from './oracle/small-shows.ts';

const CRITERIA = ['missing', 'overGap', 'handOvers', 'retunings', 'preference'] as const;

test(`in ${SHOWS} small shows no choice is better, were there no clock`, () => {
	for (const { seed, show, all } of smallShows()) {
		const session = readyAtZero(show);
		const outlook = outlookOf({ session, nowMs: -3_600_000, plannedZeroMs: 0 });
		const { counts, bound } = chooseHands(boardOf(seatingOf(outlook, null)), { left: 10_000_000 })!;
		const [missing, overGap, , handOvers, retunings, preference] = counts;
		const [best] = bestOf(all, CRITERIA);
		expect({ seed, bound, figures: [missing, overGap, handOvers, retunings, preference] }).toEqual({
			seed,
			bound: counts,
			figures: CRITERIA.map((criterion) => figure(best!, criterion)),
		});
	}
}, 120_000);
