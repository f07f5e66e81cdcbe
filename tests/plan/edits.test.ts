// What becomes of a plan when its show is edited: more gear and quicker hands never make it worse, and
// what has nothing to do with it leaves it as it was to the last letter.

import { describe, expect, test } from 'vitest';
import type { Plan } from '../../src/plan/plan.ts';
import { planBeforeDoors } from '../../src/plan/plan-before-doors.ts';
import type { Instrument, Show } from '../../src/showfile/show.ts';
import type { Shape } from './oracle/chance-show.ts';
import { chanceShow, evening } from './oracle/chance-show.ts';

const SHOWS = Number(process.env.PLAN_SHOWS ?? 40);

const CROWDED: Shape = {
	...evening(5, 2, 0.4),
	own: 1,
	shared: 2,
	keeps: 0.2,
	none: 0.1,
	gaps: [0, 15, 30],
	cues: 0.2,
	shortest: 60,
};

const shows = Array.from({ length: SHOWS }, (_, seed) => chanceShow(seed, CROWDED));
const plans = shows.map(planBeforeDoors);

/** Slots with nothing, hand-overs too many and lateness, the weightiest first. */
function figures({ cost }: Plan): readonly number[] {
	return [cost.missing, cost.overGap, cost.lateness];
}

function isWorse(one: Plan, other: Plan): boolean {
	const [mine, theirs] = [figures(one), figures(other)];
	const place = mine.findIndex((count, at) => count !== theirs[at]);
	return place >= 0 && mine[place]! > theirs[place]!;
}

/** Shows whose plan is proved to be worse once they are edited so. */
function worsened(edit: (show: Show) => Show): readonly string[] {
	const proved = shows.filter((_, at) => plans[at]!.isProved);
	expect(proved.length).toBeGreaterThan(SHOWS / 2);
	return proved.flatMap((show) => {
		const plan = planBeforeDoors(edit(show));
		const before = plans[shows.indexOf(show)]!;
		return plan.isProved && isWorse(plan, before) ? [show.title] : [];
	});
}

function withInstrument(show: Show, more: Partial<Instrument>, at: number): Show {
	const [first] = show.instruments;
	const added = { ...first!, id: 'NEW', name: 'New', for: null, ...more };
	return { ...show, instruments: show.instruments.toSpliced(at, 0, added) };
}

describe('no plan gets worse in what is missing, does not fit or is late', () => {
	test('by another spare', () => {
		const edit = (show: Show): Show =>
			withInstrument(show, { spare: true, bridge: 'fixed' }, show.instruments.length);
		expect(worsened(edit)).toEqual([]);
	});

	test('by quicker hands', () => {
		const quicker = (one: Instrument): Instrument => ({
			...one,
			times: {
				...one.times,
				touchUp: 30,
				oneString: 45,
				twoStrings: 60,
				allStrings: 60,
				otherTuning: 105,
				wipe: 10,
			},
		});
		const edit = (show: Show): Show => ({ ...show, instruments: show.instruments.map(quicker) });
		expect(worsened(edit)).toEqual([]);
	});
});

test('an edit that has nothing to do with it leaves a plan as it was, to the last letter', () => {
	const spare = { ...chanceShow(1, CROWDED).songs[0]!, id: 'unplayed', title: 'Unplayed' };
	for (const [at, show] of shows.entries()) {
		const text = JSON.stringify(plans[at]);
		expect(JSON.stringify(planBeforeDoors(structuredClone(show)))).toBe(text);
		const unlike = withInstrument(show, { kind: 'acoustic-12' }, at % 3);
		const edited = { ...unlike, title: 'Another title', songs: [spare, ...unlike.songs] };
		const plan = planBeforeDoors(edited);
		// Only what is said of the instrument nobody plays may differ.
		expect(JSON.stringify({ ...plan, warnings: [] })).toBe(
			JSON.stringify({ ...plans[at], warnings: [] }),
		);
	}
});
