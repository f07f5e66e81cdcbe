// A drawn row as one text with its styles written into it. One text a row costs the renderer a
// fraction of what a component for each piece does, and the colours are ours, not a library's guess.

import type { ColorDepth, ColourSet } from '../base/colours.ts';
import { fillRow, type Row, rowText, type SpanStyle } from '../screen/row.ts';
import { FIELD, TONES, type Tone } from '../screen/tones.ts';

/** How the screen is written on this terminal. */
export type ScreenOptions = {
	readonly isAscii: boolean;
	readonly colorDepth: ColorDepth;
};

/** What begins and ends each style on a terminal, and the field under all of them; null writes words only. */
export type Styling = (Readonly<Record<SpanStyle, Pen>> & { readonly field: string }) | null;

type Pen = { readonly bold: string; readonly color: string };

// ECMA-48, 8.3.117 SGR: 1 is bold, 22 ends it, 39 and 49 are the terminal's own colours; 38 and 48 are
// of ISO 8613-6.
const BOLD = '\u001B[1m';
const NO_BOLD = '\u001B[22m';
const NO_COLOR = '\u001B[39m';
const NO_FIELD = '\u001B[49m';

/** How a set of colours is written on a terminal of so many bits of colour. */
export function stylingOf(colours: ColourSet, depth: ColorDepth): Styling {
	const tones = TONES[colours];
	if (tones === null || depth === 1) return null;
	const pen = (one: Tone): Pen => ({
		bold: one.isBold ? BOLD : '',
		color: `\u001B[${colorOf(one, depth, 38)}m`,
	});
	return {
		plain: pen(tones.plain),
		dim: pen(tones.dim),
		title: pen(tones.title),
		bright: pen(tones.bright),
		unready: pen(tones.unready),
		accent: pen(tones.accent),
		field: `\u001B[${colorOf(FIELD, depth, 48)}m`,
	};
}

/** Of the letters, 38, or of the field, 48. */
function colorOf(
	{ rgb, of256, of16 }: Omit<Tone, 'isBold'>,
	depth: 4 | 8 | 24,
	of: 38 | 48,
): string {
	if (depth === 4) return String(of16);
	if (depth === 8) return `${of};5;${of256}`;
	const part = (at: number) => Number.parseInt(rgb.slice(at, at + 2), 16);
	return `${of};2;${part(1)};${part(3)};${part(5)}`;
}

/**
 * The row as it is sent, filled up to so many cells, since a terminal's own field may be white; its
 * pieces hold no escapes of their own. Written as the renderer itself
 * writes styles, each change as short as it can be: it then takes the row apart once, not twice.
 */
export function styledRow(row: Row, styling: Styling, columns: number): string {
	if (styling === null) return rowText(row);
	let written = styling.field;
	let pen: Pen | null = null;
	for (const { text, style } of fillRow(row, columns)) {
		// A blank has no colour to be seen, so it goes with what is before it.
		const next: Pen | null = text.trim() === '' ? pen : styling[style];
		if (next !== null && next !== pen) {
			written += changeOf(pen, next);
			pen = next;
		}
		written += text;
	}
	const end = pen === null ? '' : NO_COLOR + (pen.bold && NO_BOLD);
	return written + end + NO_FIELD;
}

function changeOf(pen: Pen | null, next: Pen): string {
	const color = next.color === pen?.color ? '' : next.color;
	if (next.bold === (pen?.bold ?? '')) return color;
	return next.bold === '' ? NO_BOLD + color : next.bold + color;
}
