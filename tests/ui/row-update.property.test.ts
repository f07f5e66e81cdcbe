// What is sent of a row is only what differs: whatever it was and whatever it shall be, the terminal then
// shows what it would show had it been sent the whole row.

import xterm from '@xterm/headless';
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { type SpanStyle, span } from '../../src/screen/row.ts';
import { rowUpdate } from '../../src/ui/row-update.ts';
import { styledRow, stylingOf } from '../../src/ui/styled-row.ts';

const RUNS = { numRuns: Number(process.env.PROPERTY_RUNS ?? 300) };
const COLUMNS = 40;

const STYLES: readonly SpanStyle[] = ['plain', 'dim', 'bright', 'accent'];

/** Plain letters, blocks of tall ones, an accent that joins, a wide letter, a sign of a debated width. */
const letter = fc.constantFrom(...'aab   12│█▀é', 'e\u0301', '\u0323', '夜', '🎸');
const piece = fc.record({
	text: fc.array(letter, { minLength: 1, maxLength: 12 }).map((letters) => letters.join('')),
	style: fc.constantFrom(...STYLES),
});
const pieces = fc.array(piece, { maxLength: 6 });
/** Mostly one that is changed in places, as from one frame to the next. */
const rows = fc.oneof(
	fc.tuple(pieces, pieces),
	fc.tuple(pieces, fc.array(fc.option(piece), { maxLength: 6 })).map(([before, changes]) => {
		return [before, before.map((one, at) => changes[at] ?? one)] as const;
	}),
);
const styling = fc.constantFrom(
	stylingOf('dark', 24),
	stylingOf('amber', 8),
	stylingOf('dark', 4),
	null,
);

/** Everything of the first two lines that can be seen once this was written. */
async function seen(written: string) {
	const terminal = new xterm.Terminal({ cols: COLUMNS, rows: 2, allowProposedApi: true });
	// Without wrapping, as the program has it.
	await new Promise<void>((done) => terminal.write(`\x1b[?7l${written}`, done));
	const lines = [0, 1].map((y) => {
		const line = terminal.buffer.active.getLine(y)!;
		return Array.from({ length: COLUMNS }, (_, x) => {
			const cell = line.getCell(x)!;
			const letters = cell.getChars().trim();
			const field = `${cell.getBgColorMode()} ${cell.getBgColor()}`;
			const pen = `${cell.getFgColorMode()} ${cell.getFgColor()} ${cell.isBold()}`;
			return [letters, cell.getWidth(), field, letters === '' ? '' : pen].join(' ');
		});
	});
	terminal.dispose();
	return lines;
}

test('a row that was changed looks as one that was sent whole', async () => {
	await fc.assert(
		fc.asyncProperty(rows, styling, async (two, pens) => {
			const [before = '', after = ''] = two.map((one) =>
				styledRow(
					one.map(({ text, style }) => span(text, style)),
					pens,
					COLUMNS,
				),
			);
			const update = rowUpdate(before, after, 2);
			expect(await seen(`\r\n${before}${update}`)).toEqual(await seen(`\r\n${after}`));
		}),
		RUNS,
	);
});

test('nothing is sent where nothing differs, nor for another color of a blank', () => {
	const pens = stylingOf('dark', 24);
	const row = (style: SpanStyle) =>
		styledRow([span('a  '), span('b', style), span('  ', style)], pens, COLUMNS);
	expect(rowUpdate(row('dim'), row('dim'), 1)).toBe('');
	const update = rowUpdate(row('dim'), row('accent'), 1);
	expect(update).toContain('b');
	expect(update).not.toMatch(/[a ]/);
});

test('one letter among many costs its place, its style and itself', () => {
	const pens = stylingOf('dark', 24);
	const row = (letter: string) => styledRow([span(`Memo: ${letter} and more`)], pens, COLUMNS);
	// CUP, the pens of letters and field, the letter, SGR 0 (ECMA-48).
	const [, place, letters, field, ending, ...more] = rowUpdate(row('q'), row('x'), 7).split(
		'\u001B',
	);
	expect([place, ending, more]).toEqual(['[7;7H', '[m', []]);
	expect(letters).toMatch(/^\[38;[\d;]+m$/);
	expect(field).toMatch(/^\[48;[\d;]+mx$/);
});
