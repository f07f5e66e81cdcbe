// Letters that are read at two metres must differ from one another, and fill three even rows.

import { expect, test } from 'vitest';
import { rowText } from '../../src/screen/row.ts';
import { tallRows, tallWidth } from '../../src/screen/tall-glyphs.ts';

const LETTERS = [..."ABCDEFGHIJKLMNOPQRSTUVWXYZ0123456789♯♭-+./:,'"];
const drawn = (text: string, isAscii = false) =>
	tallRows(text, 'plain', isAscii).map(rowText).join('\n');

test('no two letters look alike', () => {
	for (const isAscii of [false, true]) {
		expect(new Set(LETTERS.map((one) => drawn(one, isAscii))).size).toBe(LETTERS.length);
	}
});

test('three rows, all of the width that was promised', () => {
	for (const text of [...LETTERS, 'DROP C♯', 'E♭ std', 'Ä?☃']) {
		const rows = tallRows(text, 'plain', false).map(rowText);
		expect(rows.map((row) => row.length)).toEqual(Array(3).fill(tallWidth(text)));
	}
});

test('lower case is drawn as capitals, accents fall off, # is a sharp', () => {
	expect(drawn('s')).toBe(drawn('S'));
	expect(drawn('é')).toBe(drawn('E'));
	expect(drawn('#')).toBe(drawn('♯'));
});
