// Strings against values from outside. Those "computed" come from a short independent script on the law;
// none from our code.

import { describe, expect, test } from 'vitest';

import { centsBetween, hertz, midiOf } from '../../src/tuning/pitch.ts';
import {
	leastStrength,
	nominalStrength,
	STEEL_EXPANSION,
	steelModulus,
	stringBody,
} from '../../src/tuning/string-material.ts';
import {
	centsAfterWarming,
	centsPerKelvin,
	headroomSemitones,
	hertzUnder,
	inharmonicity,
	kilogramsForce,
	partialSharpness,
	poundsForce,
	stressMegapascals,
	tensionNewtons,
} from '../../src/tuning/string-tension.ts';
import { expectNear } from './near.ts';

const INCH = 25.4;
/** A string half a metre long sounds at as many hertz as its waves run metres a second. */
const HALF_METRE = 500;

function plain(inches: number, scaleInches: number, note: string) {
	const millimetres = inches * INCH;
	const { gramsPerMetre } = stringBody({ millimetres, isWound: false }, 'electric-6');
	const sounding = {
		gramsPerMetre,
		scaleMillimetres: scaleInches * INCH,
		hertz: hertz(midiOf(note), 440),
	};
	const newtons = tensionNewtons(sounding);
	return { gramsPerMetre, newtons, stress: stressMegapascals(newtons, millimetres) };
}

describe('waves on guitar strings: OpenStax University Physics vol. 1, sec. 16.3, example', () => {
	test('speed at 56.40 N, 3.09e-4 kg/m (printed 427.23 m/s, from memory)', () => {
		const found = hertzUnder(56.4, { gramsPerMetre: 0.309, scaleMillimetres: HALF_METRE });
		expectNear(found, 427.23, 0.005);
	});

	test('tension for the same speed at 5.78e-3 kg/m (computed; printed about 1055 N)', () => {
		const speed = hertzUnder(56.4, { gramsPerMetre: 0.309, scaleMillimetres: HALF_METRE });
		const wound = { gramsPerMetre: 5.78, scaleMillimetres: HALF_METRE, hertz: speed };
		expectNear(tensionNewtons(wound), 1054.99, 0.01);
	});
});

test('394 Hz, 0.81 m, 2 g: worked homework solution page, 1005.9 N', () => {
	const string = { gramsPerMetre: 2 / 0.81, scaleMillimetres: 810, hertz: 394 };
	expectNear(tensionNewtons(string), 1005.93, 0.05);
});

test('540 Hz at a tension 21 % higher: exercise of standard physics texts, computed', () => {
	const string = { gramsPerMetre: 1, scaleMillimetres: 650 };
	const newtons = tensionNewtons({ ...string, hertz: 540 });
	expectNear(hertzUnder(newtons * 1.21, string), 594, 0.05);
});

describe('plain steel by the law of stretched strings, 7850 kg/m³ (a spring-material table), computed', () => {
	test('0.010 in at E4 on 25.5 in', () => {
		const { gramsPerMetre, newtons, stress } = plain(0.01, 25.5, 'E4');
		expectNear(gramsPerMetre, 0.397_77, 0.000_005);
		expectNear(newtons, 72.524, 0.005);
		expectNear(poundsForce(newtons), 16.304, 0.0015);
		expectNear(kilogramsForce(newtons), 7.395, 0.001);
		expectNear(stress, 1431.28, 0.05);
	});

	test('0.013 in at B3 on 25.5 in', () => {
		const { newtons, stress } = plain(0.013, 25.5, 'B3');
		expectNear(newtons, 68.788, 0.005);
		expectNear(poundsForce(newtons), 15.464, 0.0015);
		expectNear(stress, 803.28, 0.05);
	});

	test('0.012 in at E4 on 25.4 in', () => {
		const { newtons, stress } = plain(0.012, 25.4, 'E4');
		expectNear(newtons, 103.617, 0.005);
		expectNear(poundsForce(newtons), 23.294, 0.0015);
		expectNear(stress, 1420.08, 0.05);
	});
});

