// Gaps that leave the technician next to no time for the hand-overs in them.

import type { Plan, Section, Warning } from '../plan.ts';

/** Fewer seconds to spare than this are worth saying: common practice, no source. */
const SPARE_SECONDS = 5;

export type FilledGap = {
	readonly section: Section;
	readonly gapSeconds: number;
	/** Hand-overs in the gap, and the seconds that they take. */
	readonly handOvers: number;
	readonly seconds: number;
	/** Negative where they do not fit. */
	readonly spareSeconds: number;
};

/**
 * The gaps before these sections with what is handed over in them.
 *
 * @example
 * filledGaps(plan, plan.sections).map(({ section, spareSeconds }) => [section.song, spareSeconds]) // => [['lantern', 0], ['gravel', 0]]
 */
export function filledGaps(
	{ handOvers }: Pick<Plan, 'handOvers'>,
	sections: readonly Section[],
): readonly FilledGap[] {
	return sections.flatMap((section): readonly FilledGap[] => {
		const { gapSeconds } = section;
		const given = handOvers.filter((one) => one.section === section && one.instrument !== null);
		if (gapSeconds === null || given.length === 0) return [];
		const seconds = given.reduce((sum, one) => sum + one.seconds, 0);
		const spareSeconds = gapSeconds - seconds;
		return [{ section, gapSeconds, handOvers: given.length, seconds, spareSeconds }];
	});
}

/**
 * One warning for each of these sections, not on yet, whose hand-overs leave less than five seconds of the gap
 * before it, or do not fit it.
 *
 * @example
 * gapWarnings(plan, plan.sections)[0] // => { code: 'tight-gap', song: 'lantern', handOvers: 1, seconds: 15, gapSeconds: 15 }
 */
export function gapWarnings(plan: Plan, sections: readonly Section[]): readonly Warning[] {
	return filledGaps(plan, sections)
		.filter(({ section, spareSeconds }) => !section.hasBegun && spareSeconds < SPARE_SECONDS)
		.map(({ section: { song }, handOvers, seconds, gapSeconds }) => ({
			code: 'tight-gap',
			song,
			handOvers,
			seconds,
			gapSeconds,
		}));
}
