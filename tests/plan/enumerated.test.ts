// Plans of small shows made up by chance against everything that could be played instead, by a program that
// was written from the model alone. That each criterion decides twenty of these shows at least is seen in
// independent/chance-show.test.ts. No difference of reading is known, and nothing is left out.

import { describe, expect, test } from 'vitest';
import type { Plan } from '../../src/plan/plan.ts';
import { planBeforeDoors } from '../../src/plan/plan-before-doors.ts';
import { stateBeforeDoors } from './independent/before-doors.ts';
import { bestPlan } from './independent/best-plan.ts';
import { type Cost, compareCosts, PLAN_CRITERIA } from './independent/cost.ts';
import { judge } from './independent/judge.ts';
import { SMALL_SHOWS, smallShow } from './independent/small-show.ts';
import { playsOf } from './plays-of.ts';

/** The share of them that a plan before the doors proves with what it may look at. */
const LEAST_PROVED = 0.8;
/** Where there are no more of the best plans than this, the plan is looked for among them. */
const FEW_PLANS = 20;

const shows = Array.from({ length: SMALL_SHOWS }, (_, seed) => {
	const show = smallShow(seed);
	return { seed, show, plan: planBeforeDoors(show), best: bestPlan(show, FEW_PLANS + 1) };
});

function costOf({ cost }: Pick<Plan, 'cost'>): Cost {
	return { ...cost, changed: 0 };
}

function figures(cost: Omit<Cost, 'changed'>): readonly number[] {
	return PLAN_CRITERIA.map((name) => cost[name]);
}

describe(`${SMALL_SHOWS} small shows`, () => {
	test('a plan that is called proved costs what the best of all plans costs', () => {
		for (const { seed, plan, best } of shows) {
			if (!plan.isProved) continue;
			expect({ seed, cost: figures(plan.cost) }).toEqual({ seed, cost: figures(best.cost) });
		}
	});

	test('the best of all plans lies between the bound and the plan where nothing is proved', () => {
		for (const { seed, plan, best } of shows) {
			expect({ seed, hasBound: plan.bound !== null }).toEqual({ seed, hasBound: !plan.isProved });
			if (plan.bound === null) continue;
			const isWithin =
				compareCosts(best.cost, costOf(plan), PLAN_CRITERIA) <= 0 &&
				compareCosts({ ...plan.bound, changed: 0 }, best.cost, PLAN_CRITERIA) <= 0;
			expect({ seed, isWithin }).toEqual({ seed, isWithin: true });
		}
	});

	test('four fifths are proved at least', () => {
		const proved = shows.filter(({ plan }) => plan.isProved);
		expect(proved.length).toBeGreaterThanOrEqual(LEAST_PROVED * SMALL_SHOWS);
	});

	test('everybody plays what they may, and it costs what is said', () => {
		for (const { seed, show, plan } of shows) {
			const judged = judge(stateBeforeDoors(show), playsOf(show, plan));
			if ('refusedAt' in judged) throw new Error(`show ${seed}: section ${judged.refusedAt}`);
			expect({ seed, cost: figures(judged.cost) }).toEqual({ seed, cost: figures(plan.cost) });
		}
	});

	test('where few plans are best, it is one of them', () => {
		let few = 0;
		for (const { seed, show, plan, best } of shows) {
			if (!plan.isProved || best.count > FEW_PLANS) continue;
			few += 1;
			const mine = playsOf(show, plan).flat();
			const theirs = best.plans.map(({ slots }) => slots.map(({ played }) => played));
			expect({ seed, theirs }).toEqual({ seed, theirs: expect.arrayContaining([mine]) });
		}
		expect(few).toBeGreaterThan(SMALL_SHOWS / 4);
	});
}, 240_000);
