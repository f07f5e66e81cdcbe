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
