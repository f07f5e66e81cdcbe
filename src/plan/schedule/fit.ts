// Which hand-overs fit the gap before a song.

/**
 * For each hand-over, in the order given, whether it fits: as many as possible, shortest first, as
 * their seconds add up to no more than the gap. A gap of null has room for all.
 *
 * @example
 * whichFit([15, 12, 10], 25) // => [false, true, true]
 * whichFit([15, 12, 10], null) // => [true, true, true]
 * whichFit([15], 0) // => [false]
 */
export function whichFit(
	seconds: readonly number[],
	gapSeconds: number | null,
): readonly boolean[] {
	const over = countOverGap([...seconds], gapSeconds ?? Number.POSITIVE_INFINITY);
	const secondsOf = (index: number) => seconds[index] as number;
	const shortestFirst = [...seconds.keys()].sort((one, other) => secondsOf(one) - secondsOf(other));
	const fit = new Set(shortestFirst.slice(0, seconds.length - over));
	return seconds.map((_, index) => fit.has(index));
}

/**
 * Of hand-overs that take so many seconds, those that do not fit, the shortest made first. Sorts them.
 *
 * @example
 * countOverGap([15, 12, 10], 25) // => 1
 * countOverGap([15], 0) // => 1
 */
export function countOverGap(seconds: number[], gapSeconds: number): number {
	seconds.sort((one, other) => one - other);
	let left = gapSeconds;
	for (let made = 0; made < seconds.length; made += 1) {
		left -= seconds[made] as number;
		if (left < 0) return seconds.length - made;
	}
	return 0;
}
