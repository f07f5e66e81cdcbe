// The statistics of many nights against values from outside the project, each with its source.

import { expect, test } from 'vitest';
import { chanceBetween, enoughFor } from '../../src/history/break-chance.ts';
import { quantile } from '../../src/history/quantile.ts';

test('two of twenty: the exact interval of Clopper and Pearson (SciPy, beta.ppf)', () => {
	const { low, high } = chanceBetween(2, 20);
	expect(Math.abs(low - 0.01235)).toBeLessThanOrEqual(0.00001);
	expect(Math.abs(high - 0.31698)).toBeLessThanOrEqual(0.00001);
});

test('none of thirty: one-sided 95 % limit 1 - 0.05^(1/30), within a tenth of the rule of three', () => {
	const { low, high } = chanceBetween(0, 30);
	expect(low).toBe(0);
	expect(Math.abs(high - 0.09503)).toBeLessThanOrEqual(0.00001);
	expect(high / (3 / 30)).toBeGreaterThan(0.9);
	expect(high).toBeLessThan(3 / 30);
});

test.each([
	[2, 0.9, 4],
	[2, 0.95, 5],
	[2, 0.99, 6],
	[0.3, 0.95, 1],
	[0.3, 0.99, 2],
])('a mean of %d is covered with %d by %d (SciPy, poisson.ppf)', (mean, chance, enough) => {
	expect(enoughFor(mean, chance)).toBe(enough);
});

test('the Poisson distribution: 0.947347 up to 4 and 0.983436 up to 5 of a mean of 2 (jstat, poisson.cdf)', () => {
	expect([enoughFor(2, 0.947346), enoughFor(2, 0.947348)]).toEqual([4, 5]);
	expect([enoughFor(2, 0.983435), enoughFor(2, 0.983437)]).toEqual([5, 6]);
});

test('quantiles of 1 to 9 by definition 7: quarters at 3, 5 and 7 (R, quantile, from memory)', () => {
	const values = [9, 1, 8, 2, 7, 3, 6, 4, 5];
	expect([0.25, 0.5, 0.75].map((share) => quantile(values, share))).toEqual([3, 5, 7]);
});

test('an interval holds what it was made from, and grows narrower with more nights', () => {
	for (const tried of [1, 2, 5, 20, 200]) {
		for (let happened = 0; happened <= tried; happened += 1) {
			const { low, high } = chanceBetween(happened, tried);
			expect(low).toBeLessThanOrEqual(happened / tried);
			expect(high).toBeGreaterThanOrEqual(happened / tried);
			expect(chanceBetween(happened * 10, tried * 10).high).toBeLessThanOrEqual(high + 1e-9);
		}
	}
});
