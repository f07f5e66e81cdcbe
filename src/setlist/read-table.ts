// A table as a spreadsheet gives it: commas, tabs or semicolons, quoted line breaks. The CSV library reads it;
// which sign divides the cells is tried, since nothing in the file says so.

import { parse } from 'csv-parse/sync';

/** Rows of the table that say anything, numbered as a spreadsheet does. */
export type Table = {
	readonly rows: readonly TableRow[];
	/** A quote was opened and never closed, so quotes are read as any other sign. */
	readonly isQuoteLoose: boolean;
};

export type TableRow = {
	readonly row: number;
	readonly cells: readonly string[];
	/** Which of several lists side by side it is of, from 0. */
	readonly block?: number;
};

const DELIMITERS = ['\t', ';', ','] as const;

/** A quote alone in its cell is a ditto mark, as in a list written by hand. */
const LONE_QUOTE = /(?<=^|[\t;,])"(?=[\t;,]|$)/gm;

const LONGEST_CELL = 20_000;

/** The table; `score` says how well a way of dividing suits, the best of the three is taken. */
export function readTable(text: string, score: (table: Table) => number): Table {
	const tables = DELIMITERS.map((delimiter) => divided(text, delimiter));
	const scored = tables.map((table) => ({ table, points: score(table) }));
	const best = Math.max(...scored.map(({ points }) => points));
	return scored.find(({ points }) => points === best)?.table ?? { rows: [], isQuoteLoose: false };
}

function divided(text: string, delimiter: string): Table {
	const strict = records(text, delimiter, true);
	// Two ditto marks are a pair of quotes to the library, and swallow the rows between them.
	const hasSwallowed = strict
		?.flat()
		.some((cell) => cell.includes('\n') && cell.includes(delimiter));
	const marked =
		strict === null || hasSwallowed === true
			? records(text.replace(LONE_QUOTE, '""""'), delimiter, true)
			: null;
	const quoted = marked ?? strict;
	if (quoted) return { rows: numbered(quoted), isQuoteLoose: false };
	const loose = records(text, delimiter, false) ?? [];
	return { rows: numbered(loose), isQuoteLoose: true };
}

function records(text: string, delimiter: string, isQuoted: boolean): string[][] | null {
	try {
		return parse(text, {
			...{ delimiter, relax_column_count: true, relax_quotes: true, record_delimiter: '\n' },
			...{ skip_empty_lines: false, max_record_size: LONGEST_CELL * 10 },
			quote: isQuoted ? '"' : false,
		}) as string[][];
	} catch (error) {
		if (error instanceof Error && 'code' in error) return null;
		throw error;
	}
}

function numbered(all: readonly (readonly string[])[]): TableRow[] {
	return all
		.map((cells, index) => ({ row: index + 1, cells: cells.map((cell) => cell.trim()) }))
		.filter(({ cells }) => cells.some((cell) => cell !== ''));
}
