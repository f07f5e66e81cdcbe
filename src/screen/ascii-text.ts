// For terminals without Unicode: the same text in ASCII, cell for cell, so that columns stay.

import { displayWidth, graphemes } from '../base/display-width.ts';

const INSTEAD: Readonly<Record<string, string>> = {
	'…': '~',
	'–': '-',
	'—': '-',
	'−': '-',
	'‘': "'",
	'’': "'",
	'“': '"',
	'”': '"',
	'×': 'x',
	'≈': '~',
	'·': '.',
	'♯': '#',
	'♭': 'b',
	'↓': 'v',
	'↑': '^',
	'→': '>',
	ß: 's',
	ø: 'o',
	Ø: 'O',
	ł: 'l',
	Ł: 'L',
};

const PLAIN = /^[\x20-\x7e]*$/;

/** The text in ASCII, filling exactly as many cells: accents fall off, what has no sign is `?`. */
export function asciiText(text: string): string {
	if (PLAIN.test(text)) return text;
	return graphemes(text)
		.map((one) => {
			if (PLAIN.test(one)) return one;
			const bare = INSTEAD[one] ?? one.normalize('NFD').replace(/\p{M}/gu, '');
			const width = displayWidth(one);
			return PLAIN.test(bare) && bare.length === width ? bare : '?'.repeat(width);
		})
		.join('');
}
