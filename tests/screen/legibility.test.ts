// How far off the tall letters can be read, on the panel that most laptops beside a rack have, and that
// what a hand-over needs is in tall letters.

import { expect, test } from 'vitest';
import { ALL_TALL_COLUMNS } from '../../src/screen/card-columns.ts';
import { drawScreen } from '../../src/screen/draw-screen.ts';
import { readFromMetres } from '../../src/screen/legibility.ts';
import { rowText } from '../../src/screen/row.ts';
import { tallLetterRows } from '../../src/screen/stage.ts';
import { tallRows } from '../../src/screen/tall-glyphs.ts';
import { handOverOfThree, middleOfASong } from './states.ts';

/** A 14-inch panel of 16:9 is 174 mm high: 14 × 25.4 × 9 / √(16² + 9²). */
const PANEL_MM = (14 * 25.4 * 9) / Math.hypot(16, 9);
/** Preferred and least height of a letter in minutes of arc: ISO 9241-303, from memory. */
const PREFERRED_ARC_MINUTES = 20;
const LEAST_ARC_MINUTES = 16;

function metres(size: { columns: number; rows: number }, arcMinutes: number): number {
	const letterMm = (tallLetterRows(size) * PANEL_MM) / size.rows;
	return letterMm / 1000 / Math.tan(((arcMinutes / 60) * Math.PI) / 180);
}

// The distances that DEVELOPERS.md gives.
test.each([
	[{ columns: 80, rows: 24 }, 3.7],
	[{ columns: 100, rows: 30 }, 3.0],
	[{ columns: 120, rows: 40 }, 2.2],
	[{ columns: 200, rows: 60 }, 3.0],
])('tall letters are read at two metres and more: %o at %f m', (size, distance) => {
	expect(metres(size, PREFERRED_ARC_MINUTES)).toBeCloseTo(distance, 1);
	expect(readFromMetres(size).tall).toBeCloseTo(distance, 1);
});

test('small letters are read from 0.8 m at 80x24', () => {
	expect(readFromMetres({ columns: 80, rows: 24 }).small).toBeCloseTo(0.8, 1);
});

test('no size full of rows falls below the least at two metres', () => {
	for (let rows = 24; rows <= 70; rows += 1) {
		// Cells are twice as high as wide.
		const columns = Math.round((rows * 2 * 16) / 9);
		expect(metres({ columns, rows }, LEAST_ARC_MINUTES)).toBeGreaterThanOrEqual(2);
	}
});

const tallOf = (text: string, scale: 1 | 2) =>
	tallRows(text, { style: 'plain', scale, isAscii: false }).map(rowText);

test.each([
	{ columns: ALL_TALL_COLUMNS, rows: 30 },
	{ columns: 120, rows: 40 },
	{ columns: 200, rows: 60 },
])('from 100x30 on slot, tuning and capo are in tall letters: $columns x $rows', (size) => {
	const state = middleOfASong();
	const { handOvers } = state.plan;
	const scale = tallLetterRows(size) === 6 ? 2 : 1;
	// Where there is room for it the player is too, in small tall letters.
	const player = size.columns >= 120 ? tallOf('BO', 1) : [];
	const withTuning = (name: string, notes: readonly string[], capo: number) => ({
		...state,
		plan: { ...state.plan, handOvers: [{ ...handOvers[1]!, tuning: { name, notes }, capo }] },
	});
	const standard = ['E2', 'A2', 'D3', 'G3', 'B3', 'E4'];
	for (const [name, notes, tall] of [
		['E standard', standard, 'E STD'],
		['half-step down', ['Eb2', 'Ab2', 'Db3', 'Gb3', 'Bb3', 'Eb4'], 'E♭ STD'],
		['half-step down', ['Bb1', 'Eb2', 'Ab2', 'Db3', 'F3', 'Bb3'], 'B♭ STD'],
		['drop D', standard, 'DROP D'],
		['open G', standard, 'OPEN G'],
		['DADGAD', standard, 'DADGAD'],
	] as const) {
		for (const capo of [0, 3]) {
			const rows = drawScreen(withTuning(name, notes, capo), size, { isAscii: false }).map(rowText);
			const letters = rows.slice(1, 1 + 3 * scale);
			for (const [at, row] of player.entries()) expect(letters[at]).toContain(row);
			for (const words of ['7', tall, ...(capo > 0 ? [`CAPO ${capo}`] : [])]) {
				for (const [at, row] of tallOf(words, scale).entries()) {
					expect(letters[at]).toContain(row);
				}
			}
		}
	}
});

