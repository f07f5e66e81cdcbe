// Moments as they stand on the screen: by the clock on the wall, and where it is said to be that, by the show's.

import { minutesSeconds } from '../base/duration.ts';
import { dayTimeText } from '../base/show-clock.ts';
import type { ScreenState } from './screen-state.ts';

/** `m:ss` on the show clock, from an hour on `h:mm:ss`; before the first song negative. */
export function showClock({ zeroMs }: Pick<ScreenState, 'zeroMs'>, atMs: number): string {
	return minutesSeconds((atMs - zeroMs) / 1000);
}

/** `20:41` where the show is. */
export function wallClock(
	{ dayOffsetMinutes }: Pick<ScreenState, 'dayOffsetMinutes'>,
	atMs: number,
): string {
	return dayTimeText(atMs, dayOffsetMinutes).slice(0, 5);
}
