// Marks on the show clock (zero is the first song's start, before it they are negative) and times
// of day, as text and back. Apart from durations because these are points in time, not lengths.

const MARK = /^(-?)(?:(\d{1,3}):(?=\d\d:))?(\d{1,4}):([0-5]\d)(?:\.(\d{1,3}))?$/;
const DAY_TIME = /^([01]?\d|2[0-3]):([0-5]\d)$/;
const DAY_SECONDS = 86_400;

/** `hh:mm:ss` of a mark in milliseconds, cut to the second towards zero; `-00:05:00` before zero. */
export function markText(ms: number): string {
	const seconds = Math.trunc(Math.abs(ms) / 1000);
	return `${ms < 0 && seconds > 0 ? '-' : ''}${clockText(seconds)}`;
}

/**
 * Milliseconds on the show clock, from `mm:ss` or `h:mm:ss`, with `.mmm` after and `-` before it
 * where wanted; null for anything else. Minutes without hours may go past 59.
 */
export function parseMark(text: string): number | null {
	const found = MARK.exec(text.trim());
	if (!found) return null;
	const [, sign, hours, minutes, seconds, fraction] = found;
	if (hours !== undefined && Number(minutes) > 59) return null;
	const whole = Number(hours ?? 0) * 3600 + Number(minutes) * 60 + Number(seconds);
	const ms = whole * 1000 + Number((fraction ?? '').padEnd(3, '0'));
	return sign === '-' && ms > 0 ? -ms : ms;
}

/**
 * `hh:mm:ss` of the day at a moment in milliseconds since 1970, where local time is
 * `offsetMinutes` ahead of UTC (negative when behind).
 */
export function dayTimeText(epochMs: number, offsetMinutes: number): string {
	const seconds = Math.floor(epochMs / 1000) + offsetMinutes * 60;
	return clockText(((seconds % DAY_SECONDS) + DAY_SECONDS) % DAY_SECONDS);
}

/** Minutes since midnight, 0 to 1439, from `20:30`; null for anything else. */
export function parseDayTime(text: string): number | null {
	const found = DAY_TIME.exec(text.trim());
	return found ? Number(found[1]) * 60 + Number(found[2]) : null;
}

/** The seconds to the nearest tenth, never negative zero: how seconds stand in JSON. */
export function tenths(seconds: number): number {
	return Math.round(seconds * 10) / 10 + 0;
}

function clockText(seconds: number): string {
	return [Math.floor(seconds / 3600), Math.floor(seconds / 60) % 60, Math.floor(seconds) % 60]
		.map((part) => String(part).padStart(2, '0'))
		.join(':');
}
