// A feedback notch for an instrument's channel at the desk: which third-octave band a frequency falls into
// and what a parametric band does there. For the note that travels with an acoustic instrument.

/** Third-octave bands as printed on equalisers, from 25 Hz, and how many steps under or over 1 kHz each is (ISO 266, R10 series). */
const NOMINAL = [
	25, 31.5, 40, 50, 63, 80, 100, 125, 160, 200, 250, 315, 400, 500, 630, 800, 1000, 1250, 1600,
	2000, 2500, 3150, 4000, 5000, 6300, 8000, 10_000, 12_500, 16_000, 20_000,
] as const;
/** Steps of the first of them. */
const FIRST_STEP = -16;

export type ThirdOctave = {
	/** As printed on the equaliser. */
	readonly nominal: number;
	/** Exact middle and edges, Hz. */
	readonly exact: number;
	readonly low: number;
	readonly high: number;
};

/**
 * The third-octave band that a frequency falls into: 1000 × 10^(n / 10) Hz (ISO 266). Null outside what
 * equalisers have.
 *
 * @example
 * thirdOctaveAt(110).nominal // => 100
 * thirdOctaveAt(5) // => null
 */
export function thirdOctaveAt(hertz: number): ThirdOctave | null {
	const step = Math.round(10 * Math.log10(hertz / 1000));
	const nominal = NOMINAL[step - FIRST_STEP];
	if (nominal === undefined) return null;
	const at = (steps: number) => 1000 * 10 ** (steps / 10);
	return { nominal, exact: at(step), low: at(step - 0.5), high: at(step + 0.5) };
}

/** A parametric band. */
export type Band = { readonly hertz: number; readonly q: number; readonly sampleRate: number };

/** b0 b1 b2 and a1 a2 of a filter of second order, a0 made 1. */
export type Biquad = {
	readonly b: readonly [number, number, number];
	readonly a: readonly [number, number];
};

/**
 * A band that lifts or cuts by so many decibels: W3C Note Audio EQ Cookbook, 2021-06-08, peakingEQ.
 *
 * @example
 * peakingBand({ hertz: 1000, q: 1, sampleRate: 48000 }, 6).b[0].toFixed(9) // => '1.043953087'
 */
export function peakingBand(band: Band, decibels: number): Biquad {
	const { cos, alpha } = angle(band);
	const amplitude = 10 ** (decibels / 40);
	const up = alpha * amplitude;
	const down = alpha / amplitude;
	return normal([1 + up, -2 * cos, 1 - up], [1 + down, -2 * cos, 1 - down]);
}

/**
 * A band that takes one frequency out: the same Note, notch.
 *
 * @example
 * notchBand({ hertz: 160, q: 8, sampleRate: 48000 }).a[1].toFixed(9) // => '0.997385619'
 */
export function notchBand(band: Band): Biquad {
	const { cos, alpha } = angle(band);
	return normal([1, -2 * cos, 1], [1 + alpha, -2 * cos, 1 - alpha]);
}

function angle({ hertz, q, sampleRate }: Band): { readonly cos: number; readonly alpha: number } {
	const turn = (2 * Math.PI * hertz) / sampleRate;
	return { cos: Math.cos(turn), alpha: Math.sin(turn) / (2 * q) };
}

type Three = readonly [number, number, number];

function normal([b0, b1, b2]: Three, [a0, a1, a2]: Three): Biquad {
	return { b: [b0 / a0, b1 / a0, b2 / a0], a: [a1 / a0, a2 / a0] };
}
