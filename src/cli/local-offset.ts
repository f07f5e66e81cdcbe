// The time zone of the machine, which stands beside the stage and so is the show's.

/** Minutes to add to UTC for local time at a moment since 1970. */
export function localOffsetMinutes(atMs: number): number {
	// Never negative zero, which JSON would hide and tests would not.
	return 0 - new Date(atMs).getTimezoneOffset();
}
