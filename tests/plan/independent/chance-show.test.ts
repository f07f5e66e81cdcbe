// The shows made by chance: they open, they try every criterion, and pruning by bounds gives what looking at
// every plan does.

import { expect, test } from 'vitest';
import { stateBeforeDoors } from './before-doors.ts';
import { bestPlanWithin } from './best-plan.ts';
import { chanceShow } from './chance-show.ts';
import { type Criterion, PLAN_CRITERIA } from './cost.ts';
import { decisiveCriteria } from './decisive.ts';
import { search } from './search.ts';
import { seededChance } from './seeded-chance.ts';
import { showOf } from './show-of.ts';
import { SMALL_SHOWS, smallShow } from './small-show.ts';

const LEAST_EACH = 20;
const MOST_PASSED_OVER = 12;

test('each criterion decides some of them', { timeout: 240_000 }, () => {
	const decided = new Map<Criterion, number>(PLAN_CRITERIA.map((name) => [name, 0]));
	let passedOver = 0;
	for (let seed = 0; seed < SMALL_SHOWS; seed += 1) {
		const show = smallShow(seed);
		const state = stateBeforeDoors(show);
		const asked = PLAN_CRITERIA.filter((name) => decided.get(name)! < LEAST_EACH);
		if (asked.length === 0) break;
		const best = bestPlanWithin(show);
		if (best === null) passedOver += 1;
		if (best === null) continue;
		const criteria = PLAN_CRITERIA;
		for (const name of decisiveCriteria(state, best, { criteria, asked })) {
			decided.set(name, decided.get(name)! + 1);
		}
	}
	expect(passedOver).toBeLessThan(MOST_PASSED_OVER);
	for (const [name, count] of decided) expect.soft(count, name).toBeGreaterThanOrEqual(LEAST_EACH);
});

test('pruning changes nothing', () => {
	for (let seed = 0; seed < 60; seed += 1) {
		const chance = seededChance(1000 + seed);
		const text = chanceShow(chance, { players: 2, songs: 4, instruments: 4 });
		const state = stateBeforeDoors(showOf(text));
		const options = { criteria: PLAN_CRITERIA, mostPlans: 1000 };
		const { cost, count } = search(state, options);
		expect(search(state, { ...options, isBounded: false }), text).toMatchObject({ cost, count });
	}
});

test('in every plan nobody has two, nothing is in two hands, and what is named and free is played', {
	timeout: 120_000,
}, () => {
	for (let seed = 0; seed < 100; seed += 1) {
		const show = smallShow(2000 + seed);
		for (const { slots } of bestPlanWithin(show)?.plans ?? []) {
			const sections = Map.groupBy(slots, ({ slot, player }) => slot.slice(0, -player.length));
			for (const inSection of sections.values()) {
				const held = inSection.flatMap(({ played }) => played?.instrument ?? []);
				expect(new Set(held).size).toBe(held.length);
				expect(new Set(inSection.map(({ player }) => player)).size).toBe(show.players.length);
			}
		}
	}
});
