// How sure one can be of how often strings break, from a few nights; and how many to have at hand for it.

export type Interval = { readonly low: number; readonly high: number };

/** Halvings of an interval of chances: past what numbers hold. */
const HALVINGS = 60;

/**
 * Between which chances the true one lies, 95 % sure: Clopper and Pearson, "The use of confidence or fiducial limits
 * illustrated in the case of the binomial" (1934), each side 2.5 %. With none of so many it is an upper limit alone,
 * and all 5 % are on that side: near to three over so many (the rule of three). The whole of 0 to 1 where nothing was
 * tried.
 *
 * @example
 * chanceBetween(2, 20).high.toFixed(5) // => '0.31698'
 * chanceBetween(0, 30).high.toFixed(5) // => '0.09503'
 */
export function chanceBetween(happened: number, tried: number): Interval {
	if (tried === 0) return { low: 0, high: 1 };
	if (happened === 0) return { low: 0, high: 1 - 0.05 ** (1 / tried) };
	return {
		low: chanceWhere((chance) => 1 - atMost(happened - 1, tried, chance) < 0.025),
		high: happened === tried ? 1 : chanceWhere((chance) => atMost(happened, tried, chance) > 0.025),
	};
}

/** Where a condition that holds for small chances ceases to. */
function chanceWhere(isBelow: (chance: number) => boolean): number {
	let [low, high] = [0, 1];
	for (let step = 0; step < HALVINGS; step += 1) {
		const middle = (low + high) / 2;
		if (isBelow(middle)) low = middle;
		else high = middle;
	}
	return (low + high) / 2;
}

/** The chance of so many or fewer out of `tried` (binomial distribution). */
function atMost(happened: number, tried: number, chance: number): number {
	let sum = 0;
	let ways = 0;
	for (let count = 0; count <= happened; count += 1) {
		if (count > 0) ways += Math.log((tried - count + 1) / count);
		sum += Math.exp(ways + count * Math.log(chance) + (tried - count) * Math.log1p(-chance));
	}
	return Math.min(1, sum);
}

/** No stock that anybody carries is larger. */
const MOST = 10_000;

/**
 * The smallest number that is enough with this chance, where `mean` are used up on average: a quantile of the Poisson
 * distribution, which holds where each break is apart from the others.
 *
 * @example
 * enoughFor(2, 0.95) // => 5
 * enoughFor(0, 0.95) // => 0
 */
export function enoughFor(mean: number, chance: number): number {
	let term = Math.exp(-mean);
	let sum = term;
	let count = 0;
	while (sum < chance && count < MOST) {
		count += 1;
		term *= mean / count;
		sum += term;
	}
	return count;
}
