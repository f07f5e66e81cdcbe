// Small shows made up by chance: the plan is held against everything that could be played instead.

import { describe, expect, test } from 'vitest';
import { planBeforeDoors } from '../../src/plan/plan-before-doors.ts';
import { chanceShow } from './oracle/chance-show.ts';
import { everyChoice } from './oracle/enumerate.ts';
import type { Judged } from './oracle/judge.ts';

const SHOWS = Number(process.env.PLAN_SHOWS ?? 320);
/** Shows with more choices than this are passed over: it is the small ones that are tried out. */
const MOST_CHOICES = 600;

const CRITERIA = [
	'missing',
	'overGap',
	'lateness',
	'handOvers',
	'retunings',
	'preference',
] as const;
type Criterion = (typeof CRITERIA)[number];

const shapeOf = (seed: number) => ({
	songs: 3 + (seed % 2),
	players: 2 + (seed % 2),
	own: seed % 5 === 0 ? 2 : 1,
	shared: 1 + (seed % 3),
	named: 0.4,
	keeps: 0.15,
	none: 0.08,
	gaps: [[0, 5, 15, 20], [15, 30, 45], [15, 20]][seed % 3]!,
	cues: seed % 4 === 0 ? 0.3 : 0,
	intervals: 0.1,
	hasOddHandOvers: seed % 2 === 0,
});

function figure(one: Judged, criterion: Criterion): number {
	return criterion === 'lateness' ? one.lateness() : one[criterion];
}

/** Those that no other beats, the criteria taken in this order. */
function bestOf(all: readonly Judged[], criteria: readonly Criterion[]): readonly Judged[] {
	return criteria.reduce((left: readonly Judged[], criterion) => {
		const least = Math.min(...left.map((one) => figure(one, criterion)));
		return left.filter((one) => figure(one, criterion) === least);
	}, all);
}

function isNoWorse(one: readonly number[], other: readonly number[]): boolean {
	const place = one.findIndex((count, at) => count !== other[at]);
	return place < 0 || one[place]! < other[place]!;
}

function smallShows() {
	const found = [];
	for (let seed = 1; found.length < SHOWS; seed += 1) {
		const show = chanceShow(seed, shapeOf(seed));
		const all = everyChoice(show, MOST_CHOICES);
		if (all !== null) found.push({ seed, show, all });
	}
	return found;
}

describe('no choice is better than the plan', () => {
	const decided = new Map<Criterion, number>();

	test(`in ${SHOWS} small shows`, () => {
		let unproved = 0;
		for (const { seed, show, all } of smallShows()) {
			const plan = planBeforeDoors(show);
			const [best] = bestOf(all, CRITERIA);
			const figures = CRITERIA.map((criterion) => figure(best!, criterion));
			if (plan.isProved) {
				expect({ seed, figures: CRITERIA.map((one) => plan.cost[one]) }).toEqual({ seed, figures });
			} else {
				unproved += 1;
				const bound = CRITERIA.map((one) => plan.bound![one]);
				const cost = CRITERIA.map((one) => plan.cost[one]);
				expect({ seed, isBelow: isNoWorse(bound, figures) && isNoWorse(figures, cost) }).toEqual({
					seed,
					isBelow: true,
				});
			}
			for (const criterion of CRITERIA) {
				const others = CRITERIA.filter((one) => one !== criterion);
				const without = bestOf(all, others);
				const isDecisive = without.every(
					(one) => figure(one, criterion) > figure(best!, criterion),
				);
				if (isDecisive) decided.set(criterion, (decided.get(criterion) ?? 0) + 1);
			}
		}
		expect(unproved).toBeLessThan(SHOWS / 6);
	}, 120_000);

	test.each(CRITERIA)('where %s alone decides, in at least twenty of them', (criterion) => {
		expect(decided.get(criterion)).toBeGreaterThanOrEqual(20);
	});
});
