// Two lists that stand beside each other in one table, as a page is filled: put under each other, the left one first.

import { columnUse, headingKey } from './columns.ts';
import type { Table, TableRow } from './read-table.ts';
import { rowWord } from './row-words.ts';
import { headingsAt } from './table-headings.ts';

export type Unfolded = {
	readonly rows: readonly TableRow[];
	/** How many lists stood side by side. */
	readonly count: number;
};

export function unfolded({ rows }: Table): Unfolded {
	const at = headingsAt(rows);
	const starts = at === -1 ? countedStarts(rows) : headedStarts(rows[at]?.cells ?? []);
	if (starts.length < 2) return { rows, count: 1 };
	const head = rows[at]?.cells ?? [];
	const columns = columnsUnder(head, starts);
	const body = rows.slice(at + 1);
	const over = rows[at - 1];
	// `SET 1` and `SET 2` above the two are headings of parts, not of the whole.
	const hasParts = over?.cells.some((cell) => rowWord(cell)?.is === 'set') ?? false;
	const stacked = starts.flatMap((start, block) => {
		const end = starts[block + 1] ?? Number.POSITIVE_INFINITY;
		const own = ({ row, cells }: TableRow): TableRow[] => {
			const placed: string[] = [];
			for (const [index, column] of columns.entries()) {
				const from = column[block];
				placed[index] = from === undefined ? '' : (cells[from] ?? '');
			}
			return placed.some((cell) => cell !== '') ? [{ row, cells: placed, block }] : [];
		};
		const part = hasParts ? over?.cells.slice(start, end).find((cell) => cell !== '') : undefined;
		const heading = part === undefined ? [] : [{ row: over?.row ?? 1, cells: [part], block }];
		return [...heading, ...body.flatMap(own)];
	});
	const above = at === -1 ? [] : rows.slice(0, hasParts ? at - 1 : at);
	const headings =
		at === -1
			? []
			: [
					{
						row: rows[at]?.row ?? 1,
						cells: columns.map(
							(column) => head[column.find((one) => one !== undefined) ?? -1] ?? '',
						),
					},
				];
	return { rows: [...above, ...headings, ...stacked], count: starts.length };
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
