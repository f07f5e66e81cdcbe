// A moment of a night as a report says it.

import { tenths } from '../base/show-clock.ts';
import type { NightMs } from '../journal/entry.ts';

/** When something was: on the show clock (null before a first song gave it a zero) and by the clock on the wall. */
export type ReportTime = {
	readonly mark: string | null;
	readonly clock: string;
	/** On the night's clock. */
	readonly atMs: NightMs;
};

/** The clock on the wall, without its seconds. */
export function hoursMinutes({ clock }: ReportTime): string {
	return clock.replace(/^(\d+:\d\d):\d\d$/, '$1');
}

/** So many milliseconds of the night's clock in seconds, to 0.1. */
export function secondsOf(ms: number): number {
	return tenths(ms / 1000);
}