test.each([
	[10, 387],
	[11, 382],
	[13, 373],
	[16, 362],
])(
	'least strength of %i thousandths: ASTM A228 on a wire supplier’s page, %i ksi',
	(gauge, ksi) => {
		expectNear(leastStrength((gauge / 1000) * INCH) / 6.894_757, ksi, 0.5);
	},
);

describe('nominal strength: "Mechanical Engineering Design", table 10-4', () => {
	test('2211 MPa (from memory) at 0.254 mm, computed; above the least, by no more than 1.2 %', () => {
		expectNear(nominalStrength(0.254), 2697, 0.5);
		for (const gauge of [10, 11, 13, 16]) {
			const millimetres = (gauge / 1000) * INCH;
			const above = nominalStrength(millimetres) / leastStrength(millimetres) - 1;
			expect(above).toBeGreaterThanOrEqual(0);
			expect(above).toBeLessThanOrEqual(0.012);
		}
	});

	test('201 kpsi·in^m at 0.105 in: its solutions manual, problem 10-3, 278.7 kpsi', () => {
		// 2211 MPa·mm^m is 201 kpsi·in^m to within its rounding.
		expectNear(nominalStrength(0.105 * INCH) / 6.894_757, 278.7, 0.6);
	});

	test('headroom of 0.010 in at E4, computed', () => {
		const { stress } = plain(0.01, 25.5, 'E4');
		expectNear(stress / nominalStrength(0.254), 0.5307, 0.0005);
		expectNear(headroomSemitones(stress, nominalStrength(0.254)), 5.484, 0.005);
	});
});

test('Young’s modulus of music wire: a table of spring materials, 29.5 and 29.0 million psi', () => {
	expectNear(steelModulus(0.032 * INCH), 203.4, 0.1);
	expectNear(steelModulus(0.033 * INCH), 200, 0.1);
	expectNear(steelModulus(0.063 * INCH), 200, 0.1);
});

test('expansion of music wire: materials database A228; "The Science of String Instruments", ch. 21', () => {
	expectNear(STEEL_EXPANSION, 12e-6, 0.5e-6);
});

describe('warmth: "The Science of String Instruments", eq. (21.1)', () => {
	const { stress } = plain(0.01, 25.5, 'E4');
	const steel = { stress, modulus: 203.4, expansion: 11.5e-6 };

	test('cents a kelvin of 0.010 in at E4, computed (11.5e-6 from memory)', () => {
		expectNear(centsPerKelvin(steel), -1.4147, 0.0005);
		expectNear(centsPerKelvin({ stress, modulus: 200, expansion: 12e-6 }), -1.4515, 0.0005);
	});

	test('ten kelvins up and down, computed', () => {
		expectNear(centsAfterWarming(10, steel) ?? 0, -14.263, 0.0005);
		expectNear(centsAfterWarming(-10, steel) ?? 0, 14.032, 0.0005);
	});

	test('no string of a usual set goes beyond the largest effect quoted, 0.24 % a degree', () => {
		expectNear(centsBetween(1, 1.0024), 4.15, 0.09);
		// The slackest plain string of a usual set is the third.
		const third = plain(0.017, 25.5, 'G3');
		const perKelvin = centsPerKelvin({ stress: third.stress, modulus: steelModulus(0.017 * INCH) });
		expect(Math.abs(perKelvin)).toBeLessThan(4.15 + 0.09);
	});
});

test('stiffness: stiff-string formula of a university’s acoustics page, computed', () => {
	const { newtons } = plain(0.01, 25.5, 'E4');
	const stiff = { modulus: 203.4, millimetres: 0.254, newtons, scaleMillimetres: 25.5 * INCH };
	expectNear(inharmonicity(stiff), 1.3481e-5, 1e-9);
	expectNear(partialSharpness(inharmonicity(stiff), 12), 1.667, 0.001);
});

test('gauge and scale factors: tension ~ d², L², computed', () => {
	const ten = plain(0.01, 25.5, 'E4').newtons;
	expectNear(plain(0.011, 25.5, 'E4').newtons / ten, 1.21, 1e-6);
	expectNear(plain(0.01, 24.75, 'E4').newtons / ten, 0.942_042, 1e-6);
});
