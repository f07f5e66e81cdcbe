// A picture of a terminal's cells, as SVG: letters of equal style in one text, stretched to their
// columns whatever font there is, and half blocks as shapes, so that tall glyphs have no gaps.

import { FIELD } from '../../src/screen/tones.ts';
import type { SeenCell } from './seen-cells.ts';

const CELL = { width: 9, height: 19, baseline: 14.5, fontSize: 15 };
const MARGIN = 14;

/** Where each block begins within its cell, and how much of the height it takes. */
const BLOCKS: Readonly<Record<string, readonly [top: number, height: number]>> = {
	'█': [0, 1],
	'▀': [0, 0.5],
	'▄': [0.5, 0.5],
};

/** The picture; `words` say what is on it to those who cannot see it. */
export function screenSvg(cells: readonly (readonly SeenCell[])[], words: string): string {
	const width = Math.max(0, ...cells.map((row) => row.length)) * CELL.width + 2 * MARGIN;
	const height = cells.length * CELL.height + 2 * MARGIN;
	return [
		`<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 ${width} ${height}" width="${width}" height="${height}" role="img">`,
		`<title>${escaped(words)}</title>`,
		`<rect width="${width}" height="${height}" rx="6" fill="${FIELD.rgb}"/>`,
		`<g font-family="ui-monospace, Menlo, Consolas, 'DejaVu Sans Mono', 'Liberation Mono', monospace" font-size="${CELL.fontSize}">`,
		...cells.flatMap((row, index) => rowSvg(row, MARGIN + index * CELL.height)),
		'</g>',
		'</svg>',
		'',
	].join('\n');
}

function rowSvg(row: readonly SeenCell[], top: number): string[] {
	return runsOf(row).map(({ column, cells }) => {
		const [{ text, color, isBold }] = cells as [SeenCell];
		const x = MARGIN + column * CELL.width;
		const width = cells.length * CELL.width;
		const fill = `fill="${color ?? '#c0c0c0'}"`;
		const block = BLOCKS[text];
		if (block !== undefined) {
			const [from, part] = [block[0] * CELL.height, block[1] * CELL.height];
			return `<rect x="${x}" y="${top + from}" width="${width}" height="${part}" ${fill}/>`;
		}
		const letters = cells.map((one) => one.text || ' ').join('');
		const weight = isBold ? ' font-weight="bold"' : '';
		return `<text xml:space="preserve" x="${x}" y="${top + CELL.baseline}" textLength="${width}" lengthAdjust="spacingAndGlyphs" ${fill}${weight}>${escaped(letters)}</text>`;
	});
}

type Run = { readonly column: number; readonly cells: SeenCell[] };

/** Cells that are drawn in one go: the same block, or letters of one style with single blanks between. */
function runsOf(row: readonly SeenCell[]): Run[] {
	const runs: Run[] = [];
	let last: Run | undefined;
	for (const [column, cell] of row.entries()) {
		const before = row[column - 1];
		const isWideRest =
			cell.text === '' &&
			before !== undefined &&
			kindOf(before) === '' &&
			/\P{ASCII}/u.test(before.text);
		const after = row[column + 1];
		const isGap = cell.text === '' && last !== undefined && after !== undefined;
		const isSame = (one: SeenCell) =>
			last !== undefined &&
			one.color === last.cells[0]?.color &&
			one.isBold === last.cells[0]?.isBold &&
			kindOf(one) === kindOf(last.cells[0]);
		if (cell.text !== '' && isSame(cell)) last?.cells.push(cell);
		else if (cell.text !== '') {
			last = { column, cells: [cell] };
			runs.push(last);
		} else if (
			isWideRest ||
			(isGap && after.text !== '' && isSame(after) && kindOf(after) === '')
		) {
			last?.cells.push({ ...cell, text: '' });
		} else last = undefined;
	}
	return runs;
}

/** The block that a cell is, or nothing for letters. */
const kindOf = ({ text }: SeenCell): string => (text in BLOCKS ? text : '');

const escaped = (text: string): string =>
	text.replaceAll('&', '&amp;').replaceAll('<', '&lt;').replaceAll('>', '&gt;');
