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
	if (gapSeconds === null) return seconds.map(() => true);
	const fits = seconds.map(() => false);
	const shortestFirst = seconds.map((_, index) => index);
	shortestFirst.sort((one, other) => (seconds[one] ?? 0) - (seconds[other] ?? 0) || one - other);
	let left = gapSeconds;
	for (const index of shortestFirst) {
		left -= seconds[index] ?? 0;
		if (left < 0) break;
		fits[index] = true;
	}
	return fits;
}

/**
 * Of hand-overs that take so many seconds, those that do not fit, the shortest made first. Sorts them.
 *
 * @example
 * countOverGap([15, 12, 10], 25) // => 1
 * countOverGap([15], 0) // => 1
 */
export function countOverGap(seconds: number[], gapSeconds: number): number {
	for (let at = 1; at < seconds.length; at += 1) {
		const one = seconds[at] ?? 0;
		let place = at;
		for (; place > 0 && (seconds[place - 1] ?? 0) > one; place -= 1) {
			seconds[place] = seconds[place - 1] ?? 0;
		}
		seconds[place] = one;
	}
	let left = gapSeconds;
	for (let made = 0; made < seconds.length; made += 1) {
		left -= seconds[made] ?? 0;
		if (left < 0) return seconds.length - made;
	}
	return 0;
}
