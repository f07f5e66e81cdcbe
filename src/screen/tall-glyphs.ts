// A face of our own for what must be read at two metres: each letter is six points high, two points to
// a cell by half blocks, so three rows; or a multiple of that. Lower case is drawn as capitals.

import { graphemes } from '../base/display-width.ts';
import type { Row, SpanStyle } from './row.ts';

// Six rows of points from the top, `#` set. Letters that could be taken for one another in dim light
// differ in more than a corner: D and B have serifs that O, 0 and 8 lack, 0 has a stroke, 8 is square,
// 5 is square where S is round, I has none of 1's flag and foot, Z is wider than 2.
const FACE: Readonly<Record<string, string>> = {
	A: '.##. #..# #..# #### #..# #..#',
	B: '####. .#..# .###. .#..# .#..# ####.',
	C: '.### #... #... #... #... .###',
	D: '####. .#..# .#..# .#..# .#..# ####.',
	// A narrower D, for names with many: never beside the other.
	ᴅ: '###. .#.# .#.# .#.# .#.# ###.',
	E: '#### #... ###. #... #... ####',
	F: '#### #... ###. #... #... #...',
	G: '.###. #.... #.... #.### #...# .###.',
	H: '#..# #..# #### #..# #..# #..#',
	I: '# # # # # #',
	J: '..## ...# ...# ...# #..# .##.',
	K: '#..# #.#. ##.. ##.. #.#. #..#',
	L: '#... #... #... #... #... ####',
	M: '#...# ##.## #.#.# #...# #...# #...#',
	N: '#..# ##.# ##.# #.## #.## #..#',
	O: '.##. #..# #..# #..# #..# .##.',
	P: '###. #..# #..# ###. #... #...',
	Q: '.##.. #..#. #..#. #..#. #.##. .##.#',
	R: '###. #..# #..# ###. #.#. #..#',
	S: '.##. #..# .#.. ..#. #..# .##.',
	T: '##### ..#.. ..#.. ..#.. ..#.. ..#..',
	U: '#..# #..# #..# #..# #..# .##.',
	V: '#...# #...# #...# .#.#. .#.#. ..#..',
	W: '#...# #...# #...# #.#.# ##.## #...#',
	X: '#...# .#.#. ..#.. ..#.. .#.#. #...#',
	Y: '#...# #...# .#.#. ..#.. ..#.. ..#..',
	Z: '##### ...#. ..#.. .#... #.... #####',
	0: '.###. #..## #.#.# #.#.# ##..# .###.',
	1: '..#.. .##.. ..#.. ..#.. ..#.. #####',
	2: '.##. #..# ...# .##. #... ####',
	3: '###. ...# .##. ...# ...# ###.',
	4: '#.#. #.#. #.#. #### ..#. ..#.',
	5: '#### #... #### ...# ...# ####',
	6: '.##. #... ###. #..# #..# .##.',
	7: '#### ...# ..#. ..#. .#.. .#..',
	8: '#### #..# #### #..# #..# ####',
	9: '.##. #..# #..# .### ...# .##.',
	'♯': '.#.#. ##### .#.#. .#.#. ##### .#.#.',
	'♭': '#.. #.. ##. #.# #.# ##.',
	'-': '.... .... #### .... .... ....',
	'+': '..... ..#.. ..#.. ##### ..#.. ..#..',
	'~': '...... ...... .##..# #..##. ...... ......',
	'.': '. . . . . #',
	',': '.. .. .. .. .# #.',
	'/': '...# ..#. ..#. .#.. .#.. #...',
	'\\': '#... .#.. .#.. ..#. ..#. ...#',
	':': '. # . . # .',
	"'": '# # . . . .',
	'`': '#. .# .. .. .. ..',
	';': '.. .# .. .. .# #.',
	'=': '.... #### .... .... #### ....',
	'[': '## #. #. #. #. ##',
	']': '## .# .# .# .# ##',
	' ': '.. .. .. .. .. ..',
	'?': '.##. #..# ..#. ..#. .... ..#.',
};

/** How the letters are drawn. `scale`, a whole number, is three rows high for each 1. */
export type TallLook = {
	readonly style: SpanStyle;
	readonly scale: number;
	readonly isAscii: boolean;
	/** Half as wide, two points to a cell across as well: for what has no room else. Not in ASCII. */
	readonly isCondensed?: boolean;
};

const HALF_BLOCKS = [' ', '▄', '▀', '█'] as const;
const ASCII_HALVES = [' ', '_', '"', '#'] as const;
/** By which quarters of a cell are filled: upper left 8, upper right 4, lower left 2, lower right 1. */
const QUARTERS = [...' ▗▖▄▝▐▞▟▘▚▌▙▀▜▛█'] as const;
const POINT_ROWS = 6;

