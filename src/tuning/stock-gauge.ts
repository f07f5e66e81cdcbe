// Which gauge out of those at hand keeps the feel of a string in another tuning or on another scale.

import type { InstrumentKind } from './kind.ts';
import type { StringMake } from './string-material.ts';
import { stringBody } from './string-material.ts';
import { tensionNewtons } from './string-tension.ts';

/** A string that is to be replaced so that it feels the same. */
export type WantedFeel = {
	readonly kind: InstrumentKind;
	readonly scaleMillimetres: number;
	/** Pitch that the new string is to have. */
	readonly hertz: number;
	/** Tension that it is to have. */
	readonly newtons: number;
	readonly isWound: boolean;
};

export type GaugeChoice = {
	readonly make: StringMake;
	readonly newtons: number;
	/** Tension over the wanted one, less 1: 0.02 is 2 % more. */
	readonly off: number;
};

/** A string within this share of the wanted tension feels the same (common practice, no source). */
export const SAME_FEEL = 0.03;

/**
 * The make at hand whose tension comes nearest; wound for wound and plain for plain unless only another
 * comes within 3 %. Null when there is none at hand.
 *
 * @example
 * gaugeFor({ kind: 'electric-6', scaleMillimetres: 647.7, hertz: 293.66, newtons: 72.5, isWound: false }, [{ millimetres: 0.2794, isWound: false }, { millimetres: 0.3302, isWound: false }]).make.millimetres // => 0.2794
 * gaugeFor({ kind: 'electric-6', scaleMillimetres: 647.7, hertz: 293.66, newtons: 72.5, isWound: false }, []) // => null
 */
export function gaugeFor(wanted: WantedFeel, atHand: readonly StringMake[]): GaugeChoice | null {
	const choices = atHand.map((make): GaugeChoice => {
		const { gramsPerMetre } = stringBody(make, wanted.kind);
		const newtons = tensionNewtons({ ...wanted, gramsPerMetre });
		return { make, newtons, off: newtons / wanted.newtons - 1 };
	});
	const alike = nearest(choices.filter(({ make }) => make.isWound === wanted.isWound));
	const any = nearest(choices);
	if (alike === null || any === null) return any;
	return Math.abs(alike.off) > SAME_FEEL && Math.abs(any.off) <= SAME_FEEL ? any : alike;
}

function nearest(choices: readonly GaugeChoice[]): GaugeChoice | null {
	return choices.reduce<GaugeChoice | null>(
		(best, one) => (best === null || Math.abs(one.off) < Math.abs(best.off) ? one : best),
		null,
	);
}
