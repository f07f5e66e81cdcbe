// What one player has in hands, as the plan sees it, and when a stint goes on.

import type { Section } from '../plan.ts';
import type { OpenWithCapo } from './same-pitches.ts';
import { samePitches } from './same-pitches.ts';

export type Hand = OpenWithCapo & {
	/** An instrument's id. */
	readonly instrument: string;
};

/** In a gap shorter than this nobody moves a capo: common practice, no source. */
const CAPO_GAP_SECONDS = 10;

/**
 * Whether what is in hands simply stays there: the same instrument in the same open tuning, and with
 * the same capo unless the gap leaves the player time to move it.
 *
 * @example
 * goesOn({ ...held, capo: 0 }, { ...held, capo: 2 }, { ...section, gapSeconds: 15 }) // => true
 * goesOn({ ...held, capo: 0 }, { ...held, capo: 2 }, { ...section, gapSeconds: 5 }) // => false
 */
export function goesOn(before: Hand, after: Hand, section: Section): boolean {
	return (
		before.instrument === after.instrument &&
		samePitches(before.tuning, after.tuning) &&
		(before.capo === after.capo || hasTimeForCapo(section))
	);
}

/**
 * Whether a player has time to move a capo just before this section.
 *
 * @example
 * hasTimeForCapo({ ...section, gapSeconds: 5 }) // => false
 */
export function hasTimeForCapo({ point, gapSeconds, hasBegun }: Section): boolean {
	if (hasBegun) return true;
	return point === 0 && (gapSeconds === null || gapSeconds >= CAPO_GAP_SECONDS);
}
