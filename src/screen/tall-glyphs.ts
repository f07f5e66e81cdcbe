// A face of our own, three rows tall, for what must be read at two metres: each letter is six points
// high, two points to a cell by half blocks. Lower case is drawn as capitals.

import { graphemes } from '../base/display-width.ts';
import type { Row, Span, SpanStyle } from './row.ts';

// Six rows of points from the top, `#` set. Letters that could be taken for one another in dim light
// (O and 0, S and 5, B and 8) differ in their corners.
const FACE: Readonly<Record<string, string>> = {
	A: '.##. #..# #..# #### #..# #..#',
	B: '###. #..# ###. #..# #..# ###.',
	C: '.### #... #... #... #... .###',
	D: '###. #..# #..# #..# #..# ###.',
	E: '#### #... ###. #... #... ####',
	F: '#### #... ###. #... #... #...',
	G: '.### #... #... #.## #..# .###',
	H: '#..# #..# #### #..# #..# #..#',
	I: '### .#. .#. .#. .#. ###',
	J: '..## ...# ...# ...# #..# .##.',
	K: '#..# #.#. ##.. ##.. #.#. #..#',
	L: '#... #... #... #... #... ####',
	M: '#...# ##.## #.#.# #...# #...# #...#',
	N: '#..# ##.# ##.# #.## #.## #..#',
	O: '.##. #..# #..# #..# #..# .##.',
	P: '###. #..# #..# ###. #... #...',
	Q: '.##. #..# #..# #..# .##. ...#',
	R: '###. #..# #..# ###. #.#. #..#',
	S: '.### #... .##. ...# ...# ###.',
	T: '##### ..#.. ..#.. ..#.. ..#.. ..#..',
	U: '#..# #..# #..# #..# #..# .##.',
	V: '#..# #..# #..# #..# .##. .##.',
	W: '#...# #...# #...# #.#.# ##.## #...#',
	X: '#..# #..# .##. .##. #..# #..#',
	Y: '#...# #...# .#.#. ..#.. ..#.. ..#..',
	Z: '#### ...# ..#. .#.. #... ####',
	0: '.##. #..# #.## ##.# #..# .##.',
	1: '.#. ##. .#. .#. .#. ###',
	2: '.##. #..# ...# .##. #... ####',
	3: '###. ...# .##. ...# ...# ###.',
	4: '#.#. #.#. #.#. #### ..#. ..#.',
	5: '#### #... ###. ...# ...# ###.',
	6: '.##. #... ###. #..# #..# .##.',
	7: '#### ...# ..#. ..#. .#.. .#..',
	8: '.##. #..# .##. #..# #..# .##.',
	9: '.##. #..# #..# .### ...# .##.',
	'♯': '.#.#. ##### .#.#. .#.#. ##### .#.#.',
	'♭': '#.. #.. ##. #.# #.# ##.',
	'-': '... ... ### ... ... ...',
	'+': '... .#. ### .#. ... ...',
	'.': '. . . . . #',
	',': '.. .. .. .. .# #.',
	'/': '...# ..#. ..#. .#.. .#.. #...',
	':': '. # . . # .',
	"'": '# # . . . .',
	';': '.. .# .. .. .# #.',
	'=': '... ### ... ### ... ...',
	'[': '## #. #. #. #. ##',
	']': '## .# .# .# .# ##',
	' ': '.. .. .. .. .. ..',
	'?': '.##. #..# ..#. ..#. .... ..#.',
};

const HALF_BLOCKS = [' ', '▄', '▀', '█'] as const;
const ASCII_HALVES = [' ', '_', '"', '#'] as const;

function pointsOf(letter: string): readonly string[] {
	const capital = letter === '#' ? '♯' : letter.toUpperCase();
	const bare = capital.normalize('NFD').replace(/\p{M}/gu, '');
	return (FACE[capital] ?? FACE[bare] ?? (FACE['?'] as string)).split(' ');
}

/** The cells that the text would fill in tall letters, without a gap after the last. */
export function tallWidth(text: string): number {
	const widths = graphemes(text).map((letter) => pointsOf(letter)[0]?.length ?? 0);
	return widths.reduce((sum, width) => sum + width + 1, -1);
}

/** Three rows of the text in tall letters, all equally wide; a letter that the face lacks is `?`. */
export function tallRows(text: string, style: SpanStyle, isAscii: boolean): readonly Row[] {
	const cells = isAscii ? ASCII_HALVES : HALF_BLOCKS;
	const letters = graphemes(text).map(pointsOf);
	return [0, 2, 4].map((top): Row => {
		const drawn = letters.map((points) =>
			[...(points[top] ?? '')].map((upper, column) => {
				const lower = points[top + 1]?.[column];
				return cells[(upper === '#' ? 2 : 0) + (lower === '#' ? 1 : 0)] ?? ' ';
			}),
		);
		return [{ text: drawn.map((one) => one.join('')).join(' '), style } satisfies Span];
	});
}

/** The first of these texts whose tall letters fit, or null when none does. */
export function firstThatFits(texts: readonly string[], columns: number): string | null {
	return texts.find((text) => text !== '' && tallWidth(text) <= columns) ?? null;
}
