// Plans of shows made up by chance, larger than can be enumerated, judged section by section by somebody who
// knows nothing of the planner.

import { describe, expect, test } from 'vitest';
import type { Plan } from '../../src/plan/plan.ts';
import { planBeforeDoors } from '../../src/plan/plan-before-doors.ts';
import type { Show } from '../../src/showfile/show.ts';
import { stateBeforeDoors } from './independent/before-doors.ts';
import { chanceShow as crowdedText } from './independent/chance-show.ts';
import { type Cost, PLAN_CRITERIA } from './independent/cost.ts';
import { type Judged, judge } from './independent/judge.ts';
import { seededChance } from './independent/seeded-chance.ts';
import { showOf } from './independent/show-of.ts';
import { workingClock } from './independent/working-clock.ts';
import { chanceShow, evening } from './oracle/chance-show.ts';
import { playsOf } from './plays-of.ts';

const SHOWS = Number(process.env.PLAN_SHOWS ?? 24);

const MAKING: Readonly<Record<string, (seed: number) => Show>> = {
	evenings: (seed) => chanceShow(seed, evening(12, 2, 0.7)),
	crowded: (seed) =>
		showOf(crowdedText(seededChance(seed), { players: 3, songs: 9, instruments: 8 })),
};

const plans = Object.entries(MAKING).flatMap(([name, make]) =>
	Array.from({ length: SHOWS / 2 }, (_, seed) => {
		const show = make(seed);
		const plan = planBeforeDoors(show);
		const judged = judge(stateBeforeDoors(show), playsOf(show, plan));
		return { name: `${name} ${seed}`, show, plan, judged };
	}),
);

function allowed(judged: (typeof plans)[number]['judged']): Judged {
	if ('refusedAt' in judged) throw new Error(`nobody may play so in section ${judged.refusedAt}`);
	return judged;
}

function figures(cost: Omit<Cost, 'changed'>): readonly number[] {
	return PLAN_CRITERIA.map((name) => cost[name]);
}

/** A piece of work in words that both sides have. */
function wordsOf(show: Show, { work, sections }: Plan): readonly string[] {
	return work.map(({ instrument, section, isEarly, seconds, fromMs, wantedMs }) => {
		expect(show.instruments.some(({ id }) => id === instrument)).toBe(true);
		const place = sections.indexOf(section);
		return `${instrument} ${place} ${isEarly} ${seconds} s ${fromMs / 1000} to ${wantedMs / 1000}`;
	});
}

describe('every plan', () => {
	test('has nobody play what they may not, and nobody without what they could have', () => {
		for (const { name, judged } of plans) {
			expect({ name, ...judged }).not.toHaveProperty('refusedAt');
		}
	});

	test('says what stands in for what, what is missing and what is handed over', () => {
		for (const { name, show, plan, judged } of plans) {
			const { joints, begun } = allowed(judged);
			const theirs = plan.sections.map((section, place) =>
				show.players.map(({ id }, player) => {
					const slot = plan.slots.find((one) => one.section === section && one.player === id);
					const { how, hold } = joints[place]![player]!;
					expect({ name, place, id, isMissing: slot?.isMissing ?? false }).toEqual({
						name,
						place,
						id,
						isMissing: how === 'missing',
					});
					if (how === 'substituted') expect(slot?.for).not.toBeNull();
					if (how === 'named') expect(slot?.for).toBeNull();
					return hold !== null && slot?.isHandOver === true;
				}),
			);
			const ours = begun.map((stints) =>
				show.players.map((_, player) => stints.some((stint) => stint.player === player)),
			);
			expect({ name, handed: theirs }).toEqual({ name, handed: ours });
		}
	});

	test('costs what it says', () => {
		for (const { name, plan, judged } of plans) {
			const mine = figures(plan.cost);
			expect({ name, cost: mine }).toEqual({ name, cost: figures(allowed(judged).cost) });
			const latest = Math.max(0, ...plan.work.map(({ slackSeconds }) => -slackSeconds));
			expect({ name, lateness: plan.cost.lateness }).toEqual({ name, lateness: latest });
		}
	});

	test('has all the work that is needed, one piece after the other, beside the hand-overs', () => {
		for (const { name, show, plan, judged } of plans) {
			const { pieces, busy } = allowed(judged);
			const theirs = pieces.map(
				({ instrument, section, part, seconds, from, wanted }) =>
					`${instrument} ${section} ${part === 'first'} ${seconds} s ${from} to ${wanted}`,
			);
			expect({ name, work: wordsOf(show, plan).toSorted() }).toEqual({
				name,
				work: theirs.toSorted(),
			});
			const boards = stateBeforeDoors(show).sections.flatMap(({ boardCues }) =>
				boardCues.map((from) => ({ from, to: from + 5 })),
			);
			const clock = workingClock([...boards, ...busy]);
			let time = -3600;
			for (const { startMs, finishMs, seconds, fromMs } of plan.work) {
				expect(startMs / 1000).toBeGreaterThanOrEqual(Math.max(time, fromMs / 1000));
				time = finishMs / 1000;
				expect(time).toBe(clock.momentAt(clock.workedAt(startMs / 1000) + seconds));
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
