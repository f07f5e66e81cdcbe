// Emoji that are made of several code points, as one that every terminal draws equally wide: families,
// flags and shades of skin are two cells in some terminals and up to eight in others, and a row that is
// wider than we take it for loses its end.

import { displayWidth, fitWidth, graphemes } from '../base/display-width.ts';

/** Joiner, emoji selector, keycap, regional letters, shades of skin (Unicode 16, UTS #51, from memory). */
const MADE_OF_SEVERAL = /[\u200D\uFE0F\u20E3\u{1F1E6}-\u{1F1FF}\u{1F3FB}-\u{1F3FF}]/u;

const IS_EMOJI = /^[\p{Extended_Pictographic}\p{Regional_Indicator}\d#*]/u;

const REGIONAL_A = 0x1f1e6;

/** The text with the first sign of each such emoji, and with letters for flags, filling as many cells. */
export function plainClusters(text: string): string {
	if (!MADE_OF_SEVERAL.test(text)) return text;
	return graphemes(text)
		.map((one) =>
			MADE_OF_SEVERAL.test(one) && IS_EMOJI.test(one)
				? fitWidth(firstSigns(one), displayWidth(one))
				: one,
		)
		.join('');
}

function firstSigns(cluster: string): string {
	const [first = '', ...rest] = cluster;
	return /\p{Regional_Indicator}/u.test(first) ? [first, ...rest].map(flagLetter).join('') : first;
}

function flagLetter(sign: string): string {
	return String.fromCharCode((sign.codePointAt(0) ?? REGIONAL_A) - REGIONAL_A + 65);
}
