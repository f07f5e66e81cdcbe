// What a plan costs, in the order in which plans are compared.

import {
	BACKUP,
	type Counts,
	HAND_OVERS,
	MISSING,
	OVER_GAP,
	PREFERENCE,
	RETUNINGS,
	SUBSTITUTED,
} from '../choice/criteria.ts';
import type { Cost } from '../plan.ts';

/**
 * The counts of a choice, with the seconds by which its latest work is late.
 *
 * @example
 * costOf([0, 0, 0, 0, 0, 2, 0, 0], 0) // => { missing: 0, substituted: 0, overGap: 0, lateness: 0, backup: 0, handOvers: 2, retunings: 0, preference: 0 }
 */
export function costOf(counts: Counts, latenessSeconds: number): Cost {
	return {
		missing: counts[MISSING] ?? 0,
		substituted: counts[SUBSTITUTED] ?? 0,
		overGap: counts[OVER_GAP] ?? 0,
		lateness: latenessSeconds,
		backup: counts[BACKUP] ?? 0,
		handOvers: counts[HAND_OVERS] ?? 0,
		retunings: counts[RETUNINGS] ?? 0,
		preference: counts[PREFERENCE] ?? 0,
	};
}
