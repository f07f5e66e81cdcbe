// Bands of an equaliser against values from outside; "computed" by a short independent script.

import { describe, expect, test } from 'vitest';

import { notchBand, peakingBand, thirdOctaveAt } from '../../src/tuning/equaliser.ts';
import { expectNear } from './near.ts';

describe('third-octave bands: ISO 266, R10 series, table in a public guideline; digits computed', () => {
	test.each([25, 31.5, 40, 50, 63, 80, 100, 125, 160, 200, 250])(
		'%f Hz is a band of its own',
		(hz) => {
			expect(thirdOctaveAt(hz)?.nominal).toBe(hz);
		},
	);

	test('exact middles and edges', () => {
		expectNear(thirdOctaveAt(125)?.exact ?? 0, 125.893, 0.001);
		expectNear(thirdOctaveAt(200)?.exact ?? 0, 199.526, 0.001);
		expectNear(thirdOctaveAt(125)?.low ?? 0, 112.202, 0.001);
		expectNear(thirdOctaveAt(125)?.high ?? 0, 141.254, 0.001);
	});
});

describe('parametric bands: W3C Note Audio EQ Cookbook, 2021-06-08; digits computed', () => {
	test('+6 dB at 1 kHz, Q 1, 48 kHz', () => {
		const { b, a } = peakingBand({ hertz: 1000, q: 1, sampleRate: 48_000 }, 6);
		const wanted = [1.043_953_087, -1.895_320_724, 0.867_722_285, -1.895_320_724, 0.911_675_372];
		for (const [index, value] of [...b, ...a].entries()) {
			expectNear(value, wanted[index] ?? Number.NaN, 1e-9);
		}
		expectNear(decibelsAt({ b, a }, 1000), 6, 0.001);
	});

	test('a notch at 160 Hz, Q 8, 48 kHz', () => {
		const { b, a } = notchBand({ hertz: 160, q: 8, sampleRate: 48_000 });
		const wanted = [0.998_692_81, -1.996_947_56, 0.998_692_81, -1.996_947_56, 0.997_385_619];
		for (const [index, value] of [...b, ...a].entries()) {
			expectNear(value, wanted[index] ?? Number.NaN, 1e-9);
		}
		expect(decibelsAt({ b, a }, 160)).toBeLessThan(-200);
	});
});

/** The gain of a filter of second order at a frequency, from its definition. */
function decibelsAt(
	{ b, a }: { readonly b: readonly number[]; readonly a: readonly number[] },
	hertz: number,
): number {
	const turn = (2 * Math.PI * hertz) / 48_000;
	const size = (terms: readonly number[]) => {
		const real = terms.reduce((sum, term, index) => sum + term * Math.cos(index * turn), 0);
		const imaginary = terms.reduce((sum, term, index) => sum - term * Math.sin(index * turn), 0);
		return Math.hypot(real, imaginary);
	};
	return 20 * Math.log10(size(b) / size([1, ...a]));
}
