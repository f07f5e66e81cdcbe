// What a change of temperature does to instruments in tune, as a range and never as a fact, and which to touch
// first.

import { steelModulus } from './string-material.ts';
import type { BearingString } from './string-set.ts';
import { centsAfterWarming } from './string-tension.ts';

/**
 * What is seen of the figure for a string that warms alone. Wood along its grain grows by 3 to 5 millionths a
 * kelvin against the steel's 12 (from memory), so with the neck as warm two thirds are left; a neck that is
 * pulled less straightens, and takes back up to half of that (common practice, no source).
 */
const SEEN = [1 / 3, 2 / 3] as const;

/**
 * The realistic range of cents for what a string alone would go, the lesser first, in whole cents.
 *
 * @example
 * seenCents(-34) // => [-11, -23]
 */
export function seenCents(cents: number): readonly [number, number] {
	const [least, most] = SEEN;
	return [Math.round(cents * least), Math.round(cents * most)];
}

export type WarmedString = {
	readonly string: number;
	/** The furthest it can have gone if only the string had warmed; null for nylon. */
	readonly cents: number | null;
};

/**
 * The furthest that each string can have gone for so many kelvins warmer (colder when negative).
 *
 * @example
 * warmedStrings([{ string: 1, material: 'steel', stress: 1431.28, coreMillimetres: 0.254 }], 8)[0].cents.toFixed(1) // => '-11.9'
 */
export function warmedStrings(
	strings: readonly Pick<BearingString, 'string' | 'material' | 'stress' | 'coreMillimetres'>[],
	kelvins: number,
): readonly WarmedString[] {
	return strings.map(({ string, material, stress, coreMillimetres }) => {
		const steel = { stress, modulus: steelModulus(coreMillimetres) };
		return { string, cents: material === 'nylon' ? null : centsAfterWarming(kelvins, steel) };
	});
}

/**
 * The furthest of these, by size; null when nothing can be said of any.
 *
 * @example
 * furthest([{ string: 1, cents: -11 }, { string: 2, cents: -20 }, { string: 3, cents: null }]) // => { string: 2, cents: -20 }
 */
export function furthest(
	strings: readonly WarmedString[],
): { readonly string: number; readonly cents: number } | null {
	let found: { readonly string: number; readonly cents: number } | null = null;
	for (const { string, cents } of strings) {
		if (cents === null || (found && Math.abs(cents) <= Math.abs(found.cents))) continue;
		found = { string, cents };
	}
	return found;
}
