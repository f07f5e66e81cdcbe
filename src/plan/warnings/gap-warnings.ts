// Gaps that leave the technician next to no time for the hand-overs in them.

import type { Plan, Section, Warning } from '../plan.ts';

/** Fewer seconds to spare than this are worth saying: common practice, no source. */
const SPARE_SECONDS = 5;

/**
 * One warning for each of these sections whose hand-overs leave less than five seconds of the gap
 * before it, or do not fit it.
 *
 * @example
 * gapWarnings(plan, plan.sections)[0] // => { code: 'tight-gap', song: 'lantern', handOvers: 1, seconds: 15, gapSeconds: 15 }
 */
export function gapWarnings({ handOvers }: Plan, sections: readonly Section[]): readonly Warning[] {
	return sections.flatMap((section): readonly Warning[] => {
		const given = handOvers.filter((one) => one.section === section && one.instrument !== null);
		if (section.gapSeconds === null || section.hasBegun || given.length === 0) return [];
		const seconds = given.reduce((sum, one) => sum + one.seconds, 0);
		if (section.gapSeconds - seconds >= SPARE_SECONDS) return [];
		const { song, gapSeconds } = section;
		return [{ code: 'tight-gap', song, handOvers: given.length, seconds, gapSeconds }];
	});
}
