// As many hand-overs as possible fit a gap: against trying every set of them.

import fc from 'fast-check';
import { expect, test } from 'vitest';
import { whichFit } from '../../../src/plan/schedule/fit.ts';

test('no other set with more of them fits the gap', () => {
	fc.assert(
		fc.property(
			fc.array(fc.integer({ min: 0, max: 30 }), { maxLength: 6 }),
			fc.integer({ min: 0, max: 90 }),
			(seconds, gap) => {
				const sizes = Array.from({ length: 2 ** seconds.length }, (_, mask) => {
					const chosen = seconds.filter((_, index) => (mask >> index) % 2 === 1);
					return chosen.reduce((sum, one) => sum + one, 0) <= gap ? chosen.length : 0;
				});
				const fits = whichFit(seconds, gap);
				expect(fits.filter(Boolean)).toHaveLength(Math.max(0, ...sizes));
				const total = seconds.reduce((sum, one, index) => sum + (fits[index] ? one : 0), 0);
				expect(total).toBeLessThanOrEqual(gap);
			},
		),
	);
});

test('before the first song and after an interval there is room for all', () => {
	expect(whichFit([15, 15, 15, 15], null)).toEqual([true, true, true, true]);
});

test('a segue has room for none but taking away', () => {
	expect(whichFit([15, 0], 0)).toEqual([false, true]);
});
