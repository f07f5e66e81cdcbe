// Where the headings of a table are: in one row, or in two where some are merged over several columns.

import { columnUse, playerPartOf } from './columns.ts';
import type { Table, TableRow } from './read-table.ts';

/** Rows among which the headings are looked for. */
export const HEADINGS_WITHIN = 20;

/** How many different known headings a row has, one more where titles are among them. */
export function knownHeadings({ cells }: TableRow): number {
	const uses = cells.map(columnUse).filter((use) => use !== 'other');
	return uses.includes('title') ? new Set(uses).size + 1 : new Set(uses).size;
}

export type Headed = {
	readonly headings: readonly string[];
	/** Above each heading in a row of its own, spread over what it is merged across. */
	readonly groups: readonly string[];
	readonly above: readonly string[];
	readonly body: readonly TableRow[];
	readonly headingRow: number;
	readonly isHeaded: boolean;
};

export function headingsOf({ rows }: Table): Headed {
	const width = Math.max(...rows.map(({ cells }) => cells.length));
	const wide = (cells: readonly string[]) =>
		Array.from({ length: width }, (_, i) => cells[i] ?? '');
	const looked = rows.slice(0, HEADINGS_WITHIN);
	const at = looked.findIndex(({ cells }) => cells.some((cell) => columnUse(cell) === 'title'));
	const none = { groups: wide([]), above: [], body: rows, headingRow: 0, isHeaded: false };
	if (at === -1) return { ...none, headings: wide([]) };
	const main = wide(rows[at]?.cells ?? []);
	const below = wide(rows[at + 1]?.cells ?? []);
	const isSubRow =
		below.some((one) => one !== '') && below.every((one) => one === '' || isSubHeading(one));
	const before = wide(rows[at - 1]?.cells ?? []);
	const isGroupRow =
		!isSubRow && at > 0 && before.filter((one) => one !== '').length > 0 && groupFits(before, main);
	const above = rows
		.slice(0, isGroupRow ? at - 1 : at)
		.map(({ cells }) => cells.filter((one) => one !== '').join(' '));
	return {
		headings: isSubRow ? main.map((one, i) => below[i] || one) : main,
		groups: isSubRow
			? spread(main, (i) => (below[i] ?? '') !== '')
			: isGroupRow
				? spread(before, (i) => isSubHeading(main[i] ?? '') || main[i] === '')
				: wide([]),
		above,
		body: rows.slice(at + (isSubRow ? 2 : 1)),
		headingRow: rows[at]?.row ?? 1,
		isHeaded: true,
	};
}

function isSubHeading(text: string): boolean {
	const found = playerPartOf(text);
	return found !== null && found.player === '';
}

/** A row of groups names no column of its own by a word of the list, and stands over columns of players. */
function groupFits(before: readonly string[], main: readonly string[]): boolean {
	return before.some((one, i) => one !== '' && isSubHeading(main[i] ?? ''));
}

/** A merged heading stands in its first cell; the others that it covers are empty. */
function spread(row: readonly string[], isCovered: (index: number) => boolean): string[] {
	let last = '';
	return row.map((one, index) => {
		if (one !== '') last = one;
		else if (!isCovered(index)) last = '';
		return isCovered(index) ? last : '';
	});
}
