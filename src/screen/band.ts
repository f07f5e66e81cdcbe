// The two rows of whoever leads through a rehearsal night, above all else: what to do, and with which keys.
// Always two, so that nothing below them moves.

import { type Area, cutRow, placeAt, type Row, rowWidth, span } from './row.ts';
import type { Band } from './screen-state.ts';

const LABEL_COLUMNS = 6;

/** Lower screens need every row for the night itself. */
const LEAST_ROWS = 12;

/** The rows of the band on a screen of this size; none where there is none, or no room for one. */
export function bandRows(band: Band | undefined, { columns, rows }: Area): Row[] {
	if (band === undefined || rows < 2) return [];
	const { label, words, under, hint } = band;
	const first = placeAt(columns, [
		[0, [span(label, 'title')]],
		[LABEL_COLUMNS, [span(words, 'bright')]],
	]);
	if (rows < LEAST_ROWS) return [first];
	const right = [span(hint, 'dim')];
	const at = columns - rowWidth(right);
	return [
		first,
		cutRow(
			placeAt(columns, [
				[LABEL_COLUMNS, [span(under)]],
				...(at > LABEL_COLUMNS + rowWidth([span(under)]) ? [[at, right] as const] : []),
			]),
			columns,
		),
	];
}
