// What a string bears at a pitch: tension, stress, how far it is from breaking, how stiff it is and how
// far warmth can move it. The law of stretched strings and those of a wire, nothing of any instrument.

import { STEEL_EXPANSION } from './string-material.ts';

/** A string that sounds: mass, the length between nut and saddle, pitch. */
export type SoundingString = {
	readonly gramsPerMetre: number;
	readonly scaleMillimetres: number;
	readonly hertz: number;
};

/**
 * Tension in newtons: mass a length × (2 × length × pitch)², the law of stretched strings.
 *
 * @example
 * tensionNewtons({ gramsPerMetre: 0.39777, scaleMillimetres: 647.7, hertz: 329.6276 }).toFixed(2) // => '72.52'
 */
export function tensionNewtons({ gramsPerMetre, scaleMillimetres, hertz }: SoundingString): number {
	return (gramsPerMetre / 1000) * ((2 * scaleMillimetres * hertz) / 1000) ** 2;
}

/**
 * Pitch in hertz of a string under this tension: the same law the other way round.
 *
 * @example
 * hertzUnder(72.524, { gramsPerMetre: 0.39777, scaleMillimetres: 647.7 }).toFixed(1) // => '329.6'
 */
export function hertzUnder(
	newtons: number,
	{ gramsPerMetre, scaleMillimetres }: Omit<SoundingString, 'hertz'>,
): number {
	return Math.sqrt(newtons / (gramsPerMetre / 1000)) / ((2 * scaleMillimetres) / 1000);
}

/**
 * Pounds-force of newtons: 0.45359237 kg (exact since 1959) × 9.80665 m/s² (exact, CGPM 1901).
 *
 * @example
 * poundsForce(4.4482216152605) // => 1
 */
export function poundsForce(newtons: number): number {
	return newtons / 4.4482216152605;
}

/**
 * Kilograms-force of newtons, by standard gravity, 9.80665 m/s² (exact, CGPM 1901).
 *
 * @example
 * kilogramsForce(9.80665) // => 1
 */
export function kilogramsForce(newtons: number): number {
	return newtons / 9.80665;
}

/**
 * Stress in MPa in round wire of this diameter.
 *
 * @example
 * stressMegapascals(72.524, 0.254).toFixed(0) // => '1431'
 */
export function stressMegapascals(newtons: number, millimetres: number): number {
	return newtons / ((Math.PI * millimetres ** 2) / 4);
}

/**
 * Semitones that the pitch can go up until the stress is the strength: stress grows with the square of
 * the pitch. Negative when it is past it.
 *
 * @example
 * headroomSemitones(1431.28, 2697).toFixed(2) // => '5.48'
 */
export function headroomSemitones(stress: number, strength: number): number {
	return 6 * Math.log2(strength / stress);
}

/** A steel string under stress, its stiffness in GPa. */
export type StressedSteel = {
	readonly stress: number;
	readonly modulus: number;
	/** 1/K; that of music wire when left out. */
	readonly expansion?: number;
};

/**
 * Cents for each kelvin that the string alone warms, its ends staying where they are: −(600 / ln 2) ×
 * expansion × modulus / stress ("The Science of String Instruments", eq. 21.1). Wood and neck move
 * too, so this is a ceiling.
 *
 * @example
 * centsPerKelvin({ stress: 1431.28, modulus: 203.4, expansion: 11.5e-6 }).toFixed(4) // => '-1.4147'
 */
export function centsPerKelvin({
	stress,
	modulus,
	expansion = STEEL_EXPANSION,
}: StressedSteel): number {
	return ((-600 / Math.LN2) * expansion * modulus * 1000) / stress;
}

/**
 * Cents after so many kelvins, exactly: tension changes by expansion × modulus × kelvins, pitch by its
 * root. Null when the string would be slack.
 *
 * @example
 * centsAfterWarming(10, { stress: 1431.28, modulus: 203.4, expansion: 11.5e-6 }).toFixed(3) // => '-14.263'
 */
export function centsAfterWarming(kelvins: number, steel: StressedSteel): number | null {
	const { stress, modulus, expansion = STEEL_EXPANSION } = steel;
	const left = 1 - (expansion * modulus * 1000 * kelvins) / stress;
	return left > 0 ? 600 * Math.log2(left) : null;
}

/**
 * How stiffness spreads the partials: B in f_n = n f √(1 + B n²), π³ × modulus × d⁴ / (64 × tension ×
 * length²), by the stiff-string formula of a university's acoustics page. Modulus in GPa.
 *
 * @example
 * inharmonicity({ modulus: 203.4, millimetres: 0.254, newtons: 72.524, scaleMillimetres: 647.7 }).toExponential(3) // => '1.348e-5'
 */
export function inharmonicity(string: {
	readonly modulus: number;
	/** Of the core. */
	readonly millimetres: number;
	readonly newtons: number;
	readonly scaleMillimetres: number;
}): number {
	const { modulus, millimetres, newtons, scaleMillimetres } = string;
	return (
		(Math.PI ** 3 * modulus * 1000 * millimetres ** 4) / (64 * newtons * scaleMillimetres ** 2)
	);
}

/**
 * Cents by which a partial is sharp of its place above the first partial as it sounds.
 *
 * @example
 * partialSharpness(1.3481e-5, 12).toFixed(3) // => '1.667'
 */
export function partialSharpness(inharmonicity: number, partial: number): number {
	return 600 * Math.log2((1 + inharmonicity * partial ** 2) / (1 + inharmonicity));
}
