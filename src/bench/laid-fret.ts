// A fret as it was laid, and how far it is out of its place.

import { fretError, scaleFor } from '../tuning/fret-places.ts';
import { to4 } from './figures.ts';

/** Frets of a long neck. */
export const FRETS = 24;

export type LaidFret = {
	readonly fret: number;
	readonly fromNutMm: number;
	/** Sharp of its place; negative: flat. */
	readonly cents: number;
	/** The scale for which it would be right. */
	readonly scaleMm: number;
};

/** How far a fret is out that was laid `fromNut` mm from the nut of a scale, in mm too. */
export function laidFret(laid: {
	readonly scale: number;
	readonly fret: number;
	readonly fromNut: number;
}): LaidFret {
	return {
		fret: laid.fret,
		fromNutMm: to4(laid.fromNut),
		cents: to4(fretError(laid)),
		scaleMm: to4(scaleFor(laid.fret, laid.fromNut)),
	};
}