/** The six rows of points of one letter, `#` set; what the face lacks is `?`. */
export function tallPoints(letter: string): readonly string[] {
	return pointsOf(letter).split(' ');
}

function pointsOf(letter: string): string {
	return inFace(letter) ?? (FACE['?'] as string);
}

/** Whether the letter is in the face, its accent apart. */
export function hasTallLetter(letter: string): boolean {
	return inFace(letter) !== undefined;
}

function inFace(letter: string): string | undefined {
	const capital = letter === '#' ? '♯' : letter.toUpperCase();
	return FACE[capital] ?? FACE[capital.normalize('NFD').replace(/\p{M}/gu, '')];
}

/** The cells that the text would fill in tall letters of scale 1, without a gap after the last. */
export function tallWidth(text: string): number {
	const widths = graphemes(text).map((letter) => pointsOf(letter).indexOf(' '));
	return widths.reduce((sum, width) => sum + width + 1, -1);
}

/** The same condensed. */
export function condensedWidth(text: string): number {
	return Math.ceil(tallWidth(text) / 2);
}

/** Three rows of the text for each step of the scale, all equally wide. */
export function tallRows(text: string, { style, isCondensed, ...how }: TallLook): readonly Row[] {
	if (isCondensed) return condensedRows(text, how.scale).map((row) => [{ text: row, style }]);
	const letters = graphemes(text).map((letter) => letterRows(pointsOf(letter), how));
	const gap = ' '.repeat(how.scale);
	return Array.from({ length: (POINT_ROWS / 2) * how.scale }, (_, row): Row => {
		return [{ text: letters.map((one) => one[row] ?? '').join(gap), style }];
	});
}

function condensedRows(text: string, scale: number): readonly string[] {
	const letters = graphemes(text).map((letter) => pointsOf(letter).split(' '));
	const points = Array.from({ length: POINT_ROWS }, (_, row) =>
		letters.map((letter) => letter[row] ?? '').join('.'),
	);
	// In halves of a cell, down and across.
	const isSet = (row: number, column: number) =>
		points[Math.floor(row / scale)]?.[Math.floor(column / scale)] === '#';
	const cells = Array.from({ length: condensedWidth(text) * scale }, (_, column) => column * 2);
	return Array.from({ length: (POINT_ROWS / 2) * scale }, (_, row) =>
		cells
			.map((column) => {
				const upper = (isSet(row * 2, column) ? 8 : 0) + (isSet(row * 2, column + 1) ? 4 : 0);
				const lower =
					(isSet(row * 2 + 1, column) ? 2 : 0) + (isSet(row * 2 + 1, column + 1) ? 1 : 0);
				return QUARTERS[upper + lower];
			})
			.join(''),
	);
}

/** Letters of the face that were drawn before, by how and by their points: every frame has the same few. */
const drawnLetters = new Map<string, readonly string[]>();

function letterRows(
	points: string,
	{ scale, isAscii }: Omit<TallLook, 'style'>,
): readonly string[] {
	const key = `${scale}${isAscii}${points}`;
	const known = drawnLetters.get(key);
	if (known) return known;
	const cells = isAscii ? ASCII_HALVES : HALF_BLOCKS;
	const rows = points.split(' ');
	const isSet = (row: number, column: number) =>
		rows[Math.floor(row / scale)]?.[Math.floor(column / scale)] === '#';
	const width = (rows[0]?.length ?? 0) * scale;
	const drawn = Array.from({ length: (POINT_ROWS / 2) * scale }, (_, row) => {
		const letters = Array.from({ length: width }, (__, column) => {
			const upper = isSet(row * 2, column) ? 2 : 0;
			const lower = isSet(row * 2 + 1, column) ? 1 : 0;
			return cells[upper + lower];
		});
		return letters.join('');
	});
	drawnLetters.set(key, drawn);
	return drawn;
}

/** The first of these texts whose tall letters of scale 1 fit, if need be with narrow letters; null when none does. */
export function firstThatFits(texts: readonly string[], columns: number): string | null {
	const fits = (text: string) => text !== '' && tallWidth(text) <= columns;
	return texts.find(fits) ?? texts.map((text) => text.replaceAll('D', 'ᴅ')).find(fits) ?? null;
}

/** The first of these whose condensed letters of scale 1 fit; null when none does. */
export function firstCondensed(texts: readonly string[], columns: number): string | null {
	return texts.find((text) => text !== '' && condensedWidth(text) <= columns) ?? null;
}
