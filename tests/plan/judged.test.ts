// Plans of shows made up by chance, judged line by line by somebody who knows nothing of the planner.

import { describe, expect, test } from 'vitest';
import type { Plan } from '../../src/plan/plan.ts';
import { planBeforeDoors } from '../../src/plan/plan-before-doors.ts';
import type { Show } from '../../src/showfile/show.ts';
import type { Shape } from './oracle/chance-show.ts';
import { chanceShow, evening } from './oracle/chance-show.ts';
import { judge, whyNot } from './oracle/judge.ts';
import { doneAt } from './oracle/least-late.ts';
import { linesOf } from './oracle/lines.ts';
import { playsOf } from './oracle/plays-of.ts';

const SHOWS = Number(process.env.PLAN_SHOWS ?? 24);

const CROWDED: Shape = {
	...evening(7, 3, 0.4),
	own: 1,
	shared: 3,
	keeps: 0.2,
	none: 0.1,
	gaps: [0, 5, 15, 30],
	cues: 0.3,
	shortest: 60,
	hasOddHandOvers: true,
};
const SHAPES = { evenings: evening(12, 2, 0.7), crowded: CROWDED };

const plans = Object.entries(SHAPES).flatMap(([name, shape]) =>
	Array.from({ length: SHOWS / 2 }, (_, seed) => {
		const show = chanceShow(seed, shape);
		return { name: `${name} ${seed}`, show, plan: planBeforeDoors(show) };
	}),
);

function judgedOf(show: Show, plan: Plan) {
	const lines = linesOf(show);
	const plays = playsOf(show, lines, plan);
	return { lines, plays, judged: judge(show, lines, plays) };
}

describe('every plan', () => {
	test('has nobody play what they may not, and nobody without what they could have', () => {
		for (const { name, show, plan } of plans) {
			const { lines, plays } = judgedOf(show, plan);
			const none = show.players.map(() => null);
			const why = lines.map((line, at) =>
				whyNot(show, line, { before: plays[at - 1] ?? none, plays: plays[at]! }),
			);
			expect({ name, why: why.filter((one) => one !== null) }).toEqual({ name, why: [] });
		}
	});

	test('costs what it says', () => {
		for (const { name, show, plan } of plans) {
			const { judged } = judgedOf(show, plan);
			const { missing, overGap, handOvers, retunings, preference } = judged;
			const { lateness, ...cost } = plan.cost;
			expect({ name, ...cost }).toEqual({
				name,
				missing,
				overGap,
				handOvers,
				retunings,
				preference,
			});
			const latest = Math.max(0, ...plan.work.map(({ slackSeconds }) => -slackSeconds));
			expect({ name, lateness }).toEqual({ name, lateness: latest });
		}
	});

	test('has all the work that is needed, one piece after the other, beside the hand-overs', () => {
		for (const { name, show, plan } of plans) {
			const { judged } = judgedOf(show, plan);
			const work = plan.work.map((one) => ({
				instrument: one.instrument,
				seconds: one.seconds,
				fromSeconds: one.fromMs / 1000,
				wantedSeconds: one.wantedMs / 1000,
			}));
			const byName = (chores: readonly object[]) => chores.map((one) => JSON.stringify(one)).sort();
			expect({ name, work: byName(work) }).toEqual({ name, work: byName(judged.chores) });
			let time = -3600;
			for (const { startMs, finishMs, seconds, fromMs } of plan.work) {
				expect(startMs / 1000).toBeGreaterThanOrEqual(Math.max(time, fromMs / 1000));
				time = finishMs / 1000;
				expect(time).toBe(doneAt(startMs / 1000, seconds, judged.busy));
			}
		}
	});

	test('is no better than its bound, and proved where it says so', () => {
		for (const { plan } of plans) {
			expect(plan.bound === null).toBe(plan.isProved);
			if (plan.bound === null) continue;
			const [bound, cost] = [Object.values(plan.bound), Object.values(plan.cost)];
			const place = bound.findIndex((count, at) => count !== cost[at]);
			expect(bound[place]).toBeLessThan(cost[place]!);
		}
	});
});
