// From the text of a set list to its reading: which reader takes it, what was answered to what it asked.

import { type Asked, draftFromList, type ListReading, type Rack } from './draft-from-list.ts';
import type { Field, ListRow, SetList } from './list-row.ts';
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
	const read: SetTable = listed
		? { ok: true, list: listed }
		: form === 'table'
			? readSetTable(text, { columns, players, abbreviations })
			: { ok: true, list: readPastedList(text, { players, abbreviations }) };
	if (!read.ok) return read;
	const hasSongs = read.list.rows.some(({ kind }) => kind === 'song');
	return hasSongs ? read : { ok: false, code: 'no-songs' };
}

/** What a cell means, by its row and column. */
export type Answers = ReadonlyMap<string, string>;

export function answerKey({ row, column }: Pick<Asked, 'row' | 'column'>): string {
	return `${row} ${column}`;
}

/** The show of these rows, each cell that was answered read as the answer. */
export function readingOf(list: SetList, rack: Rack, answers: Answers): ListReading {
	if (answers.size === 0) return draftFromList(list, rack);
	return draftFromList({ ...list, rows: list.rows.map((row) => answered(row, answers)) }, rack);
}

function answered(row: ListRow, answers: Answers): ListRow {
	if (row.kind !== 'song' && row.kind !== 'interval') return row;
	const with_ = (field: Field | null): Field | null => {
		const answer = field && answers.get(answerKey({ row: row.row, column: field.column }));
		return field && answer !== null && answer !== undefined ? { ...field, text: answer } : field;
	};
	if (row.kind === 'interval') return { ...row, length: with_(row.length) };
	return {
		...row,
		length: with_(row.length),
		tempo: with_(row.tempo),
		gap: with_(row.gap),
		starts: with_(row.starts),
		ends: with_(row.ends),
		hands: Object.fromEntries(
			Object.entries(row.hands).map(([player, field]) => [player, with_(field) ?? field]),
		),
	};
}

/** What is a question of a cell, and no matter of the whole row. */
export function canBeAnswered({ why }: Asked): boolean {
	return !NOT_OF_A_CELL.has(why);
}

const NOT_OF_A_CELL: ReadonlySet<Asked['why']> = new Set([
	'length-or-title',
	'interval-or-song',
	'which-player',
	'shorthand-in-title',
	'no-title',
	'interval-place',
	'empty-encore',
	'title-too-long',
	'column-unclear',
]);
