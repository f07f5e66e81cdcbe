// Ohms, milliamp hours, metres and milliseconds as a rig's labels write them.

const OHMS = /^(\d{1,9}(?:\.\d{1,6})?)\s*([kM]?)\s*(?:ohms?|Ω|Ω)?$/;
const CAPACITY = /^(\d{1,6}(?:\.\d{1,3})?)\s*(mAh|Ah)$/i;
const METRES = /^(\d{1,4}(?:\.\d{1,6})?)\s*(m|cm|ft|in)?$/i;
const MILLISECONDS = /^(\d{1,4}(?:\.\d{1,3})?)\s*(?:ms)?$/i;

const TIMES: Readonly<Record<string, number>> = { '': 1, k: 1_000, M: 1_000_000 };
// The international foot and inch, exact since 1959.
const FOOT_METRES = 0.3048;
const INCH_METRES = 0.0254;

/**
 * Ohms of `8`, `500 k` or `1 M`; null for anything else, and for nothing.
 *
 * @example
 * parseOhms('500 k') // => 500000
 */
export function parseOhms(text: string): number | null {
	const [, digits, unit = ''] = OHMS.exec(text.trim()) ?? [];
	const value = digits === undefined ? 0 : Number(digits) * (TIMES[unit] ?? 1);
	return value > 0 ? value : null;
}

/**
 * Milliamp hours of `500 mAh` or `2 Ah`; null for anything else, and for nothing.
 *
 * @example
 * parseCapacity('2 Ah') // => 2000
 */
export function parseCapacity(text: string): number | null {
	const [, digits, unit = ''] = CAPACITY.exec(text.trim()) ?? [];
	const value = digits === undefined ? 0 : Number(digits) * (/^m/i.test(unit) ? 1 : 1000);
	return value > 0 ? value : null;
}

/**
 * Metres of `6 m`, `30 cm`, `20 ft` or `12 in`; a bare number is metres. Null for anything else, and for nothing.
 *
 * @example
 * parseMetres('20 ft') // => 6.096
 */
export function parseMetres(text: string): number | null {
	const [, digits, unit = 'm'] = METRES.exec(text.trim()) ?? [];
	const of = { m: 1, cm: 0.01, ft: FOOT_METRES, in: INCH_METRES }[unit.toLowerCase()] ?? 1;
	const value = digits === undefined ? 0 : Math.round(Number(digits) * of * 1e6) / 1e6;
	return value > 0 ? value : null;
}

/**
 * Milliseconds of `1.5 ms`; a bare number is milliseconds. Null for anything else.
 *
 * @example
 * parseMilliseconds('1.5 ms') // => 1.5
 */
export function parseMilliseconds(text: string): number | null {
	const [, digits] = MILLISECONDS.exec(text.trim()) ?? [];
	return digits === undefined ? null : Number(digits);
}
