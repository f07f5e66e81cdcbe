// Gaps that leave the technician next to no time for the hand-overs in them.

import { tenths } from '../../base/show-clock.ts';
import type { Show } from '../../showfile/show.ts';
import { songTitle } from '../../showfile/shown-names.ts';
import type { Plan, Section, Warning } from '../plan.ts';

/** Fewer seconds to spare than this are worth saying: common practice, no source. */
const SPARE_SECONDS = 5;

/**
 * One warning for each of these sections whose hand-overs leave less than five seconds of the gap
 * before it, or do not fit it.
 *
 * @example
 * gapWarnings(show, plan, plan.sections).map(({ text }) => text)[0] // => 'One hand-over takes 15 s of the 15 s before Lantern: 0 s to spare'
 */
export function gapWarnings(
	show: Show,
	{ handOvers }: Plan,
	sections: readonly Section[],
): readonly Warning[] {
	return sections.flatMap((section): readonly Warning[] => {
		const given = handOvers.filter((one) => one.section === section && one.instrument !== null);
		if (section.gapSeconds === null || section.hasBegun || given.length === 0) return [];
		const seconds = given.reduce((sum, one) => sum + one.seconds, 0);
		const spare = section.gapSeconds - seconds;
		if (spare >= SPARE_SECONDS) return [];
		const title = songTitle(show, section.song);
		const takes = `${countWords(given.length)} ${shown(seconds)} s`;
		const gap = `${shown(section.gapSeconds)} s before ${title}`;
		const text =
			spare >= 0
				? `${takes} of the ${gap}: ${shown(spare)} s to spare`
				: `${takes}, more than the ${gap}`;
		return [{ code: 'tight-gap', song: section.song, text }];
	});
}

function countWords(count: number): string {
	return count === 1 ? 'One hand-over takes' : `${count} hand-overs take`;
}

function shown(seconds: number): string {
	return String(tenths(seconds));
}
