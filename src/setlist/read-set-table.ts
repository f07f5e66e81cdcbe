// A table as a set list: where its headings are, whose each column is, what each row is.

import type { TableWishes } from './column-reader.ts';
import { headingKey } from './columns.ts';
import { LONGEST_NAME } from './headed-players.ts';
import { legendOf } from './legend.ts';
import type { Decided, SetList } from './list-row.ts';
import { isOfDay, listedDay, withoutHours } from './listed-day.ts';
import { readTable, type Table } from './read-table.ts';
import { unfolded } from './side-by-side.ts';
import { columnsOf, playersOf } from './table-columns.ts';
import { HEADINGS_WITHIN, headingsOf, knownHeadings } from './table-headings.ts';
import { tableRows } from './table-rows.ts';

export type SetTable =
	| { readonly ok: true; readonly list: SetList }
	| { readonly ok: false; readonly code: 'no-rows' | 'no-title' }
	| {
			readonly ok: false;
			readonly code: 'no-such-column';
			readonly column: string;
			readonly known: readonly string[];
	  };

/** The set list of the text of a CSV, TSV or semicolon file. */
export function readSetTable(text: string, wishes: TableWishes): SetTable {
	const table = readTable(text, (one) => scoreOf(one));
	if (table.rows.length === 0) return { ok: false, code: 'no-rows' };
	const { rows: allRows, count } = unfolded(table);
	const headed = headingsOf({ rows: allRows });
	const asked = Object.keys(wishes.columns).find(
		(column) => !headed.headings.some((one) => headingKey(one) === headingKey(column)),
	);
	if (asked !== undefined) {
		const known = headed.headings.filter((one) => one !== '');
		return { ok: false, code: 'no-such-column', column: asked, known };
	}
	const decided: Decided[] = [];
	if (count > 1) decided.push({ code: 'side-by-side', count });
	const columns = columnsOf(headed, wishes, decided);
	const titleColumn = columns.find(({ use }) => use === 'title');
	if (!titleColumn) return { ok: false, code: 'no-title' };
	if (!headed.isHeaded) decided.push({ code: 'no-headings', title: String(titleColumn.index + 1) });
	// As over a list of lines, what stands on top is what the show is called.
	const over = headed.above.filter((one) => one !== '');
	const onTop = over.find((one) => !isOfDay(one));
	const rows = tableRows(headed, columns);
	const among = rows.flatMap((row) =>
		row.kind === 'aside' && (row.why === 'no-song' || row.why === 'total') ? [row.text] : [],
	);
	const day = listedDay([...headed.above, ...among]);
	const above = withoutHours(
		over.filter((one) => one !== onTop),
		day,
	);
	if (above.length > 0) decided.push({ code: 'above', texts: above });
	const unused = withoutHours(among, day);
	if (unused.length > 0) decided.push({ code: 'among', texts: unused });
	return {
		ok: true,
		list: {
			title: onTop?.replace(TITLE_LABEL, '').slice(0, LONGEST_NAME) ?? null,
			players: playersOf(columns),
			rows,
			// Of lists side by side a row stands in each.
			rowCount: new Set(headed.body.flatMap(({ row }) => (row > headed.headingRow ? [row] : [])))
				.size,
			decided,
			abbreviations: legendOf(rows),
			day,
		},
	};
}

/** What a sheet writes before the name of the show. */
const TITLE_LABEL = /^(?:act|band|artist|show|title|event|production)\s*:\s*(?=\S)/i;

/** Known headings weigh most, then how even the rows are. */
function scoreOf({ rows }: Table): number {
	const best = Math.max(0, ...rows.slice(0, HEADINGS_WITHIN).map(knownHeadings));
	const widths = rows.map(({ cells }) => cells.length);
	const common = [...new Set(widths)]
		.map((width) => ({ width, count: widths.filter((one) => one === width).length }))
		.sort((a, b) => b.count - a.count)[0];
	const even = common && common.width > 1 ? common.count / rows.length : 0;
	return best * 10 + even * 5;
}
