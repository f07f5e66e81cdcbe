// When strings are due by the hours that they were in hands.

import { type InstrumentKind, KINDS } from '../tuning/kind.ts';

/** Hours in hands after which strings are due: common practice, no source. A bass keeps its strings far longer. */
const DUE_HOURS = 12;
const DUE_HOURS_BASS = 60;

/**
 * Hours in hands after which the strings of such an instrument are due.
 *
 * @example
 * dueHours('electric-6') // => 12
 * dueHours('bass-4') // => 60
 */
export function dueHours(kind: InstrumentKind): number {
	return KINDS[kind].family === 'bass' ? DUE_HOURS_BASS : DUE_HOURS;
}
