// Where a night is tight: every gap with hand-overs in it, and every piece of work, by what it has to spare.

import type { Plan, Section, Work } from '../plan.ts';
import { filledGaps } from '../warnings/gap-warnings.ts';

export type TightPlace = {
	readonly section: Section;
	/** Negative where it does not fit. */
	readonly spareSeconds: number;
	/** The work that is tight; null where it is the gap that its hand-overs fill. */
	readonly work: Work | null;
	/** Hand-overs in the gap. */
	readonly handOvers: number;
};

/**
 * Every gap with hand-overs and every piece of work, the tightest first, then in order of time.
 *
 * @example
 * tightPlaces(plan).map(({ section, spareSeconds }) => [section.song, spareSeconds]) // => [['lantern', 0], ['gravel', 0], ['gravel', 150]]
 */
export function tightPlaces(plan: Plan): readonly TightPlace[] {
	const gaps = filledGaps(plan, plan.sections).map((gap) => ({ ...gap, work: null }));
	const works = plan.work.map((work) => ({
		section: work.section,
		// As everywhere that says by how much work is short: what hands are busy with meanwhile would be there anyway.
		spareSeconds: work.slackSeconds < 0 ? -work.shortSeconds : work.slackSeconds,
		work,
		handOvers: 0,
	}));
	return [...gaps, ...works].sort(
		(one, other) =>
			one.spareSeconds - other.spareSeconds || one.section.startMs - other.section.startMs,
	);
}
