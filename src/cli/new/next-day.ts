// The day of the night that comes after another.

const DAY_MS = 86_400_000;

/** Today, or the day after that night's where that is later; days are written `2026-06-12`, null where none is known. */
export function nextDay(before: string | null, today: string): string {
	if (before === null || before < today) return today;
	const beforeMs = Date.parse(`${before}T00:00:00Z`);
	if (Number.isNaN(beforeMs)) return today;
	return new Date(beforeMs + DAY_MS).toISOString().slice(0, 10);
}
