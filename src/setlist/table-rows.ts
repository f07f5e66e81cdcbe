// What each row of a table is: a song, an interval, the beginning of an encore, or none of them.

import type { Column } from './column-reader.ts';
import { columnUse, type Use } from './columns.ts';
import { withoutGuard } from './formula-guard.ts';
import { isLegend } from './legend.ts';
import type { AsideWhy, Field, ListRow, SongRow } from './list-row.ts';
import { readLength } from './read-length.ts';
import type { TableRow } from './read-table.ts';
import { isOfTheDay, rowWord } from './row-words.ts';
import { type Headed, isHeadingsAgain } from './table-headings.ts';

const NO_FIELDS = {
	...{ length: null, tempo: null, gap: null, starts: null, ends: null, notes: [], hands: {} },
	...{ isExact: false, doubt: null, id: null },
} as const;

const ENCORE_MARK = /^(?:e|enc|encore|z|zugabe|rappel|bis|toegift)\W*\d*$/i;

/** What each row below the headings is. */
export function tableRows({ body, headings }: Headed, columns: readonly Column[]): ListRow[] {
	const reader: RowReader = { headings, columns, isNumbered: areNumbered(body, columns) };
	return withoutDittos(body, columns).flatMap((row) => rowsOf(row, reader));
}

type RowReader = {
	readonly headings: readonly string[];
	readonly columns: readonly Column[];
	/** Whether the songs have numbers, so that what has none is likelier a heading. */
	readonly isNumbered: boolean;
};

function areNumbered(body: readonly TableRow[], columns: readonly Column[]): boolean {
	const at = (use: Use) => columns.find((one) => one.use === use)?.index ?? -1;
	const titled = body.filter(({ cells }) => (cells[at('title')] ?? '') !== '');
	const numbered = titled.filter(({ cells }) => NUMBER.test(cells[at('number')] ?? ''));
	return numbered.length >= 3 && numbered.length >= titled.length * 0.6;
}

/** `Spares: Jackdaw`. */
const LABELLED = /^(?:spares?|gear|notes?|crew|bring|backline|techs?|nb|ps)\b[^:]{0,20}:\s/i;
const NUMBER = /^\W*\d{1,3}\W*[a-z]?$/i;

function rowsOf({ row, cells, block = 0 }: TableRow, reader: RowReader): ListRow[] {
	const { columns } = reader;
	// Side by side the same heading stands over each list.
	const named = (column: string) => (block === 0 ? column : `${column} (${block + 1})`);
	const textOf = (use: Use): string => {
		const column = columns.find((one) => one.use === use);
		return column ? (cells[column.index] ?? '') : '';
	};
	const fieldOf = (use: Use): Field | null => {
		const column = columns.find((one) => one.use === use);
		const text = column ? (cells[column.index] ?? '') : '';
		if (!column || text === '') return null;
		const isMinutes = use === 'length' && column.isInMinutes && /^\d{1,2}(?:[.,]5)?$/.test(text);
		const isDotted = use === 'length' && column.isDotted && /^\d{1,2}[.,][0-5]\d$/.test(text);
		const said = isMinutes ? `${text} min` : isDotted ? text.replace(/[.,]/, ':') : text;
		return { text: said, column: named(column.heading || use) };
	};
	const hands = handsOf(cells, columns, named);
	const section = textOf('section').toLowerCase();
	const isExact = section !== '';
	const title = isExact ? withoutGuard(textOf('title')) : oneLine(textOf('title'));
	const titleColumn = named(columns.find(({ use }) => use === 'title')?.heading || 'title');
	const number = textOf('number');
	const word = section === '' || section === 'interval' ? rowWord(title) : null;
	const isMark = ENCORE_MARK.test(number) || section === 'encore';
	const encore: ListRow[] =
		isMark || section === 'set' ? [{ kind: 'encore', row, isEncore: section !== 'set' }] : [];
	const length = fieldOf('length');
	const text = oneLine(cells.filter((one) => one !== '').join(' '));
	const aside = (why: AsideWhy): ListRow => ({ kind: 'aside', row, text, why });
	if (section === 'interval') return [{ kind: 'interval', row, length }];
	const inNumber = intervalInNumber(number, title);
	if (inNumber) return [{ kind: 'interval', row, length: length ?? inNumber.length }];
	const hasMore = Object.keys(hands).length > 0 || textOf('tempo') !== '' || textOf('key') !== '';
	const isCounted = hasMore || NUMBER.test(number);
	if (!isExact && isHeadingsAgain(cells, reader.headings))
		return [{ kind: 'aside', row, text, why: 'heading' }];
	if (!isExact && !isCounted && isOfTheDay(text)) return [aside('no-song')];
	const isSum = word?.is === 'total' || (title === '' && rowWord(text)?.is === 'total');
	if (isSum && !isCounted) return [aside('total')];
	if (word?.is === 'encore' && word.song === null && !hasMore)
		return [{ kind: 'encore', row, isEncore: true }];
	const alone = isExact ? null : cellAlone(cells);
	const setWord = alone === null ? null : rowWord(alone);
	if (setWord?.is === 'set') return partOf(setWord, row);
	const isInterval = word?.is === 'interval' && !hasMore;
	const isDoubtful = isInterval && !word.isSure && number !== '';
	if (isInterval && !isDoubtful) {
		const said = word.length === null ? null : { text: word.length, column: titleColumn };
		return [{ kind: 'interval', row, length: length ?? said }];
	}
	const split = word?.is === 'encore' && word.song !== null ? word.song : null;
	const isLone =
		(reader.isNumbered || /\S:$/.test(title)) && number === '' && alone !== null && split === null;
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
		number: NUMBER.test(number) ? Number(/\d+/.exec(number)?.[0]) : null,
		doubt: isDoubtful
			? { why: 'interval-or-song', piece: word.length ?? '', title }
			: isLone
				? { why: 'heading-or-song', piece: title, title }
				: null,
	};
	if (title !== '' && !(isLone && reader.isNumbered && isNoSong(title))) {
		return [
			...encore,
			...(split === null ? [] : [{ kind: 'encore', row, isEncore: true } as const]),
			withEnd(song),
		];
	}
	if (alone !== null) return [...encore, loneRow({ row, text: alone, length, song, title })];
	return [...encore, { kind: 'aside', row, text, why: 'no-title', song }];
}

