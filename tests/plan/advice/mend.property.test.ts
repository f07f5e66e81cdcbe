// What is said to mend a night that does not work does so, and none of all single changes that there are
// would be cheaper: each of them planned here, one by one.

import { expect, test } from 'vitest';
import type { Mend } from '../../../src/plan/advice/mend.ts';
import { mendOf } from '../../../src/plan/advice/mend.ts';
import { isWorking, shortfallOf } from '../../../src/plan/advice/shortfall.ts';
import type { ShowChange } from '../../../src/plan/advice/show-changes.ts';
import {
	inEachOthersPlace,
	longerGap,
	oneMore,
	tunedBefore,
} from '../../../src/plan/advice/show-changes.ts';
import type { Plan } from '../../../src/plan/plan.ts';
import { planBeforeDoors } from '../../../src/plan/plan-before-doors.ts';
import { momentBefore, readyAtZero } from '../../../src/plan/timed-choice/before-doors.ts';
import { planCore } from '../../../src/plan/timed-choice/plan-core.ts';
import type { Show } from '../../../src/showfile/show.ts';
import type { Shape } from '../oracle/chance-show.ts';
import { chanceShow, evening } from '../oracle/chance-show.ts';

const SHOWS = Number(process.env.MEND_SHOWS ?? 25);
/** Longer gaps are not asked for here: each is a plan. */
const MOST_SECONDS = 120;

const small: Shape = {
	...evening(6, 2, 0.6),
	gaps: [10, 15, 30, 45],
	keeps: 0.2,
	cues: 0.15,
	shortest: 60,
};

function works(show: Show): boolean {
	return isWorking(shortfallOf(show, planBeforeDoors(show)));
}

/** As far as each change is looked at where many are. */
function seemsToWork(show: Show): boolean {
	const { plan } = planCore(momentBefore(readyAtZero(show)), { budget: 40_000 });
	return isWorking(shortfallOf(show, plan));
}

/** The first of all changes that cost less than this and are enough. */
function cheaperThan(price: number, show: Show, plan: Plan): ShowChange | undefined {
	const tunings = new Map(plan.slots.map(({ tuning }) => [tuning.notes.join(' '), tuning]));
	const starts = plan.sections.filter(({ point }) => point === 0);
	const all = [
		...show.instruments.flatMap(({ id }) =>
			[...tunings.values()].map((tuning) => tunedBefore(show, id, tuning)),
		),
		...show.set.flatMap((_, one) =>
			show.set.map((_, other) => (one < other ? inEachOthersPlace(show, one, other) : null)),
		),
		...plan.slots.map((slot) => oneMore(show, slot)),
		...starts.flatMap((section) =>
			Array.from({ length: MOST_SECONDS / 5 }, (_, index) =>
				longerGap(show, section, 5 * (index + 1)),
			),
		),
	];
	return all.find((one) => one !== null && one.price < price && seemsToWork(one.show)) ?? undefined;
}

function priceOf({ changes, isEachEnough }: Mend): number {
	return isEachEnough ? (changes[0]?.price ?? 0) : Number.POSITIVE_INFINITY;
}

const nights = Array.from({ length: SHOWS }, (_, seed) => {
	const show = chanceShow(seed, small);
	const plan = planBeforeDoors(show);
	const mend = mendOf(show, plan);
	return mend === null ? [] : [{ show, plan, mend }];
}).flat();

test('every change that is said to be enough is, and all together where all are needed', () => {
	for (const { mend } of nights) {
		expect(mend.changes.map(({ price }) => price).length).toBeLessThanOrEqual(3);
		const shows = mend.changes.map((change) => change.show);
		if (mend.isEachEnough) expect(shows.map(works)).toEqual(shows.map(() => true));
		else if (mend.isMended) expect(shows.slice(-1).map(works)).toEqual([true]);
	}
	const each = nights.filter(({ mend }) => mend.isEachEnough);
	const together = nights.filter(({ mend }) => mend.isMended && !mend.isEachEnough);
	expect(Math.min(each.length, together.length)).toBeGreaterThan(SHOWS / 10);
}, 120_000);

test('no single change that is enough would be cheaper than the first that is said', () => {
	for (const { show, plan, mend } of nights) {
		expect(cheaperThan(priceOf(mend), show, plan)?.kind).toBeUndefined();
	}
}, 240_000);
