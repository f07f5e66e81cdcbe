// From the text of a set list to its rows: which reader takes it.

import { isLines, tableInLines } from './lines-or-table.ts';
import type { Rack } from './list-reading.ts';
import type { SetList } from './list-row.ts';
import { readListedShow } from './read-listed-show.ts';
import { readPastedList } from './read-pasted-list.ts';
import { readSetTable, type SetTable } from './read-set-table.ts';

/** More is no set list, and would keep the reader for ever. */
const MOST_CHARACTERS = 1_000_000;

export type ListText = {
	readonly text: string;
	readonly form: 'table' | 'lines';
	/** Heading to player's id, as asked for. */
	readonly columns: Readonly<Record<string, string>>;
	readonly rack: Rack;
};

export type ReadList =
	| { readonly ok: true; readonly list: SetList }
	| Extract<SetTable, { ok: false }>
	| { readonly ok: false; readonly code: 'too-long' | 'no-songs' };

/** The rows of the text; its cells are not read yet. */
export function readSetList({ text, form, columns, rack }: ListText): ReadList {
	if (text.length > MOST_CHARACTERS) return { ok: false, code: 'too-long' };
	const { players, abbreviations } = rack;
	const listed = text.trimStart().startsWith('{') ? readListedShow(text) : null;
	const inLines = form === 'lines' ? tableInLines(text) : null;
	const isOneColumn = form === 'table' && Object.keys(columns).length === 0 && isLines(text);
	const asTable = (table: string) => readSetTable(table, { columns, players, abbreviations });
	const asLines = (): SetTable => ({
		ok: true,
		list: readPastedList(text, { players, abbreviations }),
	});
	const read: SetTable = listed
		? { ok: true, list: listed }
		: inLines !== null
			? saying(asTable(inLines), 'as-table')
			: isOneColumn
				? saying(asLines(), 'as-lines')
				: form === 'table'
					? asTable(text)
					: asLines();
	if (!read.ok) return read;
	const hasSongs = read.list.rows.some(({ kind }) => kind === 'song');
	return hasSongs ? read : { ok: false, code: 'no-songs' };
}

function saying(read: SetTable, code: 'as-table' | 'as-lines'): SetTable {
	if (!read.ok) return read;
	return { ok: true, list: { ...read.list, decided: [{ code }, ...read.list.decided] } };
}