/** A row that says one thing, and not where the titles are: a mark of the list, no song, or to be asked. */
function loneRow({
	row,
	text,
	length,
	song,
	title,
}: {
	readonly row: number;
	readonly text: string;
	readonly length: Field | null;
	readonly song: SongRow;
	readonly title: string;
}): ListRow {
	const word = rowWord(text);
	if (word?.is === 'encore') return { kind: 'encore', row, isEncore: true };
	if (word?.is === 'interval') {
		const said = word.length === null ? null : { text: word.length, column: song.titleColumn };
		return { kind: 'interval', row, length: length ?? said };
	}
	if (word?.is === 'total') return { kind: 'aside', row, text, why: 'total' };
	if (isNoSong(text) || title !== '') return { kind: 'aside', row, text, why: 'no-song' };
	return { kind: 'aside', row, text, why: 'alone', song };
}

/** What stands over other rows, or explains a word. */
function isNoSong(text: string): boolean {
	return /:$/.test(text) || LABELLED.test(text) || isLegend(text);
}

/** The set begins again, or a further part of it behind an interval. */
function partOf({ isBare }: { readonly isBare: boolean }, row: number): ListRow[] {
	return isBare
		? [{ kind: 'encore', row, isEncore: false }]
		: [{ kind: 'interval', row, length: null, isImplied: true }];
}

/** What the row says where it says one thing; null where it says more. */
function cellAlone(cells: readonly string[]): string | null {
	const said = cells.filter((one) => one !== '');
	return said.length === 1 ? oneLine(said[0] ?? '') : null;
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

/** `>>` behind a title says that the next song follows at once. */
function withEnd(song: SongRow): SongRow {
	const found = song.isExact ? null : /^(.*\S)\s*(?:>>+|→|[-–=]+>)$/u.exec(song.title);
	if (!found || song.ends) return song;
	return { ...song, title: found[1] ?? song.title, ends: { text: '>>', column: song.titleColumn } };
}

const DITTO = /^(?:["″“”„]+|''|〃)$/;

/**
 * The rows with what a ditto repeats of the row above, in players with a column for each thing: of a tuning and a
 * capo only beside the same instrument, since whoever has another one may mean either.
 */
function withoutDittos(body: readonly TableRow[], columns: readonly Column[]): readonly TableRow[] {
	const parted = columns.filter(({ player, part }) => player && part !== 'whole');
	const players = new Set(parted.map(({ player }) => player));
	const theirs = columns.filter(({ player }) => player && players.has(player));
	if (theirs.length === 0) return body;
	let above: readonly string[] = [];
	return body.map((row) => {
		const cells = [...row.cells];
		for (const { index, player, part } of theirs) {
			if (!DITTO.test(cells[index] ?? '')) continue;
			const whole = theirs.find((one) => one.player === player && one.part === 'whole')?.index;
			const isSame =
				part === 'whole' ||
				whole === undefined ||
				DITTO.test(row.cells[whole] ?? '') ||
				(cells[whole] ?? '') === (above[whole] ?? '');
			if (isSame) cells[index] = above[index] ?? '';
		}
		if (theirs.some(({ index }) => (cells[index] ?? '') !== '')) above = cells;
		return { ...row, cells };
	});
}

function handsOf(
	cells: readonly string[],
	columns: readonly Column[],
	named: (column: string) => string,
): Record<string, Field> {
	const hands: Record<string, Field> = {};
	for (const { index, player, part } of columns) {
		const cell = cells[index] ?? '';
		if (!player || cell === '') continue;
		// A number in a column for capos is a fret.
		const text = part === 'capo' && /^\d/.test(cell) ? `c${cell}` : cell;
		if (part === 'capo' && /^(?:[-–—]+|0|no|none)$/i.test(cell)) continue;
		const before = hands[player.id];
		const isDash = part === 'tuning' && /^[-–—]+$/.test(cell);
		if (before && isDash) continue;
		hands[player.id] = {
			text: before ? `${before.text} ${text}` : text,
			column: named(player.column),
			...(part === 'tuning' && !isDash ? { tuning: text } : {}),
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
