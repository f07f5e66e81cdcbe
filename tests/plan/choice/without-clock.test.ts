// Small shows made up by chance: the choice without the clock is held against everything that could be
// played instead, slots that have to stay empty among them.

import { expect, test } from 'vitest';
import { compared } from '../../../src/plan/choice/criteria.ts';
import { chosenFor, figuresOf } from '../chosen-for.ts';
import { stateBeforeDoors } from '../independent/before-doors.ts';
import { PLAN_CRITERIA } from '../independent/cost.ts';
import { search } from '../independent/search.ts';
import { SMALL_SHOWS, smallShow } from '../independent/small-show.ts';

const CRITERIA = PLAN_CRITERIA.filter((name) => name !== 'lateness');

/** The share that is proved at least, however many steps there are: even the widest beam drops something at times. */
const LEAST_PROVED = 0.99;

test(`in ${SMALL_SHOWS} small shows no choice is better, were there no clock`, () => {
	let proved = 0;
	for (let seed = 0; seed < SMALL_SHOWS; seed += 1) {
		const show = smallShow(seed);
		const { cost } = search(stateBeforeDoors(show), { criteria: CRITERIA, mostPlans: 1 });
		const { chosen, isProved } = chosenFor(show, 10_000_000);
		if (isProved) proved += 1;
		const isBounded = compared(chosen.bound, chosen.counts) <= 0;
		expect({ seed, isBounded, figures: figuresOf(chosen.counts) }).toEqual({
			seed,
			isBounded: true,
			figures: CRITERIA.map((criterion) => cost[criterion]),
		});
	}
	expect(proved).toBeGreaterThanOrEqual(LEAST_PROVED * SMALL_SHOWS);
}, 120_000);
