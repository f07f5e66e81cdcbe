// A table as a set list: where its headings are, whose each column is, what each row is.

import {
	columnUse,
	headingKey,
	isNobody,
	type PlayerPart,
	playerPartOf,
	type Use,
} from './columns.ts';
import { withoutGuard } from './formula-guard.ts';
import { kindIn } from './guess-kind.ts';
import {
	type Decided,
	type Field,
	type ListPlayer,
	type ListRow,
	rowWord,
	type SetList,
	type SongRow,
} from './list-row.ts';
import { idFrom, isUsableId } from './player-ids.ts';
import { readCell } from './read-cell.ts';
import { readLength } from './read-length.ts';
import { readTable, type Table, type TableRow } from './read-table.ts';

/** What is known before the table is read. */
export type TableWishes = {
	/** Heading to player's id, as asked for. */
	readonly columns: Readonly<Record<string, string>>;
	/** Players who are known already, id and name. */
	readonly players: readonly { readonly id: string; readonly name: string }[];
	readonly abbreviations: Readonly<Record<string, string>>;
};

export type SetTable =
	| { readonly ok: true; readonly list: SetList }
	| { readonly ok: false; readonly code: 'no-rows' | 'no-title' }
	| {
			readonly ok: false;
			readonly code: 'no-such-column';
			readonly column: string;
			readonly known: readonly string[];
	  };

/** Rows among which the headings are looked for. */
const HEADINGS_WITHIN = 20;

/** A heading is cut here; nobody has a longer name. */
const LONGEST_NAME = 200;

/** The set list of the text of a CSV, TSV or semicolon file. */
export function readSetTable(text: string, wishes: TableWishes): SetTable {
	const table = readTable(text, (one) => scoreOf(one));
	if (table.rows.length === 0) return { ok: false, code: 'no-rows' };
	const headed = headingsOf(table);
	const asked = Object.keys(wishes.columns).find(
		(column) => !headed.headings.some((one) => headingKey(one) === headingKey(column)),
	);
	if (asked !== undefined) {
		const known = headed.headings.filter((one) => one !== '');
		return { ok: false, code: 'no-such-column', column: asked, known };
	}
	const decided: Decided[] = [];
	const columns = columnsOf(headed, wishes, decided);
	const titleColumn = columns.find(({ use }) => use === 'title');
	if (!titleColumn) return { ok: false, code: 'no-title' };
	if (!headed.isHeaded) decided.push({ code: 'no-headings', title: String(titleColumn.index + 1) });
	// As over a list of lines, what stands on top is what the show is called.
	const [onTop, ...above] = headed.above.filter((one) => one !== '');
	if (above.length > 0) decided.push({ code: 'above', texts: above });
	const rows = headed.body.flatMap((row) => rowsOf(row, columns));
	return {
		ok: true,
		list: {
			title: onTop?.slice(0, LONGEST_NAME) ?? null,
			players: playersOf(columns),
			rows,
			rowCount: headed.body.length,
			decided,
		},
	};
}

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

function knownHeadings({ cells }: TableRow): number {
	const uses = cells.map(columnUse).filter((use) => use !== 'other');
	return uses.includes('title') ? new Set(uses).size + 1 : new Set(uses).size;
}

type Headed = {
	readonly headings: readonly string[];
	/** Above each heading in a row of its own, spread over what it is merged across. */
	readonly groups: readonly string[];
	readonly above: readonly string[];
	readonly body: readonly TableRow[];
	readonly headingRow: number;
	readonly isHeaded: boolean;
};

