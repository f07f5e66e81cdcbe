// The few laws of circuits that a rig needs: resistances together, a divider, a first-order filter.

/**
 * Ohms of resistances side by side. None at all is null: nothing is joined.
 *
 * @example
 * parallelOhms([8, 4]).toFixed(4) // => '2.6667'
 * parallelOhms([]) // => null
 */
export function parallelOhms(all: readonly number[]): number | null {
	if (all.length === 0) return null;
	return 1 / all.reduce((sum, ohms) => sum + 1 / ohms, 0);
}

/**
 * What part of a source's voltage is left across an input, 0 to 1.
 *
 * @example
 * dividerRatio({ sourceOhms: 10000, inputOhms: 1000000 }).toFixed(6) // => '0.990099'
 */
export function dividerRatio(given: {
	readonly sourceOhms: number;
	readonly inputOhms: number;
}): number {
	return given.inputOhms / (given.sourceOhms + given.inputOhms);
}

/**
 * Decibels of a ratio of voltages.
 *
 * @example
 * decibels(0.5).toFixed(2) // => '-6.02'
 */
export function decibels(ratio: number): number {
	return 20 * Math.log10(ratio);
}

/**
 * Hz at which a resistance and a capacitance take 3 dB away: 1/(2πRC).
 *
 * @example
 * cornerHertz(1000000, 500).toFixed(2) // => '318.31'
 */
export function cornerHertz(ohms: number, picofarads: number): number {
	return 1 / (2 * Math.PI * ohms * picofarads * 1e-12);
}

/**
 * What a first-order low-pass leaves at a frequency, as a ratio.
 *
 * @example
 * lowPassRatio(10000, 10000).toFixed(4) // => '0.7071'
 */
export function lowPassRatio(hertz: number, corner: number): number {
	return 1 / Math.hypot(1, hertz / corner);
}

/**
 * What a first-order high-pass leaves at a frequency, as a ratio.
 *
 * @example
 * highPassRatio(100, 100).toFixed(4) // => '0.7071'
 */
export function highPassRatio(hertz: number, corner: number): number {
	return 1 / Math.hypot(1, corner / hertz);
}
