// Every key with its words, and what the marks on the rack mean.

import { displayWidth } from '../base/display-width.ts';
import type { KeyWords } from '../keys/prompt-view.ts';
import { markLegend } from './rack-view.ts';
import { type Area, cutRow, fillRow, type Row, span } from './row.ts';

/** All keys in as many columns as they need to fit, read downwards; then the marks. */
export function helpRows(help: readonly KeyWords[], { columns, rows }: Area): Row[] {
	const room = Math.max(1, rows - 2);
	const across = Math.max(1, Math.ceil(help.length / room), columns >= 120 ? 2 : 1);
	const down = Math.ceil(help.length / across);
	const width = Math.max(1, Math.floor(columns / across));
	const keyColumns = Math.min(12, Math.max(0, ...help.map(({ key }) => displayWidth(key))) + 2);
	const cells = help.map(
		({ key, words }): Row => [...fillRow([span(key)], keyColumns), span(words, 'dim')],
	);
	const lines = Array.from({ length: down }, (_, row) =>
		Array.from({ length: across }, (__, column) =>
			fillRow(cutRow(cells[column * down + row] ?? [], width - 1), width),
		).flat(),
	);
	return [[span('KEYS', 'title')], ...lines.slice(0, room), markLegend()].slice(0, rows);
}