function headingsOf({ rows }: Table): Headed {
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

type Column = {
	readonly index: number;
	readonly heading: string;
	readonly use: Use | 'player';
	readonly player: ListPlayer | null;
	readonly part: PlayerPart;
	readonly isInMinutes: boolean;
	/** Its cells are names and nothing else: of instruments, or of anything. */
	readonly isNames: boolean;
};

function columnsOf(headed: Headed, wishes: TableWishes, decided: Decided[]): readonly Column[] {
	const players = new Map<string, ListPlayer>();
	const taken = new Set<string>();
	const playerFor = (name: string, column: string, asked: string | undefined): ListPlayer => {
		const key = asked ?? headingKey(name);
		const found = players.get(key);
		if (found) return found;
		const known = wishes.players.find(
			(one) => one.id === asked || headingKey(one.name) === key || headingKey(one.id) === key,
		);
		const isOwn = asked !== undefined && isUsableId(asked) && !taken.has(asked);
		const id = known?.id ?? (isOwn ? asked : idFrom(asked ?? name, 'player', taken));
		taken.add(id);
		const player = { id, name: known?.name ?? name.slice(0, LONGEST_NAME), column };
		players.set(key, player);
		return player;
	};
	const exactPlayer = ([heading, name = '', id = '']: RegExpExecArray): ListPlayer => {
		if (!isUsableId(id)) return playerFor(heading, heading, undefined);
		return playerFor(name === '' ? id : name, heading, id);
	};
	const cellsOf = (index: number) =>
		headed.body.flatMap(({ cells }) => {
			const cell = cells[index] ?? '';
			return cell === '' ? [] : [cell];
		});
	const intoNotes: string[] = [];
	let lastPlayer: ListPlayer | null = null;
	let hasTitle = false;
	const columns = headed.headings.map((heading, index): Column => {
		const cells = cellsOf(index);
		const make = (
			use: Use | 'player',
			player: ListPlayer | null = null,
			part: PlayerPart = 'whole',
		): Column => {
			if (player) lastPlayer = player;
			return {
				...{ index, heading, use, player, part },
				isInMinutes: /^min/.test(headingKey(heading)),
				isNames: false,
			};
		};
		const asked = Object.entries(wishes.columns).find(
			([column]) => heading !== '' && headingKey(column) === headingKey(heading),
		)?.[1];
		if (asked !== undefined) {
			const name = asked.charAt(0).toUpperCase() + asked.slice(1);
			return make('player', playerFor(name, heading, asked));
		}
		const exact = /^(.*?)\s*\[([^[\]]+)\]$/.exec(heading);
		if (exact) return make('player', exactPlayer(exact));
		const use = columnUse(heading);
		if (use === 'title') {
			if (hasTitle) return make('notes');
			hasTitle = true;
			return make('title');
		}
		if (use !== 'other') return make(use);
		const group = headed.groups[index] ?? '';
		const part = playerPartOf(heading);
		if (cells.length === 0) return make('other');
		if (group !== '' && (part !== null || heading === '')) {
			return make('player', playerFor(group, group, undefined), part?.part ?? 'whole');
		}
		if (part && part.part !== 'whole') {
			const own = part.player === '' ? lastPlayer : playerFor(part.player, part.player, undefined);
			if (own) return make('player', own, part.part);
		}
		if (part && part.player !== '' && headed.headings.some((one) => isPartOf(one, part.player))) {
			return make('player', playerFor(part.player, part.player, undefined), part.part);
		}
		if (heading === '' || !headed.isHeaded) {
			const guess = unheadedUse(cells, hasTitle);
			if (guess === 'title') hasTitle = true;
			if (guess === 'length' && headed.isHeaded)
				decided.push({ code: 'length-column', column: String(index + 1) });
			if (guess === 'notes') intoNotes.push(heading || String(index + 1));
			return make(guess);
		}
		const isKnown = wishes.players.some(({ id, name }) =>
			[headingKey(id), headingKey(name)].includes(headingKey(heading)),
		);
		const reading = isKnown ? 'player' : readsAsPlayer(heading, cells, wishes);
		if (reading === 'player') return make('player', playerFor(heading, heading, undefined));
		if (reading === 'nobody') intoNotes.push(heading);
		return { ...make('notes'), isNames: reading === 'unclear' };
	});
	const named = namesAmong(columns, cellsOf);
	const all = columns.map((column): Column => {
		if (!column.isNames) return column;
		const { heading } = column;
		const isPlayer = named.has(column.index);
		if (isPlayer) decided.push({ code: 'names-column', column: heading });
		else decided.push({ code: 'column-unclear', row: headed.headingRow, column: heading });
		return isPlayer
			? { ...column, use: 'player', player: playerFor(heading, heading, undefined) }
			: column;
	});
	if (intoNotes.length > 0) decided.push({ code: 'into-notes', columns: intoNotes });
	return all;
}

/** Which columns of mere names are players': those beside a player's, and where nobody else is one, those whose names come again. */
function namesAmong(
	columns: readonly Column[],
	cellsOf: (index: number) => readonly string[],
): ReadonlySet<number> {
	const said = columns.filter(({ use }) => use !== 'other');
	const players = new Set(said.flatMap(({ player, index }) => (player ? [index] : [])));
	if (players.size === 0) {
		const isRepeated = (index: number) => {
			const names = cellsOf(index).map((cell) => cell.toLowerCase().split(/\s/)[0]);
			return new Set(names).size < names.length;
		};
		return new Set(
			said.flatMap(({ isNames, index }) => (isNames && isRepeated(index) ? [index] : [])),
		);
	}
	const found = new Set<number>();
	const spread = (order: readonly Column[]) => {
		for (const [at, { isNames, index }] of order.entries()) {
			const before = order[at - 1]?.index ?? -1;
			if (isNames && (players.has(before) || found.has(before))) found.add(index);
		}
	};
	spread(said);
	spread(said.toReversed());
	return found;
}

/** `Ash tuning` beside `Ash guitar`. */
function isPartOf(heading: string, player: string): boolean {
	const part = playerPartOf(heading);
	return part !== null && part.part !== 'whole' && headingKey(part.player) === headingKey(player);
}

const LEAST_SHARE = 0.5;
const KEY_CELL = /^[A-G][#b♯♭]?\s*(?:m|min|minor|maj|major|dur|moll)?$/i;

function unheadedUse(cells: readonly string[], hasTitle: boolean): Use {
	const share = (test: (cell: string) => boolean) => cells.filter(test).length / cells.length;
	if (cells.length === 0) return 'other';
	if (share((cell) => /^\W*\d{1,3}\W*$/.test(cell)) > LEAST_SHARE)
		return hasTitle ? 'notes' : 'number';
	if (
		share((cell) => /\d[:'′.]\d\d/.test(cell) && readLength(cell.replace('.', ':')) !== null) >
		LEAST_SHARE
	)
		return 'length';
	if (!hasTitle && share((cell) => /\p{L}{2}/u.test(cell)) > LEAST_SHARE) return 'title';
	return 'notes';
}

/** Whether a column's cells are instruments and tunings; `unclear` where they are names of anything. */
function readsAsPlayer(
	heading: string,
	cells: readonly string[],
	wishes: TableWishes,
): 'player' | 'nobody' | 'unclear' {
	if (isNobody(heading)) return 'nobody';
	const reader = {
		kind: kindIn(heading) ?? ('electric-6' as const),
		abbreviations: wishes.abbreviations,
		isKnown: () => false,
	};
	const said = cells.map((cell) => readCell(cell, reader));
	const isShort = cells.every((cell) => cell.split(/\s+/).length <= 8 && cell.length <= 60);
	if (!isShort) return kindIn(heading) === null ? 'nobody' : 'player';
	if (kindIn(heading) !== null) return 'player';
	const isKeys =
		cells.every((cell) => KEY_CELL.test(cell)) &&
		said.some((one) => one.kind === 'has' && one.tuning === null);
	if (isKeys) return 'nobody';
	const tells = said.some(
		(one) =>
			one.kind === 'none' ||
			(one.kind === 'unclear' && (one.why === 'capo-range' || one.why === 'extra-words')) ||
			(one.kind === 'has' && (one.tuning !== null || one.capo !== null || one.slot !== null)),
	);
	if (tells) return 'player';
	const isNames = cells.every((cell, at) => isNameLike(cell) || said[at]?.kind !== 'has');
	return isNames ? 'unclear' : 'nobody';
}

function isNameLike(cell: string): boolean {
	return /^\p{L}[\p{L}\p{N} '*-]*$/u.test(cell) && cell.split(/\s+/).length <= 2;
}

function playersOf(columns: readonly Column[]): readonly ListPlayer[] {
	return [...new Set(columns.flatMap(({ player }) => (player ? [player] : [])))];
}

const NO_FIELDS = {
	...{ length: null, tempo: null, gap: null, starts: null, ends: null, notes: [], hands: {} },
	...{ isExact: false, doubt: null, id: null },
} as const;

const ENCORE_MARK = /^(?:e|enc|encore)\W*\d*$/i;

function rowsOf({ row, cells }: TableRow, columns: readonly Column[]): ListRow[] {
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
