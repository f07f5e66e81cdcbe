// Where a share of measured values lies: robust against the one that went wrong.

/**
 * The value that a share of all does not exceed, between two values in proportion; `NaN` of none. Hyndman and Fan,
 * "Sample Quantiles in Statistical Packages" (1996), definition 7.
 *
 * @example
 * quantile([3, 1, 2, 40], 0.5) // => 2.5
 * quantile([1, 2, 3, 4, 5], 0.9) // => 4.6
 */
export function quantile(values: readonly number[], share: number): number {
	const sorted = values.toSorted((one, other) => one - other);
	const at = (sorted.length - 1) * share;
	const low = sorted[Math.floor(at)] ?? Number.NaN;
	const high = sorted[Math.ceil(at)] ?? Number.NaN;
	return low + (high - low) * (at - Math.floor(at));
}
