// Whether the night ends in time for the house.

import { tenths } from '../../base/show-clock.ts';
import type { NightMs } from '../../journal/entry.ts';
import type { Show } from '../../showfile/show.ts';
import type { Section, Warning } from '../plan.ts';

export type ShortCurfew = Extract<Warning, { code: 'short-curfew' }>;

/**
 * Whether the set runs past the curfew, counted from the start that the file gives.
 *
 * @example
 * curfewWarnings({ ...show, startMinutes: 1230, curfewMinutes: 1235 }, plan.sections, 0)[0] // => { code: 'short-curfew', overSeconds: 420 }
 */
export function curfewWarnings(
	{ startMinutes, curfewMinutes }: Show,
	sections: readonly Section[],
	plannedZeroMs: NightMs,
): readonly ShortCurfew[] {
	const last = sections.at(-1);
	if (startMinutes === null || curfewMinutes === null || last === undefined) return [];
	const curfewMs = plannedZeroMs + (curfewMinutes - startMinutes) * 60_000;
	const overSeconds = tenths((last.endMs - curfewMs) / 1000);
	if (overSeconds <= 0) return [];
	return [{ code: 'short-curfew', overSeconds }];
}
