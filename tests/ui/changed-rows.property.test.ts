// Of a row only what comes after its first difference is sent: whatever it was and whatever it shall be, the
// terminal then shows what it would show had it been sent the whole row.

import { PassThrough } from 'node:stream';
import xterm from '@xterm/headless';
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { displayWidth } from '../../src/base/display-width.ts';
import { rowText, type SpanStyle, span } from '../../src/screen/row.ts';
import { startUi } from '../../src/ui/start-ui.tsx';
import { styledRow, stylingOf } from '../../src/ui/styled-row.ts';
import { ONE_BY_ONE } from '../terminal/pty-screen.ts';

const ROWS = 20;
const RUNS = { numRuns: Math.ceil(Number(process.env.PROPERTY_RUNS ?? 300) / ROWS) };
const COLUMNS = 40;
/** Longer than from one frame to the next. */
const FRAME_MS = 20;

const STYLES: readonly SpanStyle[] = ['plain', 'dim', 'bright', 'accent'];

/** Plain letters, blocks of tall ones, an accent that joins, a wide letter, a sign of a debated width. */
const letter = fc.constantFrom(...'aab   12│█▀é', 'e\u0301', '\u0323', '夜', '🎸');
const piece = fc.record({
	text: fc.array(letter, { minLength: 1, maxLength: 12 }).map((letters) => letters.join('')),
	style: fc.constantFrom(...STYLES),
});
type Piece = { readonly text: string; readonly style: SpanStyle };
const asRow = (pieces: readonly Piece[]) => pieces.map(({ text, style }) => span(text, style));
/** No wider than the screen, as all rows are. */
const isDrawable = (pieces: readonly Piece[]): boolean =>
	displayWidth(rowText(asRow(pieces))) <= COLUMNS;
const pieces = fc.array(piece, { maxLength: 6 }).filter(isDrawable);
/** Mostly one that is changed in places, as from one frame to the next. */
const rows = fc
	.oneof(
		fc.tuple(pieces, pieces),
		fc.tuple(pieces, fc.array(fc.option(piece), { maxLength: 6 })).map(([before, changes]) => {
			return [before, before.map((one, at) => changes[at] ?? one)] as const;
		}),
	)
	.filter(([, after]) => isDrawable(after));
const styling = fc.constantFrom(
	stylingOf('dark', 24),
	stylingOf('amber', 8),
	stylingOf('dark', 4),
	null,
);

/** What is written for these rows when those were shown before. */
async function writtenFor(before: readonly string[], after: readonly string[]): Promise<string> {
	const stdout = Object.assign(new PassThrough(), {
		columns: COLUMNS,
		rows: before.length,
		isTTY: true,
	});
	let shown = before;
	const ui = startUi({
		shown,
		rowsAt: () => shown,
		onFault: (error) => {
			throw error;
		},
		stdout: stdout as unknown as NodeJS.WriteStream,
		stdin: new PassThrough() as unknown as NodeJS.ReadStream,
	});
	shown = after;
	stdout.read();
	ui.draw();
	await new Promise((done) => setTimeout(done, FRAME_MS));
	const written = String(stdout.read() ?? '');
	ui.unmount();
	return written;
}

/** Everything that can be seen in so many lines once this was written. */
async function seen(written: string, rows: number) {
	const terminal = new xterm.Terminal({
		cols: COLUMNS,
		rows,
		allowProposedApi: true,
		convertEol: true,
	});
	terminal.unicode.register(ONE_BY_ONE);
	terminal.unicode.activeVersion = ONE_BY_ONE.version;
	// Without wrapping, as the program has it.
	await new Promise<void>((done) => terminal.write(`\x1b[?7l${written}`, done));
	const lines = Array.from({ length: rows }, (_, y) => {
		const line = terminal.buffer.active.getLine(y)!;
		return Array.from({ length: COLUMNS }, (_unused, x) => {
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

test('rows that were changed look as those that were sent whole', async () => {
	const screens = fc.array(rows, { minLength: ROWS, maxLength: ROWS });
	await fc.assert(
		fc.asyncProperty(screens, styling, async (pairs, pens) => {
			const styled = (pieces: readonly Piece[]) => styledRow(asRow(pieces), pens, COLUMNS);
			const before = pairs.map(([one]) => styled(one));
			const after = pairs.map(([, other]) => styled(other));
			const update = await writtenFor(before, after);
			expect(await seen(before.join('\n') + update, ROWS)).toEqual(
				await seen(after.join('\n'), ROWS),
			);
		}),
		RUNS,
	);
});

const pens = stylingOf('dark', 24);

test('nothing is sent where nothing differs, nor for another color of a blank', async () => {
	const row = (style: SpanStyle) => styledRow([span('a  '), span('  ', style)], pens, COLUMNS);
	expect(row('accent')).toBe(row('dim'));
	expect(await writtenFor(['x', row('dim')], ['x', row('dim')])).toBe('');
});

test('of a row nothing is sent before its first difference', async () => {
	const row = (letter: string) => styledRow([span(`Memo: ${letter} and more`)], pens, COLUMNS);
	const update = await writtenFor(['x', row('q')], ['x', row('k')]);
	expect(update).toContain('k and more');
	expect(update).not.toContain('Memo');
	expect(update).not.toContain('x');
});
