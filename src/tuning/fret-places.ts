// Where frets belong on any scale, so that one laid wrong or a bridge in a wrong place is found.

/** Frets on an octave of an equal-tempered neck. */
const OCTAVE = 12;

/**
 * Distance of a fret from the nut, in the unit of the scale: scale × (1 − 2^(−fret / 12)).
 *
 * @example
 * fretFromNut(25.5, 12) // => 12.75
 */
export function fretFromNut(scale: number, fret: number): number {
	return scale * (1 - 2 ** (-fret / OCTAVE));
}

/**
 * The constant of luthiers' tables, 1 / (1 − 2^(−1/12)): each fret goes on by what is left divided by it.
 *
 * @example
 * fretConstant().toFixed(6) // => '17.817154'
 */
export function fretConstant(): number {
	return 1 / (1 - 2 ** (-1 / OCTAVE));
}

/**
 * Cents by which a fret at this distance from the nut is sharp (negative: flat) of its place.
 *
 * @example
 * fretError({ scale: 25.5, fret: 12, fromNut: 12.75 }) // => 0
 * fretError({ scale: 25.5, fret: 12, fromNut: 12.6573 }).toFixed(1) // => '-12.5'
 */
export function fretError(laid: {
	readonly scale: number;
	readonly fret: number;
	readonly fromNut: number;
}): number {
	return 1200 * Math.log2(laid.scale / (laid.scale - laid.fromNut)) - laid.fret * 100;
}

/**
 * The scale for which a fret at this distance from the nut is right: twice the 12th fret's, where a bridge
 * without compensation belongs.
 *
 * @example
 * scaleFor(12, 323.85) // => 647.7
 */
export function scaleFor(fret: number, fromNut: number): number {
	return fromNut / (1 - 2 ** (-fret / OCTAVE));
}
