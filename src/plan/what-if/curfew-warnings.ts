// Whether the night ends in time for the house.

import { minutesSeconds } from '../../base/duration.ts';
import type { NightMs } from '../../journal/entry.ts';
import type { Show } from '../../showfile/show.ts';
import type { Section, Warning } from '../plan.ts';

/**
 * Whether the set runs past the curfew, counted from the start that the file gives.
 *
 * @example
 * curfewWarnings({ ...show, startMinutes: 1230, curfewMinutes: 1235 }, plan.sections, 0)[0].text // => 'The set ends 7:00 after the curfew'
 */
export function curfewWarnings(
	{ startMinutes, curfewMinutes }: Show,
	sections: readonly Section[],
	plannedZeroMs: NightMs,
): readonly Warning[] {
	const last = sections.at(-1);
	if (startMinutes === null || curfewMinutes === null || last === undefined) return [];
	const curfewMs = plannedZeroMs + (curfewMinutes - startMinutes) * 60_000;
	const overSeconds = (last.endMs - curfewMs) / 1000;
	if (overSeconds <= 0) return [];
	return [
		{ code: 'short-curfew', text: `The set ends ${minutesSeconds(overSeconds)} after the curfew` },
	];
}
