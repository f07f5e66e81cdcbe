// Times that may be hours of the day, told apart from lengths of songs by how they follow one another.

const DAY_SECONDS = 86_400;

/** An act's set is in the evening: an hour from then on is one of the day, where a length would be a strange one. */
export const EVENING_SECONDS = 15 * 3600;

/** Whether these go up all the way, as hours of the day and sums of lengths do and lengths do not; over midnight hours begin anew, once. */
export function goUpAsHours(seconds: readonly number[]): boolean {
	const steps = seconds.slice(1).map((one, index) => one - (seconds[index] ?? 0));
	const falls = steps.filter((step) => step <= 0);
	return falls.length <= 1 && falls.every((step) => step < -DAY_SECONDS / 2);
}
