// From what a tuner reads at the 12th fret to how far the saddle goes, in which direction.

export type SaddleMove = {
	/** Never negative. */
	readonly millimetres: number;
	/** `none` when the octave is right. */
	readonly towards: 'bridge' | 'nut' | 'none';
};

/**
 * How far the saddle moves so that the fretted 12th is the octave of the open string, `cents` being how
 * sharp the fretted note reads now (negative: flat). Sharp: back, towards the bridge's end; flat:
 * towards the nut. Exactly length × (1 − q) / (2q − 1) with q = 2^(−cents / 1200).
 *
 * The common mistake is half of this, length / 2 × ln 2 / 1200 a cent: it lengthens only the fretted part
 * and forgets that the whole string grows as well and is tuned again. The move that closes a gap of
 * so many cents is that share of the whole length, not of half of it. Derived here; compensation
 * other than the move is left as it is.
 *
 * @example
 * saddleMove(647.7, 5).millimetres.toFixed(4) // => '1.8788'
 * saddleMove(647.7, 5).towards // => 'bridge'
 * saddleMove(647.7, -3).towards // => 'nut'
 */
export function saddleMove(scaleMillimetres: number, cents: number): SaddleMove {
	const q = 2 ** (-cents / 1200);
	const back = (scaleMillimetres * (1 - q)) / (2 * q - 1);
	const towards = back > 0 ? 'bridge' : back < 0 ? 'nut' : 'none';
	return { millimetres: Math.abs(back), towards };
}

/**
 * Turns of a saddle's screw for a move, when the screw goes this far in one turn.
 *
 * @example
 * screwTurns(1.4, 0.7) // => 2
 */
export function screwTurns(millimetres: number, pitchMillimetres: number): number {
	return millimetres / pitchMillimetres;
}
