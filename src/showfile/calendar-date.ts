// Days of the calendar as a show file writes them. Counted here because a date in a file has no time
// zone, and a clock's date always has one.

const DATE = /^(\d{4})-(\d\d)-(\d\d)$/;
const MONTH_DAYS = [31, 28, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31] as const;

/** The day as `2026-06-12` when there is such a day in the Gregorian calendar (ISO 8601 writes it so), else null. */
export function parseDate(text: string): string | null {
	const [written, year, month, day] = DATE.exec(text.trim()) ?? [];
	if (written === undefined) return null;
	const days =
		(MONTH_DAYS[Number(month) - 1] ?? 0) + (month === '02' && isLeap(Number(year)) ? 1 : 0);
	return Number(day) >= 1 && Number(day) <= days ? written : null;
}

function isLeap(year: number): boolean {
	return year % 4 === 0 && (year % 100 !== 0 || year % 400 === 0);
}

/** The day of the week, 0 for Sunday, of a date as `parseDate` gives it; Zeller's congruence. */
export function weekdayOf(date: string): number {
	const [year = 0, month = 1, day = 1] = date.split('-').map(Number);
	const isEarly = month < 3;
	const y = isEarly ? year - 1 : year;
	const m = isEarly ? month + 12 : month;
	const leaps = Math.floor(y / 4) - Math.floor(y / 100) + Math.floor(y / 400);
	return (day + Math.floor((13 * (m + 1)) / 5) + y + leaps + 6) % 7;
}
