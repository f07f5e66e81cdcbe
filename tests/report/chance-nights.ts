// Nights of chance at the keys, as in the walk tests, and their reports.

import type { Entry } from '../../src/journal/entry.ts';
import type { JournalRecord } from '../../src/journal/record.ts';
import { type NightReport, nightReport } from '../../src/report/night-report.ts';
import { nightSteps } from '../../src/report/night-steps.ts';
import type { Show } from '../../src/showfile/show.ts';
import { chanceGesture } from '../night/walks/gestures.ts';
import { PLANNED_ZERO_MS, walkedNight } from '../night/walks/walked-night.ts';
import { chanceShow, chanceSize } from '../plan/independent/chance-show.ts';
import { seededChance } from '../plan/independent/seeded-chance.ts';
import { showOf } from '../plan/independent/show-of.ts';

/** Seeds of the nights that the tests of reports look at. */
export const NIGHTS: readonly number[] = [1, 2, 3, 4, 5, 6, 7, 8, 9, 10];

const GESTURES = 40;

export type ChanceNight = {
	readonly show: Show;
	readonly records: readonly JournalRecord<Entry>[];
	readonly report: NightReport;
};

const walked = new Map<number, ChanceNight>();

/** The night of a seed, walked once. */
export function chanceNights(seed: number): ChanceNight {
	const known = walked.get(seed);
	if (known) return known;
	const chance = seededChance(seed);
	const show = showOf(chanceShow(chance, chanceSize(chance)));
	const night = walkedNight(show);
	for (let i = 0; i < GESTURES; i += 1) {
		const { keys, wait } = chanceGesture(chance, night.night().session());
		night.wait(wait);
		for (const key of keys) night.press(key);
	}
	const records: readonly JournalRecord<Entry>[] = JSON.parse(
		JSON.stringify(night.night().records()),
	);
	const report = nightReport({
		show,
		night: `chance-${seed}`,
		isRehearsal: true,
		...nightSteps(show, records),
		plannedZeroMs: PLANNED_ZERO_MS,
		dayOffsetMinutes: 0,
		damage: [],
	});
	const made = { show, records, report };
	walked.set(seed, made);
	return made;
}
