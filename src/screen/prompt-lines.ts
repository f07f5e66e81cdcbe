// The lines under a question together with what is only good to know: beside them where they are short
// enough for it, below them where rows are left, else not at all.

import { displayWidth } from '../base/display-width.ts';
import type { PromptView } from '../keys/prompt-view.ts';
import type { Area } from './row.ts';

/** Between what must be read and what stands beside it. */
const GAP_COLUMNS = 3;

/** The lines for so many rows and columns; what must be read is whole and first, however little room there is. */
export function promptLines(
	{ lines, more = [] }: Pick<PromptView, 'lines' | 'more'>,
	{ columns, rows }: Area,
): readonly string[] {
	for (let count = more.length; count > 0; count -= 1) {
		const column = joined(more.slice(0, count));
		const at = widest(lines.slice(0, column.length)) + GAP_COLUMNS;
		if (column.length > rows || at + widest(column) > columns) continue;
		const high = Math.max(lines.length, column.length);
		const placed = Array.from({ length: high }, (_, index) => {
			const line = lines[index] ?? '';
			const other = column[index] ?? '';
			return other === '' ? line : `${line}${padding(line, at)}${other}`;
		});
		return below(placed, more.slice(count), rows);
	}
	return below(lines, more, rows);
}

/** As many of the blocks as find room under the lines, a blank line before each. */
function below(
	lines: readonly string[],
	blocks: readonly (readonly string[])[],
	rows: number,
): readonly string[] {
	const all = [...lines];
	for (const block of blocks) {
		if (all.length + 1 + block.length <= rows) all.push('', ...block);
	}
	return all;
}

function joined(blocks: readonly (readonly string[])[]): readonly string[] {
	return blocks.flatMap((block, index) => (index === 0 ? block : ['', ...block]));
}

function widest(lines: readonly string[]): number {
	return Math.max(0, ...lines.map(displayWidth));
}

function padding(line: string, columns: number): string {
	return ' '.repeat(Math.max(0, columns - displayWidth(line)));
}
