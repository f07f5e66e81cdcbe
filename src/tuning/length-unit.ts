// The three units in which a bench measures, and the one in which it is kept: millimetres.

export type LengthUnit = 'mm' | 'thou' | '64ths';

/** The international inch, exact since 1959. */
const INCH_MILLIMETRES = 25.4;

const MILLIMETRES: Readonly<Record<LengthUnit, number>> = {
	mm: 1,
	thou: INCH_MILLIMETRES / 1000,
	'64ths': INCH_MILLIMETRES / 64,
};

/**
 * Millimetres of a measure in one of the units.
 *
 * @example
 * millimetresOf(4, '64ths') // => 1.5875
 */
export function millimetresOf(value: number, unit: LengthUnit): number {
	return value * MILLIMETRES[unit];
}

/**
 * A length in the unit that the user likes, as it is written on a bench card.
 *
 * @example
 * lengthWords(1.5875, '64ths') // => '4.0/64 in'
 * lengthWords(1.5875, 'thou') // => '63 thou'
 * lengthWords(1.5875, 'mm') // => '1.59 mm'
 */
export function lengthWords(millimetres: number, unit: LengthUnit): string {
	const value = millimetres / MILLIMETRES[unit];
	if (unit === 'mm') return `${value.toFixed(2)} mm`;
	return unit === 'thou' ? `${value.toFixed(0)} thou` : `${value.toFixed(1)}/64 in`;
}

/**
 * Millimetres of a length as it is typed, `1.6 mm`, `63 thou`, `4/64 in` or `0.063 in`; a bare number is
 * millimetres. Null for anything else.
 *
 * @example
 * parseLength('4/64 in') // => 1.5875
 * parseLength('1.6') // => 1.6
 * parseLength('thin') // => null
 */
export function parseLength(text: string): number | null {
	const [, digits = '', unit = ''] =
		/^(\d{1,4}(?:\.\d{1,4})?)\s*(mm|thou|\/\s*64(?:\s*(?:in|"))?|64ths|in|")?$/i.exec(
			text.trim(),
		) ?? [];
	if (digits === '') return null;
	const millimetres = inUnit(Number(digits), unit);
	// What changing units leaves behind the ninth place is dust.
	return Number(millimetres.toFixed(9));
}

function inUnit(value: number, unit: string): number {
	const word = unit.toLowerCase().replace(/\s/g, '');
	if (word === '' || word === 'mm') return value;
	if (word === 'thou') return millimetresOf(value, 'thou');
	return word.includes('64') ? millimetresOf(value, '64ths') : value * INCH_MILLIMETRES;
}
