// Small shows made up by chance: the plan is held against everything that could be played instead.

import { describe, expect, test } from 'vitest';
import { readyAtZero } from '../../src/plan/plan-before-doors.ts';
import { planCore } from '../../src/plan/plan-core.ts';
import type { Show } from '../../src/showfile/show.ts';
import type { Shape } from './oracle/chance-show.ts';
import { chanceShow } from './oracle/chance-show.ts';
import { everyChoice } from './oracle/enumerate.ts';
import type { Judged } from './oracle/judge.ts';

const SHOWS = Number(process.env.PLAN_SHOWS ?? 400);
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

const USUAL: Shape = {
	songs: 3,
	players: 2,
	own: 1,
	shared: 2,
	named: 0.4,
	keeps: 0.15,
	none: 0.08,
	gaps: [0, 5, 15, 15, 30],
	cues: 0.1,
	intervals: 0.1,
	shortest: 60,
	tunings: 6,
	prefers: 0.3,
	features: 0.1,
	hasOddHandOvers: true,
};

/** Each makes another criterion decide more often. */
const SHAPES: readonly Shape[] = [
	USUAL,
	{ ...USUAL, songs: 4, players: 3, own: 0, shared: 3, keeps: 0.35, gaps: [45, 60] },
	{ ...USUAL, songs: 4, shared: 1, cues: 0.3 },
	{
		...USUAL,
		songs: 4,
		own: 2,
		shared: 0,
		gaps: [0, 20, 25],
		shortest: 400,
		tunings: 1,
		prefers: 1,
		features: 0.6,
	},
	{
		...USUAL,
		songs: 4,
		own: 2,
		shared: 0,
		named: 0.5,
		gaps: [0, 60],
		shortest: 400,
		tunings: 1,
		prefers: 1,
		features: 0.3,
		hasOddHandOvers: false,
	},
];

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

/** The plan before the doors, with all the budget that its proof may take. */
function provedPlan(show: Show) {
	const moment = { session: readyAtZero(show), nowMs: -3_600_000, plannedZeroMs: 0 };
	return planCore(moment, { budget: 50_000_000 }).plan;
}

function smallShows() {
	const found = [];
	for (let seed = 1; found.length < SHOWS; seed += 1) {
		const show = chanceShow(seed, SHAPES[seed % SHAPES.length]!);
		const all = everyChoice(show, MOST_CHOICES);
		if (all !== null) found.push({ seed, show, all });
	}
	return found;
}

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
