// Where the headings of a table are: in one row, or in two where some are merged over several columns.

import { columnUse, headingKey, playerPartOf } from './columns.ts';
import { kindIn } from './guess-kind.ts';
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
	/** Whether the groups are sorts of instruments over columns of players, each with a heading of its own. */
	readonly areGroupsKinds: boolean;
	/** Columns right under the name of a sort of instrument. */
	readonly kindColumns: ReadonlySet<number>;
	readonly above: readonly string[];
	readonly body: readonly TableRow[];
	readonly headingRow: number;
	readonly isHeaded: boolean;
};

export function headingsOf({ rows }: Pick<Table, 'rows'>): Headed {
	const width = Math.max(...rows.map(({ cells }) => cells.length));
	const wide = (cells: readonly string[]) =>
		Array.from({ length: width }, (_, i) => cells[i] ?? '');
	const at = headingsAt(rows);
	if (at === -1) {
		const none = { groups: wide([]), above: [], body: rows, headingRow: 0, isHeaded: false };
		return { ...none, headings: wide([]), areGroupsKinds: false, kindColumns: new Set() };
	}
	const main = wide(rows[at]?.cells ?? []);
	const below = wide(rows[at + 1]?.cells ?? []);
	// Under a merged heading stand parts of a player; beside them a length may stand under nothing.
	const isSubRow =
		below.some(isSubHeading) &&
		below.every(
			(one, i) => one === '' || isSubHeading(one) || (main[i] === '' && columnUse(one) !== 'other'),
		);
	const before = wide(rows[at - 1]?.cells ?? []);
	const isGroupRow = !isSubRow && groupFits(before, main);
	const areGroupsKinds = !isSubRow && !isGroupRow && kindsFit(before, main);
	const above = rows
		.slice(0, isGroupRow || areGroupsKinds ? at - 1 : at)
		.map(({ cells }) => cells.filter((one) => one !== '').join(' '));
	return {
		headings: isSubRow ? main.map((one, i) => below[i] || one) : main,
		groups: isSubRow
			? spread(main, (i) => isSubHeading(below[i] ?? ''))
			: isGroupRow
				? spread(before, (i) => isSubHeading(main[i] ?? '') || main[i] === '')
				: areGroupsKinds
					? spread(before, (i) => isOwnHeading(main[i] ?? ''))
					: wide([]),
		...{ areGroupsKinds, above },
		kindColumns: new Set(
			before.flatMap((one, i) => (areGroupsKinds && kindIn(one) !== null ? [i] : [])),
		),
		body: rows.slice(at + (isSubRow ? 2 : 1)),
		headingRow: rows[at]?.row ?? 1,
		isHeaded: true,
	};
}

/** The first of the rows that have the most known headings and one for titles; -1 for none. */
export function headingsAt(rows: readonly TableRow[]): number {
	const known = rows
		.slice(0, HEADINGS_WITHIN)
		.map((row) => (row.cells.some((cell) => columnUse(cell) === 'title') ? knownHeadings(row) : 0));
	const most = Math.max(0, ...known);
	return most === 0 ? -1 : known.indexOf(most);
}

/** Whether these cells are the headings once more, as at the top of each page. */
export function isHeadingsAgain(cells: readonly string[], headings: readonly string[]): boolean {
	const said = cells.flatMap((cell, i) => (cell === '' ? [] : [[cell, headings[i] ?? '']]));
	return (
		said.length > 1 && said.every(([cell, own]) => headingKey(cell ?? '') === headingKey(own ?? ''))
	);
}

function isSubHeading(text: string): boolean {
	const found = playerPartOf(text);
	return found !== null && found.player === '';
}

/** A row of groups names no column of its own by a word of the list, and stands over columns of players. */
function groupFits(before: readonly string[], main: readonly string[]): boolean {
	return before.some((one, i) => one !== '' && isSubHeading(main[i] ?? ''));
}

/** One says a sort of instrument right over a player's heading, and none stands over a column of the list's own. */
function kindsFit(before: readonly string[], main: readonly string[]): boolean {
	const said = before.flatMap((one, i) => (one === '' ? [] : [{ one, heading: main[i] ?? '' }]));
	return (
		said.some(({ one, heading }) => kindIn(one) !== null && isOwnHeading(heading)) &&
		said.every(({ one, heading }) => columnUse(heading) === 'other' && one.length <= 40)
	);
}

/** A heading that no list has: a player's, or one of the act's own. */
function isOwnHeading(heading: string): boolean {
	return heading !== '' && columnUse(heading) === 'other';
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
