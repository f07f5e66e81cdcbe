// Small shows made up by chance, with everything that could be played in each, and which of it is best.

import type { Plan } from '../../../src/plan/plan.ts';
import { readyAtZero } from '../../../src/plan/plan-before-doors.ts';
import { planCore } from '../../../src/plan/plan-core.ts';
import type { Session } from '../../../src/session/session.ts';
import type { Show } from '../../../src/showfile/show.ts';
import type { Shape } from './chance-show.ts';
import { chanceShow } from './chance-show.ts';
import { everyChoice } from './enumerate.ts';
import type { Judged } from './judge.ts';

export const SHOWS = Number(process.env.PLAN_SHOWS ?? 400);
/** Shows with more choices than this are passed over: it is the small ones that are tried out. */
const MOST_CHOICES = 600;

export const CRITERIA = [
	'missing',
	'overGap',
	'lateness',
	'handOvers',
	'retunings',
	'preference',
] as const;
export type Criterion = (typeof CRITERIA)[number];

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

/** What one choice comes to in a criterion. */
export function figure(one: Judged, criterion: Criterion): number {
	return criterion === 'lateness' ? one.lateness() : one[criterion];
}

/** Those that no other beats in these figures, taken in this order. */
export function leastOf(
	all: readonly Judged[],
	figures: readonly ((one: Judged) => number)[],
): readonly Judged[] {
	return figures.reduce((left: readonly Judged[], figureOf) => {
		const least = Math.min(...left.map(figureOf));
		return left.filter((one) => figureOf(one) === least);
	}, all);
}

/** Those that no other beats, the criteria taken in this order. */
export function bestOf(all: readonly Judged[], criteria: readonly Criterion[]): readonly Judged[] {
	return leastOf(
		all,
		criteria.map((criterion) => (one) => figure(one, criterion)),
	);
}

export type SmallShow = {
	readonly seed: number;
	readonly show: Show;
	readonly all: readonly Judged[];
};

/** The plan before the doors, with all the budget that its proof may take. */
export function provedPlan(show: Show, session: Session = readyAtZero(show)): Plan {
	const moment = { session, nowMs: -3_600_000, plannedZeroMs: 0 };
	return planCore(moment, { budget: 50_000_000 }).plan;
}

/** So many shows, the same ones every time. */
export function smallShows(): readonly SmallShow[] {
	const found: SmallShow[] = [];
	for (let seed = 1; found.length < SHOWS; seed += 1) {
		const show = chanceShow(seed, SHAPES[seed % SHAPES.length]!);
		const all = everyChoice(show, MOST_CHOICES);
		if (all !== null) found.push({ seed, show, all });
	}
	return found;
}
