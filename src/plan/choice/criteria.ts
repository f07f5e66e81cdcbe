// What makes one choice better than another, without the clock: counts in their order, and the same
// packed into one whole number, so that the arithmetic that is done hundreds of thousands of times
// compares numbers and not lists.

/** Places of the counts in a list of them, weightiest first. */
export const MISSING = 0;
export const SUBSTITUTED = 1;
export const OVER_GAP = 2;
/** Slots that are other than the plan before said. */
export const CHANGED = 3;
export const BACKUP = 4;
export const HAND_OVERS = 5;
export const RETUNINGS = 6;
export const PREFERENCE = 7;

/** One count for each place. */
export type Counts = readonly number[];

const PLACES = 8;

export type Weights = {
	/** What one of each place adds to the packed number. */
	readonly of: readonly number[];
	/** Whether every place has its room; else the last ones were left out to stay below 2^53. */
	readonly isWhole: boolean;
};

/**
 * Weights under which the packed numbers order as the counts do, place by place, as long as no count is
 * above `most`. Where that does not fit below 2^53, the last places weigh nothing.
 *
 * @example
 * weightsFor([1, 0, 1, 0, 0, 9, 1, 20]).of // => [840, 840, 420, 420, 420, 42, 21, 1]
 * weightsFor([1e6, 1e6, 1e6, 1e6, 1, 1, 1, 1]).isWhole // => false
 */
export function weightsFor(most: Counts): Weights {
	for (let last = PLACES - 1; ; last -= 1) {
		const of = most.map(() => 0);
		let weight = 1;
		for (let place = last; place >= 0; place -= 1) {
			of[place] = weight;
			weight *= (most[place] ?? 0) + 1;
		}
		if (weight <= Number.MAX_SAFE_INTEGER || last === 0) {
			return { of, isWhole: last === PREFERENCE };
		}
	}
}

/**
 * The counts that a packed number came from.
 *
 * @example
 * unpacked(1281, { of: [840, 840, 420, 420, 420, 42, 21, 1], isWhole: true }) // => [1, 0, 1, 0, 0, 0, 1, 0]
 */
export function unpacked(packed: number, { of }: Weights): Counts {
	if (!Number.isSafeInteger(packed)) throw new Error(`a cost of ${packed} is not a whole number`);
	let left = packed;
	return of.map((weight) => {
		if (weight === 0) return 0;
		const count = Math.floor(left / weight);
		left -= count * weight;
		return count;
	});
}

/**
 * Below 0 where the first is better, above where the second is, 0 where they are the same.
 *
 * @example
 * compared([0, 1, 5], [0, 2, 0]) // => -1
 */
export function compared(one: Counts, other: Counts): number {
	const place = one.findIndex((count, at) => count !== other[at]);
	return place < 0 ? 0 : (one[place] ?? 0) - (other[place] ?? 0);
}

/**
 * No count at all.
 *
 * @example
 * noCounts().length // => 8
 */
export function noCounts(): number[] {
	return new Array<number>(PLACES).fill(0);
}
