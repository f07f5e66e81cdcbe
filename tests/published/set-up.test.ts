// Frets, saddles and wood against values from outside; "computed" by a short independent script.

import { describe, expect, test } from 'vitest';

import { fretConstant, fretError, fretFromNut } from '../../src/tuning/fret-places.ts';
import { equilibriumMoisture, humidityOf } from '../../src/tuning/humidity.ts';
import { centsBetween } from '../../src/tuning/pitch.ts';
import { saddleMove } from '../../src/tuning/saddle.ts';
import { humidityWords } from '../../src/words/warmth.ts';
import { expectNear } from './near.ts';

test('the fret constant: 17.817 in a lutherie text and a maths lesson; digits computed', () => {
	expectNear(fretConstant(), 17.817_154, 5e-7);
});

describe('frets from the nut, L (1 − 2^(−n/12)), computed', () => {
	test.each([
		[25.5, [1.4312, 4.0571, 6.3966, 8.4808, 12.75, 19.125]],
		[34, [1.9083, 5.4095, 8.5288, 11.3077, 17, 25.5]],
	])('%f in', (scale, wanted) => {
		for (const [index, fret] of [1, 3, 5, 7, 12, 24].entries()) {
			expectNear(fretFromNut(scale, fret), wanted[index] ?? Number.NaN, 0.0001);
		}
	});
});

test('fret to bridge on 25 in: fret table of a personal page', () => {
	for (const [fret, wanted] of [
		[1, 23.597],
		[5, 18.729],
		[7, 16.685],
		[10, 14.031],
	] as const) {
		expectNear(25 - fretFromNut(25, fret), wanted, 0.0005);
	}
});

/** The 12th fret by a rule that goes on by what is left over a divisor. */
function twelfthByRule(scale: number, divisor: number): number {
	let left = scale;
	for (let fret = 1; fret <= 12; fret += 1) left -= left / divisor;
	return scale - left;
}

test('the rule of 17.817 (lutherie text) is right at the 12th fret, computed', () => {
	const fromNut = twelfthByRule(25.5, 17.817);
	expectNear(fromNut, 12.7501, 0.0001);
	expectNear(fretError({ scale: 25.5, fret: 12, fromNut }), 0.011, 0.002);
});

test('the rule of 18 (a maths lesson) leaves the octave flat, computed', () => {
	const fromNut = twelfthByRule(25.5, 18);
	expectNear(fromNut, 12.6573, 0.0001);
	expectNear(fretError({ scale: 25.5, fret: 12, fromNut }), -12.545, 0.001);
});

describe('saddle moves, derived and computed apart', () => {
	test.each([
		[647.7, 5, 1.8788],
		[647.7, 1, 0.3745],
		[863.6, 6, 3.0086],
		[863.6, 2, 0.9994],
	])('%f mm, %f cents sharp: back %f mm', (scale, cents, wanted) => {
		const { millimetres, towards } = saddleMove(scale, cents);
		expectNear(millimetres, wanted, 0.0005);
		expect(towards).toBe('bridge');
	});

	test('linear to 1 %, and twice the common mistake', () => {
		const linear = (647.7 * 5 * Math.LN2) / 1200;
		expectNear(linear, 1.8706, 0.0005);
		expectNear(saddleMove(647.7, 5).millimetres / linear, 1, 0.01);
		expectNear(saddleMove(647.7, 5).millimetres / 0.935, 2, 0.02);
	});

	test('after the move the fretted 12th is the octave of the string, tuned again', () => {
		// Pressed down the string sounds sharper than its length by the same share, before and after.
		const share = 2 ** (5 / 1200);
		const back = saddleMove(647.7, 5).millimetres;
		const octave = (share * (647.7 + back)) / (647.7 / 2 + back);
		expectNear(centsBetween(2, octave), 0, 1e-9);
	});
});

describe('moisture of wood: Wood Handbook sorption equation', () => {
	test('140 °F and 55 %: 8.4 on a reference page (8.378 computed, coefficients from memory)', () => {
		expectNear(equilibriumMoisture(60, 55), 8.4, 0.05);
	});

	test.each([
		[30, 6.17],
		[50, 9.24],
		[65, 11.96],
	])(
		'21.1 °C and %i %%, computed; ±0.9 to reality by an abstract in Forest Products Journal',
		(humidity, wanted) => {
			expectNear(equilibriumMoisture(21.1, humidity), wanted, 0.01);
		},
	);

	test('no cents from humidity: wood moves with hysteresis (government science Q&A)', () => {
		for (const percent of [10, 30, 60, 95]) {
			const is = humidityOf(percent);
			if (is === 'fine') throw new Error(`${percent} % is to be damp or dry`);
			const said = humidityWords(is, percent);
			expect(said).not.toMatch(/\d\s*(cents?|c)\b/);
			expect(said).toContain('No cents are given');
		}
	});
});
