// What each row of a table is: a song, an interval, the beginning of an encore, or none of them.

import { columnUse, type Use } from './columns.ts';
import { withoutGuard } from './formula-guard.ts';
import { type Field, type ListRow, rowWord, type SongRow } from './list-row.ts';
import { readLength } from './read-length.ts';
import type { TableRow } from './read-table.ts';
import type { Column } from './table-columns.ts';

const NO_FIELDS = {
	...{ length: null, tempo: null, gap: null, starts: null, ends: null, notes: [], hands: {} },
	...{ isExact: false, doubt: null, id: null },
} as const;

const ENCORE_MARK = /^(?:e|enc|encore)\W*\d*$/i;

export function rowsOf({ row, cells }: TableRow, columns: readonly Column[]): ListRow[] {
	const textOf = (use: Use): string => {
		const column = columns.find((one) => one.use === use);
		return column ? (cells[column.index] ?? '') : '';
	};
	const fieldOf = (use: Use): Field | null => {
		const column = columns.find((one) => one.use === use);
		const text = column ? (cells[column.index] ?? '') : '';
		if (!column || text === '') return null;
		const isMinutes = use === 'length' && column.isInMinutes && /^\d{1,2}(?:[.,]5)?$/.test(text);
		return { text: isMinutes ? `${text} min` : text, column: column.heading || use };
	};
	const hands = handsOf(cells, columns);
	const section = textOf('section').toLowerCase();
	const isExact = section !== '';
	const title = isExact ? withoutGuard(textOf('title')) : oneLine(textOf('title'));
	const titleColumn = columns.find(({ use }) => use === 'title')?.heading || 'title';
	const word = section === '' || section === 'interval' ? rowWord(title) : null;
	const isMark = ENCORE_MARK.test(textOf('number')) || section === 'encore';
	const encore: ListRow[] =
		isMark || section === 'set' ? [{ kind: 'encore', row, isEncore: section !== 'set' }] : [];
	const length = fieldOf('length');
	if (section === 'interval') return [{ kind: 'interval', row, length }];
	const inNumber = intervalInNumber(textOf('number'), title);
	if (inNumber) return [{ kind: 'interval', row, length: length ?? inNumber.length }];
	const hasMore = Object.keys(hands).length > 0 || textOf('tempo') !== '' || textOf('key') !== '';
	if (word?.is === 'total' && !hasMore)
		return [
			{ kind: 'aside', row, text: cells.filter((one) => one !== '').join(' '), why: 'total' },
		];
	if (word?.is === 'encore' && word.song === null && !hasMore)
		return [{ kind: 'encore', row, isEncore: true }];
	const isInterval = word?.is === 'interval' && !hasMore;
	const isDoubtful = isInterval && !word.isSure && textOf('number') !== '';
	if (isInterval && !isDoubtful) {
		const said = word.length === null ? null : { text: word.length, column: titleColumn };
		return [{ kind: 'interval', row, length: length ?? said }];
	}
	const split = word?.is === 'encore' && word.song !== null ? word.song : null;
	const song: SongRow = {
		...NO_FIELDS,
		...{ kind: 'song', row, titleColumn, length, hands },
		title: split ?? title,
		tempo: fieldOf('tempo'),
		gap: fieldOf('gap'),
		starts: startsField(fieldOf('starts'), isExact),
		ends: fieldOf('ends'),
		notes: isExact ? notesOf(cells, columns).map(withoutGuard) : notesOf(cells, columns),
		isExact,
		id: textOf('id') || null,
		doubt: isDoubtful ? { why: 'interval-or-song', piece: word.length ?? '', title } : null,
	};
	if (title === '') {
		const text = cells.filter((one) => one !== '').join(' ');
		const alone = wordAlone(cells);
		if (alone)
			return alone.is === 'encore'
				? [{ kind: 'encore', row, isEncore: true }]
				: [{ kind: 'interval', row, length }];
		return [...encore, { kind: 'aside', row, text: oneLine(text), why: 'no-title', song }];
	}
	return [
		...encore,
		...(split === null ? [] : [{ kind: 'encore', row, isEncore: true } as const]),
		withEnd(song),
	];
}

/** The word for an interval where the numbers stand, and its length or nothing where the titles do. */
function intervalInNumber(number: string, title: string): { readonly length: Field | null } | null {
	if (rowWord(number)?.is !== 'interval') return null;
	if (title === '') return { length: null };
	const isLength = readLength(title, true)?.seconds != null;
	return isLength ? { length: { text: title, column: number } } : null;
}

function startsField(field: Field | null, isExact: boolean): Field | null {
	return field && isExact ? { ...field, text: withoutGuard(field.text) } : field;
}

/** A row whose one cell, in whichever column, is a word for a mark. */
function wordAlone(cells: readonly string[]) {
	const said = cells.filter((one) => one !== '');
	const word = said.length === 1 ? rowWord(said[0] ?? '') : null;
	return word && word.is !== 'total' ? word : null;
}

/** `>>` behind a title says that the next song follows at once. */
function withEnd(song: SongRow): SongRow {
	const found = song.isExact ? null : /^(.*\S)\s*(?:>>+|→)$/u.exec(song.title);
	if (!found || song.ends) return song;
	return { ...song, title: found[1] ?? song.title, ends: { text: '>>', column: song.titleColumn } };
}

function handsOf(cells: readonly string[], columns: readonly Column[]): Record<string, Field> {
	const hands: Record<string, Field> = {};
	for (const { index, player, part } of columns) {
		const cell = cells[index] ?? '';
		if (!player || cell === '') continue;
		// A number in a column for capos is a fret.
		const text = part === 'capo' && /^\d/.test(cell) ? `c${cell}` : cell;
		if (part === 'capo' && /^(?:[-–—]+|0|no|none)$/i.test(cell)) continue;
		const before = hands[player.id];
		hands[player.id] = {
			text: before ? `${before.text} ${text}` : text,
			column: player.column,
		};
	}
	return hands;
}

function notesOf(cells: readonly string[], columns: readonly Column[]): readonly string[] {
	return columns.flatMap(({ index, use, heading }) => {
		const cell = (cells[index] ?? '').replace(/\s*\n\s*/g, ' ');
		if (cell === '') return [];
		if (use === 'key') return [`key ${cell}`];
		if (use !== 'notes') return [];
		return [columnUse(heading) === 'notes' || heading === '' ? cell : `${heading}: ${cell}`];
	});
}

function oneLine(text: string): string {
	return text.replace(/\s+/g, ' ').trim();
}
