// Moments as they stand on the screen: marks of the show clock, which stand still once written.

import { minutesSeconds } from '../base/duration.ts';
import type { ScreenState } from './screen-state.ts';

/** `m:ss` on the show clock, from an hour on `h:mm:ss`; before the first song negative. */
export function showClock({ zeroMs }: Pick<ScreenState, 'zeroMs'>, atMs: number): string {
	return minutesSeconds((atMs - zeroMs) / 1000);
}
