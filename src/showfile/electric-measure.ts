// Ohms, picofarads, milliamp hours and metres as a rig's labels write them.

const OHMS = /^(\d{1,9}(?:\.\d{1,6})?)\s*([kM]?)\s*(?:ohms?|Ω|Ω)?$/;
const CAPACITY = /^(\d{1,6}(?:\.\d{1,3})?)\s*(mAh|Ah)$/i;
const METRES = /^(\d{1,4}(?:\.\d{1,3})?)\s*(m|cm|ft)?$/i;

const TIMES: Readonly<Record<string, number>> = { '': 1, k: 1_000, M: 1_000_000 };
/** The international foot, exact since 1959. */
const FOOT_METRES = 0.3048;

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
 * Metres of `6 m`, `30 cm` or `20 ft`; a bare number is metres. Null for anything else, and for nothing.
 *
 * @example
 * parseMetres('20 ft') // => 6.096
 */
export function parseMetres(text: string): number | null {
	const [, digits, unit = 'm'] = METRES.exec(text.trim()) ?? [];
	const of = { m: 1, cm: 0.01, ft: FOOT_METRES }[unit.toLowerCase()] ?? 1;
	const value = digits === undefined ? 0 : Math.round(Number(digits) * of * 1e6) / 1e6;
	return value > 0 ? value : null;
}
