// A drawn row as one text with its styles written into it. One text a row costs the renderer a
// fraction of what a component for each piece does, and the colours are ours, not a library's guess.

import type { ColorDepth, LookName } from '../base/colors.ts';
import { LOOKS, type Tone } from '../screen/looks.ts';
import { type Row, rowText, type SpanStyle } from '../screen/row.ts';

/** What begins each style on a terminal; null writes words only. */
export type Styling = Readonly<Record<SpanStyle, string>> | null;

// ECMA-48, 8.3.117 SGR: 0 ends all styles, 1 is bold; 38;5 and 38;2 are of ISO 8613-6.
const PLAIN = '\u001B[0m';

/** How a look is written on a terminal of so many bits of colour. */
export function stylingOf(look: LookName, depth: ColorDepth): Styling {
	const tones = LOOKS[look];
	if (tones === null || depth === 1) return null;
	const begin = (one: Tone) => `\u001B[${one.isBold ? '1;' : ''}${foreground(one, depth)}m`;
	return {
		plain: begin(tones.plain),
		dim: begin(tones.dim),
		title: begin(tones.title),
		bright: begin(tones.bright),
		unready: begin(tones.unready),
		accent: begin(tones.accent),
	};
}

function foreground({ rgb, of256, of16 }: Tone, depth: 4 | 8 | 24): string {
	if (depth === 4) return String(of16);
	if (depth === 8) return `38;5;${of256}`;
	const part = (at: number) => Number.parseInt(rgb.slice(at, at + 2), 16);
	return `38;2;${part(1)};${part(3)};${part(5)}`;
}

/** The row as it is sent; its pieces hold no escapes of their own. */
export function styledRow(row: Row, styling: Styling): string {
	if (styling === null) return rowText(row);
	let written = '';
	let last: SpanStyle | null = null;
	for (const { text, style } of row) {
		// A blank has no colour to be seen, so it goes with what is before it.
		const isSame = style === last || text.trim() === '';
		if (!isSame) {
			written += last === null ? styling[style] : PLAIN + styling[style];
			last = style;
		}
		written += text;
	}
	return last === null ? written : written + PLAIN;
}
