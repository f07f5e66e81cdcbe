// Tunings of several instruments side by side, one byte each, four of them to a whole number, so that
// rows of them are compared four at once. 0 stands for any tuning at all.

/**
 * The byte of this tuning, by its number among its instrument's.
 *
 * @example
 * tuningByte(0) // => 1
 */
export function tuningByte(tuning: number): number {
	return tuning + 1;
}

/**
 * How many whole numbers hold so many tunings.
 *
 * @example
 * wordsFor(5) // => 2
 */
export function wordsFor(tunings: number): number {
	return (tunings + 3) >> 2;
}

/**
 * How many of four tunings are other than these.
 *
 * @example
 * countDiffering(0x01020300, 0x01030301) // => 2
 */
export function countDiffering(one: number, other: number): number {
	return countOnes(onePerByte(one ^ other));
}

/**
 * How many of four tunings are other than those wanted, where any one is wanted.
 *
 * @example
 * countUnmet(0x01020300, 0x01030301) // => 1
 */
export function countUnmet(wanted: number, tunings: number): number {
	return countOnes(onePerByte(wanted ^ tunings) & onePerByte(wanted));
}

/** 1 for each byte that is not 0; what is shifted in from the next byte stays above the lowest bit. */
function onePerByte(four: number): number {
	let folded = four | (four >>> 4);
	folded |= folded >>> 2;
	return (folded | (folded >>> 1)) & 0x01010101;
}

function countOnes(ones: number): number {
	return Math.imul(ones, 0x01010101) >>> 24;
}
