// Two lists that stand beside each other in one table, as a page is filled: put under each other, the left one first.

import { columnUse, headingKey } from './columns.ts';
import type { Table, TableRow } from './read-table.ts';
import { rowWord } from './row-words.ts';
import { HEADINGS_WITHIN, headingsAt } from './table-headings.ts';

export type Unfolded = {
	readonly rows: readonly TableRow[];
	/** How many lists stood side by side. */
	readonly count: number;
};

export function unfolded({ rows }: Table): Unfolded {
	const headingsRow = headingsAt(rows);
	const partsRow = headingsRow === -1 ? partsAt(rows) : headingsRow - 1;
	const starts =
		headingsRow !== -1
			? headedStarts(rows[headingsRow]?.cells ?? [])
			: partsRow !== -1
				? partStarts(rows[partsRow]?.cells ?? [])
				: countedStarts(rows);
	if (starts.length < 2) return { rows, count: 1 };
	const head = rows[headingsRow]?.cells ?? [];
	const columns = columnsUnder(head, starts);
	const over = rows[partsRow];
	// `SET 1` and `SET 2` above the two are headings of parts, not of the whole.
	const hasParts = over?.cells.some(isPart) ?? false;
	const body = rows.slice(Math.max(headingsRow, hasParts ? partsRow : -1) + 1);
	const stacked = starts.flatMap((start, block) => {
		const end = starts[block + 1] ?? Number.POSITIVE_INFINITY;
		const own = ({ row, cells }: TableRow): TableRow[] => {
			const placed = columns.map((column) => cells[column[block] ?? -1] ?? '');
			return placed.some((cell) => cell !== '') ? [{ row, cells: placed, block }] : [];
		};
		const part = hasParts ? over?.cells.slice(start, end).find((cell) => cell !== '') : undefined;
		const heading = part === undefined ? [] : [{ row: over?.row ?? 1, cells: [part], block }];
		return [...heading, ...body.flatMap(own)];
	});
	const above = rows.slice(0, Math.max(0, hasParts ? partsRow : headingsRow));
	const placesOf = (column: readonly (number | undefined)[]) =>
		column.find((one) => one !== undefined);
	const headings =
		headingsRow === -1
			? []
			: [
					{
						row: rows[headingsRow]?.row ?? 1,
						cells: columns.map((column) => head[placesOf(column) ?? -1] ?? ''),
					},
				];
	return { rows: [...above, ...headings, ...stacked], count: starts.length };
}

function isPart(cell: string): boolean {
	const word = rowWord(cell);
	return word?.is === 'set' || (word?.is === 'encore' && word.song === null);
}

/** The row in which several parts of a list begin beside each other; -1 for none. */
function partsAt(rows: readonly TableRow[]): number {
	return rows.slice(0, HEADINGS_WITHIN).findIndex(({ cells }) => {
		const said = cells.filter((cell) => cell !== '');
		return said.length > 1 && said.every(isPart);
	});
}

function partStarts(cells: readonly string[]): readonly number[] {
	return [...cells.keys()].filter((index) => isPart(cells[index] ?? ''));
}

/** Where each list begins: at a heading for titles that comes again, or as far before it as in the first list. */
function headedStarts(head: readonly string[]): readonly number[] {
	const isTitle = (cell: string | undefined) => columnUse(cell ?? '') === 'title';
	const first = head.findIndex(isTitle);
	const key = headingKey(head[first] ?? '');
	const titles = [...head.keys()].filter(
		(i) => isTitle(head[i]) && headingKey(head[i] ?? '') === key,
	);
	const from = head.findIndex((cell) => cell !== '');
	return titles.map((title) => {
		const by = title - first;
		const isAlike = head
			.slice(from, first)
			.every((cell, i) => headingKey(cell) === headingKey(head[from + by + i] ?? ''));
		return isAlike ? from + by : title;
	});
}

/** Where a column counts on from the last number of one before it. */
function countedStarts(rows: readonly TableRow[]): readonly number[] {
	const width = Math.max(0, ...rows.map(({ cells }) => cells.length));
	const runs = Array.from({ length: width }, (_, index) => {
		const said = rows.map(({ cells }) => cells[index] ?? '').filter((cell) => cell !== '');
		const numbers = said.map((cell) =>
			/^\d{1,3}[.)]?$/.test(cell) ? Number.parseInt(cell, 10) : Number.NaN,
		);
		const isRun =
			numbers.length > 2 && numbers.every((one, i) => i === 0 || one === (numbers[i - 1] ?? 0) + 1);
		return isRun ? { index, first: numbers[0] ?? 0, last: numbers.at(-1) ?? 0 } : null;
	}).filter((run) => run !== null);
	const starts: number[] = [];
	let last: number | null = null;
	for (const run of runs) {
		if (last !== null && run.first !== last + 1) continue;
		starts.push(run.index);
		last = run.last;
	}
	return starts;
}

/** For each column of the list, where each block has it: by its heading, and where there is none by its place. */
function columnsUnder(
	head: readonly string[],
	starts: readonly number[],
): readonly (readonly (number | undefined)[])[] {
	const width = Math.max(head.length, (starts.at(-1) ?? 0) + (starts[1] ?? 0) - (starts[0] ?? 0));
	const columns: { readonly key: string; readonly places: (number | undefined)[] }[] = [];
	for (const [block, start] of starts.entries()) {
		const end = starts[block + 1] ?? width;
		// What stands before the first list belongs to it.
		for (let index = block === 0 ? 0 : start; index < end; index += 1) {
			const heading = headingKey(head[index] ?? '');
			const key = heading === '' ? `+${index - start}` : heading;
			const there = columns.find((one) => one.key === key && one.places[block] === undefined);
			if (there) there.places[block] = index;
			else {
				const places: (number | undefined)[] = [];
				places[block] = index;
				columns.push({ key, places });
			}
		}
	}
	return columns.map(({ places }) => places);
}
