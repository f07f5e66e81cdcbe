// A whole set of strings on one instrument in one tuning: what each bears, what the neck bears, which
// comes near to breaking, how even the set is.

import type { InstrumentKind } from './kind.ts';
import type { StringBody, StringMake } from './string-material.ts';
import { leastStrength, nominalStrength, steelModulus, stringBody } from './string-material.ts';
import {
	centsPerKelvin,
	headroomSemitones,
	inharmonicity,
	stressMegapascals,
	tensionNewtons,
} from './string-tension.ts';

/** A set on an instrument. */
export type SetOnInstrument = {
	readonly kind: InstrumentKind;
	readonly scaleMillimetres: number;
	/** String 1 first, as sets are labelled. */
	readonly makes: readonly StringMake[];
	/** Of each open string, highest-numbered first, as tunings are. */
	readonly hertz: readonly number[];
};

/** One string as it bears. */
export type BearingString = StringBody & {
	/** 1 is the last of the notes. */
	readonly string: number;
	readonly make: StringMake;
	readonly scaleMillimetres: number;
	readonly hertz: number;
	readonly newtons: number;
	readonly stress: number;
	/** Share of the least tensile strength that is left: 0.15 is 15 %; null for nylon, of which nobody can say. */
	readonly strengthLeft: number | null;
};

/** How far a steel string is from its limits. */
export type StringLimits = {
	/** Semitones to the nominal strength: where a sound string breaks. */
	readonly headroomSemitones: number;
	/** Semitones to the least strength of the tensile table: where a poor one may. */
	readonly headroomLeast: number;
	readonly centsPerKelvin: number;
	readonly inharmonicity: number;
};

/** With less than this share of its strength left a string is near breaking (common practice, no source). */
export const LEAST_STRENGTH_LEFT = 0.15;

/**
 * Every string of a set that has both a make and a pitch, string 1 first.
 *
 * @example
 * bearingStrings({ kind: 'electric-6', scaleMillimetres: 647.7, makes: [{ millimetres: 0.254, isWound: false }], hertz: [329.6276] })[0].newtons.toFixed(2) // => '72.52'
 */
export function bearingStrings(set: SetOnInstrument): readonly BearingString[] {
	const { makes, hertz } = set;
	return makes.flatMap((make, index) => {
		const pitch = hertz[hertz.length - 1 - index];
		return pitch === undefined ? [] : [bear(set, { string: index + 1, make, hertz: pitch })];
	});
}

function bear(
	{ kind, scaleMillimetres }: SetOnInstrument,
	{
		string,
		make,
		hertz,
	}: { readonly string: number; readonly make: StringMake; readonly hertz: number },
): BearingString {
	const body = stringBody(make, kind);
	const { coreMillimetres: millimetres, gramsPerMetre } = body;
	const newtons = tensionNewtons({ gramsPerMetre, scaleMillimetres, hertz });
	const stress = stressMegapascals(newtons, millimetres);
	const strengthLeft = body.material === 'steel' ? 1 - stress / leastStrength(millimetres) : null;
	return { ...body, string, make, scaleMillimetres, hertz, newtons, stress, strengthLeft };
}

/**
 * The limits of a string that bears; null for nylon, of which nobody can say.
 *
 * @example
 * limitsOf(bearingStrings({ kind: 'electric-6', scaleMillimetres: 647.7, makes: [{ millimetres: 0.254, isWound: false }], hertz: [329.6276] })[0]).headroomSemitones.toFixed(2) // => '5.48'
 * limitsOf(bearingStrings({ kind: 'nylon-6', scaleMillimetres: 650, makes: [{ millimetres: 0.71, isWound: false }], hertz: [329.6276] })[0]) // => null
 */
export function limitsOf(one: BearingString): StringLimits | null {
	if (one.material === 'nylon') return null;
	const { coreMillimetres: millimetres, stress, newtons, scaleMillimetres } = one;
	const modulus = steelModulus(millimetres);
	return {
		headroomSemitones: headroomSemitones(stress, nominalStrength(millimetres)),
		headroomLeast: headroomSemitones(stress, leastStrength(millimetres)),
		centsPerKelvin: centsPerKelvin({ stress, modulus }),
		inharmonicity: inharmonicity({ modulus, millimetres, newtons, scaleMillimetres }),
	};
}

/**
 * Newtons on the neck, and how far they can be off where strings are reckoned by a model: as if all were
 * off the same way.
 *
 * @example
 * totalNewtons([]) // => { newtons: 0, uncertainty: 0 }
 */
export function totalNewtons(strings: readonly BearingString[]): {
	readonly newtons: number;
	readonly uncertainty: number;
} {
	const newtons = strings.reduce((sum, one) => sum + one.newtons, 0);
	const off = strings.reduce((sum, one) => sum + one.newtons * one.uncertainty, 0);
	return { newtons, uncertainty: newtons === 0 ? 0 : off / newtons };
}

/**
 * Each string's tension as a share of the set's mean: an even set is all near 1.
 *
 * @example
 * balance([{ newtons: 60 }, { newtons: 100 }]) // => [0.75, 1.25]
 */
export function balance(strings: readonly { readonly newtons: number }[]): readonly number[] {
	const mean = strings.reduce((sum, one) => sum + one.newtons, 0) / strings.length;
	return strings.map(({ newtons }) => newtons / mean);
}
