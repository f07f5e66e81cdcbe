// Day and time of a moment as a calendar and a clock beside the stage show them.

import { dayTimeText } from '../base/show-clock.ts';
import { localOffsetMinutes } from './local-offset.ts';

/** `2026-06-12` where this machine stands, or by the offset from UTC that is given, in minutes. */
export function localDay(atMs: number, offsetMinutes = localOffsetMinutes(atMs)): string {
	return new Date(atMs + offsetMinutes * 60_000).toISOString().slice(0, 10);
}

/** `19:05`, likewise. */
export function localTime(atMs: number, offsetMinutes = localOffsetMinutes(atMs)): string {
	return dayTimeText(atMs, offsetMinutes).slice(0, 5);
}

/** `2026-06-12 19:05`, likewise. */
export function localMoment(atMs: number, offsetMinutes = localOffsetMinutes(atMs)): string {
	return `${localDay(atMs, offsetMinutes)} ${localTime(atMs, offsetMinutes)}`;
}
