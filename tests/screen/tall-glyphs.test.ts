// Letters that are read at two metres must differ from one another by more than a corner, and fill even
// rows.

import { describe, expect, test } from 'vitest';
import { rowText } from '../../src/screen/row.ts';
import { condensedWidth, tallPoints, tallRows, tallWidth } from '../../src/screen/tall-glyphs.ts';

const LETTERS = [..."ABCDᴅEFGHIJKLMNOPQRSTUVWXYZ0123456789♯♭-+~=./,:;'`[]\\"];
const drawn = (text: string, isAscii = false) =>
	tallRows(text, { style: 'plain', scale: 1, isAscii }).map(rowText).join('\n');

/** In how many of their points two letters differ, laid over one another as well as they can be. */
function difference(one: string, other: string): number {
	const [left, right] = [tallPoints(one), tallPoints(other)];
	const width = Math.max(left[0]?.length ?? 0, right[0]?.length ?? 0);
	const isSet = (points: readonly string[], row: number, column: number) =>
		points[row]?.[column] === '#';
	const shifts = Array.from({ length: 5 }, (_, index) => index - 2);
	return Math.min(
		...shifts.map((shift) => {
			let count = 0;
			for (let row = 0; row < 6; row += 1) {
				for (let column = -2; column < width + 2; column += 1) {
					if (isSet(left, row, column) !== isSet(right, row, column - shift)) count += 1;
				}
			}
			return count;
		}),
	);
}

// Pairs that are taken for one another in dim light; common practice, no source.
const LOOK_ALIKES = [
	['0', 'O'],
	['1', 'I'],
	['5', 'S'],
	['8', 'B'],
	['2', 'Z'],
	['D', 'O'],
	['D', '0'],
	['ᴅ', 'O'],
	['ᴅ', '0'],
	['ᴅ', 'B'],
	['ᴅ', 'A'],
	['4', 'A'],
	['8', '0'],
	['6', 'G'],
	['C', 'G'],
	['8', 'S'],
	['♭', 'B'],
	['♭', '6'],
	['+', '-'],
	['-', '~'],
	['-', '='],
] as const;

describe('the face', () => {
	test('no two letters look alike', () => {
		for (const isAscii of [false, true]) {
			expect(new Set(LETTERS.map((one) => drawn(one, isAscii))).size).toBe(LETTERS.length);
		}
	});

	test.each(LOOK_ALIKES)('%s and %s differ in at least four points', (one, other) => {
		expect(difference(one, other)).toBeGreaterThanOrEqual(4);
	});

	test('every slot key is in it: any unshifted key of a keyboard but space and 0', () => {
		for (const key of "123456789abcdefghijklmnopqrstuvwxyz-=[]\\;'`,./") {
			expect(tallPoints(key)).not.toEqual(tallPoints('☃'));
		}
	});
});

test('three rows, all of the width that was promised, and six of twice that', () => {
	for (const text of [...LETTERS, 'DROP C♯', 'E♭ std', 'Ä?☃']) {
		for (const scale of [1, 2] as const) {
			const rows = tallRows(text, { style: 'plain', scale, isAscii: false }).map(rowText);
			expect(rows.map((row) => row.length)).toEqual(Array(3 * scale).fill(tallWidth(text) * scale));
		}
	}
});

test('lower case is drawn as capitals, accents fall off, # is a sharp', () => {
	expect(drawn('s')).toBe(drawn('S'));
	expect(drawn('é')).toBe(drawn('E'));
	expect(drawn('#')).toBe(drawn('♯'));
});

test('condensed they are half as wide, in as many rows, with the same points', () => {
	// Unicode, "Block Elements": which quarters of a cell each sign fills, upper left first.
	const QUARTERS: Readonly<Record<string, string>> = {
		' ': '....',
		'▗': '...#',
		'▖': '..#.',
		'▄': '..##',
		'▝': '.#..',
		'▐': '.#.#',
		'▞': '.##.',
		'▟': '.###',
		'▘': '#...',
		'▚': '#..#',
		'▌': '#.#.',
		'▙': '#.##',
		'▀': '##..',
		'▜': '##.#',
		'▛': '###.',
		'█': '####',
	};
	for (const text of [...LETTERS, 'DADGAD', 'E♭ std']) {
		const look = { style: 'plain', scale: 1, isAscii: false, isCondensed: true } as const;
		const rows = tallRows(text, look).map(rowText);
		expect(rows.map((row) => row.length)).toEqual(Array(3).fill(condensedWidth(text)));
		const points = rows.flatMap((row) =>
			[0, 2].map((half) =>
				[...row]
					.map((cell) => QUARTERS[cell]?.slice(half, half + 2))
					.join('')
					.replace(/\.+$/, ''),
			),
		);
		const letters = [...text].map(tallPoints);
		const wanted = Array.from({ length: 6 }, (_, row) =>
			letters
				.map((letter) => letter[row])
				.join('.')
				.replace(/\.+$/, ''),
		);
		expect(points).toEqual(wanted);
	}
});