test('at 80x24 slot, short tuning and mark of three who change at once are tall, side by side', () => {
	const rows = drawScreen(
		{ ...handOverOfThree(), prompt: null },
		{ columns: 80, rows: 24 },
		{ isAscii: false },
	).map(rowText);
	for (const [card, words] of [
		[0, ['4', 'DD', '+']],
		[1, ['7', 'E', '+']],
		[2, ['9', 'B', '+']],
	] as const) {
		const letters = rows.slice(1, 4).map((row) => row.slice(card * 27, card * 27 + 26));
		for (const word of words) {
			for (const [at, row] of tallOf(word, 1).entries()) {
				expect(letters[at]).toContain(row.trimEnd());
			}
		}
	}
});

test('at 80x24 a long tuning of one of two is tall too, in narrow letters', () => {
	const state = middleOfASong();
	const [ash, bo] = state.plan.handOvers;
	const dadgad = { name: 'DADGAD', notes: ['D2', 'A2', 'D3', 'G3', 'A3', 'D4'] };
	const plan = { ...state.plan, handOvers: [{ ...ash!, tuning: dadgad }, bo!] };
	const size = { columns: 80, rows: 24 };
	const rows = drawScreen({ ...state, plan }, size, { isAscii: false }).map(rowText);
	const letters = rows.slice(1, 4).map((row) => row.slice(0, 39));
	for (const [at, row] of tallOf('ᴅAᴅGAᴅ', 1).entries()) expect(letters[at]).toContain(row);
});

test('at 80x24 a long tuning of one of three is tall too, in condensed letters', () => {
	const before = { ...handOverOfThree(), prompt: null };
	const [ash, bo, cleo] = before.plan.handOvers;
	const dadgad = { name: 'DADGAD', notes: ['D2', 'A2', 'D3', 'G3', 'A3', 'D4'] };
	const gdae = { name: 'GDAE', notes: ['G3', 'G3', 'D4', 'D4', 'A4', 'A4', 'E5', 'E5'] };
	const handOvers = [{ ...ash!, tuning: dadgad }, { ...bo!, tuning: gdae }, cleo!];
	const state = { ...before, plan: { ...before.plan, handOvers } };
	const size = { columns: 80, rows: 24 };
	const rows = drawScreen(state, size, { isAscii: false }).map(rowText);
	for (const [card, words] of [
		[0, 'DADGAD'],
		[1, 'GDAE'],
	] as const) {
		const letters = rows.slice(1, 4).map((row) => row.slice(card * 27, card * 27 + 26));
		const tall = tallRows(words, { style: 'plain', scale: 1, isAscii: false, isCondensed: true });
		for (const [at, row] of tall.map(rowText).entries())
			expect(letters[at]).toContain(row.trimEnd());
	}
	// Where two points to a cell cannot be drawn it stays small.
	const ascii = drawScreen(state, size, { isAscii: true }).map(rowText);
	expect(ascii.slice(1, 4).join('\n')).toContain('DADGAD');
});

test('a point of a condensed letter is as wide as the eye needs at two metres', () => {
	// A letter of the least height has five strokes and gaps down (ISO 9241-303, from memory): its least detail.
	const detail = LEAST_ARC_MINUTES / 5;
	const panelWidthMm = (PANEL_MM * 16) / 9;
	const pointMm = panelWidthMm / 80 / 2;
	const arcMinutes = (Math.atan(pointMm / 2000) * 180 * 60) / Math.PI;
	expect(arcMinutes).toBeGreaterThanOrEqual(detail);
});
