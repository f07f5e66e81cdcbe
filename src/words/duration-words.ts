// Lengths of time as narrow places on the screen have room for: from an hour on seconds say nothing.

import { minutesSeconds } from '../base/duration.ts';

/** `m:ss`, from an hour on `7 h 16`, from ten hours on `17 h`; `-` before what is past. */
export function durationWords(seconds: number): string {
	const minutes = Math.floor(Math.abs(seconds) / 60);
	if (!Number.isFinite(seconds) || minutes < 60) return minutesSeconds(seconds);
	const hours = Math.floor(minutes / 60);
	const rest = hours < 10 ? ` ${String(minutes % 60).padStart(2, '0')}` : '';
	return `${seconds < 0 ? '-' : ''}${hours} h${rest}`;
}
