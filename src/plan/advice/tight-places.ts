// Where a plan is tight: gaps that its hand-overs fill, and work that is done only just in time.

import type { Plan, Section, Work } from '../plan.ts';

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
export function tightPlaces({ sections, handOvers, work }: Plan): readonly TightPlace[] {
	const gaps = sections.flatMap((section): readonly TightPlace[] => {
		const given = handOvers.filter((one) => one.section === section && one.instrument !== null);
		if (section.gapSeconds === null || given.length === 0) return [];
		const seconds = given.reduce((sum, one) => sum + one.seconds, 0);
		const spareSeconds = section.gapSeconds - seconds;
		return [{ section, spareSeconds, work: null, handOvers: given.length }];
	});
	const works = work.map(
		(one): TightPlace => ({
			section: one.section,
			spareSeconds: one.slackSeconds,
			work: one,
			handOvers: 0,
		}),
	);
	return [...gaps, ...works].sort(
		(one, other) =>
			one.spareSeconds - other.spareSeconds || one.section.startMs - other.section.startMs,
	);
}
