// When the first song is meant to start, in milliseconds since 1970.

import type { Show } from '../showfile/show.ts';

const MS_A_MINUTE = 60_000;
const MS_A_DAY = 86_400_000;

/**
 * The planned start as seen from the moment a night is opened. A show opened on another day than its
 * own (a rehearsal, an old file) starts at its hour of the present day; one without a start, now.
 * `offsetMinutes`: what to add to UTC for the time of day where the show is.
 */
export function plannedZero(
	show: Pick<Show, 'date' | 'startMinutes'>,
	openedMs: number,
	offsetMinutes: number,
): number {
	if (show.startMinutes === null) return openedMs;
	const today = dayAt(openedMs, offsetMinutes);
	const own = show.date === null ? today : dayOf(show.date);
	const day = Math.abs(own - today) <= 1 ? own : today;
	return day * MS_A_DAY + (show.startMinutes - offsetMinutes) * MS_A_MINUTE;
}

/** The days since 1970 of a moment, where the show is. */
function dayAt(ms: number, offsetMinutes: number): number {
	return Math.floor((ms + offsetMinutes * MS_A_MINUTE) / MS_A_DAY);
}

function dayOf(date: string): number {
	const [year = 0, month = 1, day = 1] = date.split('-').map(Number);
	return daysSince1970(year, month, day);
}

/** What is odd about the planned start as a night is opened; null where nothing is. */
export type OddStart = { readonly isOtherDay: boolean; readonly isPast: boolean };

/**
 * Whether the show's own day is not near, and whether its hour has gone by already.
 *
 * @example
 * oddStart({ date: '1970-01-01', startMinutes: 600 }, 3_600_000 * 11, 0) // => { isOtherDay: false, isPast: true }
 */
export function oddStart(
	show: Pick<Show, 'date' | 'startMinutes'>,
	openedMs: number,
	offsetMinutes: number,
): OddStart | null {
	const { date, startMinutes } = show;
	const own = date === null ? null : dayOf(date);
	const today = dayAt(openedMs, offsetMinutes);
	const isOtherDay = own !== null && own < today - 1;
	const isPast = startMinutes !== null && plannedZero(show, openedMs, offsetMinutes) < openedMs;
	return isOtherDay || isPast ? { isOtherDay, isPast } : null;
}

/** A planned start once the show's hour has become another. */
export function movedZero(zeroMs: number, from: Show, to: Show): number {
	if (from.startMinutes === null || to.startMinutes === null) return zeroMs;
	return zeroMs + (to.startMinutes - from.startMinutes) * MS_A_MINUTE;
}

/** Days from 1970-01-01 to a date of the Gregorian calendar (the usual civil-date algorithm, from memory). */
function daysSince1970(year: number, month: number, day: number): number {
	const y = month <= 2 ? year - 1 : year;
	const era = Math.floor(y / 400);
	const yearOfEra = y - era * 400;
	const dayOfYear = Math.floor((153 * (month + (month > 2 ? -3 : 9)) + 2) / 5) + day - 1;
	const dayOfEra =
		yearOfEra * 365 + Math.floor(yearOfEra / 4) - Math.floor(yearOfEra / 100) + dayOfYear;
	return era * 146_097 + dayOfEra - 719_468;
}
