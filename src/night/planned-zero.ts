// When the first song is meant to start, in milliseconds since 1970.

import type { Show } from '../showfile/show.ts';

const MS_A_MINUTE = 60_000;
const MS_A_DAY = 86_400_000;

/**
 * The planned start as seen from the moment a night is opened. A show opened on another day than its
 * own (a rehearsal, an old file) starts at its hour of the present day; one without a start, now.
 * `offsetMinutes`: what to add to UTC for the time of day where the show is.
 */
export function plannedZero(show: Show, openedMs: number, offsetMinutes: number): number {
	if (show.startMinutes === null) return openedMs;
	const localMs = openedMs + offsetMinutes * MS_A_MINUTE;
	const today = Math.floor(localMs / MS_A_DAY) * MS_A_DAY;
	const [year = 0, month = 1, day = 1] = (show.date ?? '').split('-').map(Number);
	const own = show.date === null ? today : daysSince1970(year, month, day) * MS_A_DAY;
	const isNear = Math.abs(own - today) <= MS_A_DAY;
	return (isNear ? own : today) + show.startMinutes * MS_A_MINUTE - offsetMinutes * MS_A_MINUTE;
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
