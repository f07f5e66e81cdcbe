// Small shows made up by chance: the plan is held against everything that could be played instead.

import { describe, expect, test } from 'vitest';
import type { Criterion } from './oracle/small-shows.ts';
import { bestOf, CRITERIA, figure, provedPlan, SHOWS, smallShows } from './oracle/small-shows.ts';

describe('no choice is better than the plan', () => {
	const decided = new Map<Criterion, number>();

	test(`in ${SHOWS} small shows`, () => {
		for (const { seed, show, all } of smallShows()) {
			const plan = provedPlan(show);
			const [best] = bestOf(all, CRITERIA);
			const figures = CRITERIA.map((criterion) => figure(best!, criterion));
			expect({
				seed,
				isProved: plan.isProved,
				figures: CRITERIA.map((one) => plan.cost[one]),
			}).toEqual({ seed, isProved: true, figures });
			for (const criterion of CRITERIA) {
				// Left out, it would let something through that is worse in it.
				const others = CRITERIA.filter((one) => one !== criterion);
				const isDecisive = bestOf(all, others).some(
					(one) => figure(one, criterion) > figure(best!, criterion),
				);
				if (isDecisive) decided.set(criterion, (decided.get(criterion) ?? 0) + 1);
			}
		}
	}, 120_000);

	test.each(CRITERIA)('where %s decides, in at least twenty of them', (criterion) => {
		expect(decided.get(criterion)).toBeGreaterThanOrEqual(20);
	});
});
