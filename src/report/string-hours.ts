// How long the strings of an instrument have been in hands, the time that it is in hands now among it.

import type { InstrumentState } from '../../machines/instrument.ts';
import { tenths } from '../base/show-clock.ts';
import type { NightMs } from '../journal/entry.ts';

const MS_AN_HOUR = 3_600_000;

/** Hours to 0.1; null where nobody knows what they had before. */
export function stringHoursAt({ context }: InstrumentState, atMs: NightMs): number | null {
	const { stringHours, inHandsSinceMs } = context;
	if (stringHours === null) return null;
	const since = inHandsSinceMs === null ? 0 : Math.max(0, atMs - inHandsSinceMs);
	return tenths(stringHours + since / MS_AN_HOUR);
}
