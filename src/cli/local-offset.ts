// The time zone of the machine, which stands beside the stage and so is the show's.

/** Minutes to add to UTC for local time at a moment since 1970. */
export function localOffsetMinutes(atMs: number): number {
	// Never negative zero, which JSON would hide and tests would not.
	return 0 - new Date(atMs).getTimezoneOffset();
}

/** The day at this moment where this laptop is, `2026-06-12`. */
export function localDay(atMs: number): string {
	return new Date(atMs + localOffsetMinutes(atMs) * 60_000).toISOString().slice(0, 10);
}
