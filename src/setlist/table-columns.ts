// Whose each column of a table is, and what it holds.

import {
	columnUse,
	headingKey,
	isNobody,
	type PlayerPart,
	playerPartOf,
	type Use,
} from './columns.ts';
import { kindIn } from './guess-kind.ts';
import { EVENING_SECONDS, goUpAsHours } from './hours-of-day.ts';
import { type Decided, type ListPlayer, NOBODY_NAMED } from './list-row.ts';
import { idFrom, isUsableId } from './player-ids.ts';
import { readCell } from './read-cell.ts';
import { readLength } from './read-length.ts';
import { rowWord } from './row-words.ts';
import type { Headed } from './table-headings.ts';

/** What is known before the table is read. */
export type TableWishes = {
	/** Heading to player's id, as asked for. */
	readonly columns: Readonly<Record<string, string>>;
	/** Players who are known already, id and name. */
	readonly players: readonly { readonly id: string; readonly name: string }[];
	readonly abbreviations: Readonly<Record<string, string>>;
};

/** A heading is cut here; nobody has a longer name. */
export const LONGEST_NAME = 200;

export type Column = {
	readonly index: number;
	readonly heading: string;
	readonly use: Use | 'player';
	readonly player: ListPlayer | null;
	readonly part: PlayerPart;
	readonly isInMinutes: boolean;
	/** Its lengths are written 3.45 for 3:45. */
	readonly isDotted: boolean;
	/** Its cells are names and nothing else: of instruments, or of anything. */
	readonly isNames: boolean;
};

export function columnsOf(
	headed: Headed,
	wishes: TableWishes,
	decided: Decided[],
): readonly Column[] {
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
		const group = headed.areGroupsKinds
			? headed.groups[headed.headings.indexOf(column)]
			: undefined;
		const said = group === undefined || group === '' ? {} : { group };
		const own = asked === undefined ? nameIn(name, headed.headings) : name;
		const player = { id, name: known?.name ?? own.slice(0, LONGEST_NAME), column, ...said };
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
	const clocks: string[] = [];
	const once = new Set<Use>();
	// This program's own table has lengths where it says so.
	const isOwnTable = headed.headings.some((heading) => columnUse(heading) === 'section');
	let lastPlayer: ListPlayer | null = null;
	let hasTitle = false;
	const hasLengths = headed.headings.some(
		(heading, index) => columnUse(heading) === 'length' && cellsOf(index).length > 0,
	);
	const made: Column[] = [];
	const columnAt = (heading: string, index: number): Column => {
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
				isDotted: use === 'length' && areDotted(cells),
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
		const isTimes = !isOwnTable && (use === 'clock' || use === 'length');
		if (cells.length > 0 && isTimes && isClockColumn(cells, use)) {
			clocks.push(heading);
			return make('clock');
		}
		if (use !== 'other' && use !== 'clock') {
			// What stands in a second column of the same sort is kept beside the song.
			const isAgain = once.has(use) && use !== 'notes' && use !== 'number';
			if (cells.length > 0) once.add(use);
			if (isAgain && cells.length > 0) intoNotes.push(heading);
			return make(isAgain ? 'notes' : use);
		}
		if (use === 'other' && areCounted(cells)) return make('number');
		if (use === 'other' && areLengths(cells)) {
			const isFirst = !once.has('length') && !hasLengths;
			once.add('length');
			if (isClockColumn(cells, 'length')) {
				clocks.push(heading || String(index + 1));
				return make('clock');
			}
			if (isFirst) decided.push({ code: 'length-column', column: heading, number: index + 1 });
			else intoNotes.push(heading || String(index + 1));
			return make(isFirst ? 'length' : 'notes');
		}
		const group = headed.areGroupsKinds ? '' : (headed.groups[index] ?? '');
		const part = playerPartOf(heading);
		if (cells.length === 0) return make('other');
		if (group !== '' && (part !== null || heading === '')) {
			return make('player', playerFor(group, group, undefined), part?.part ?? 'whole');
		}
		const [before] = made.slice(-1);
		// Frets beside an instrument and its tuning, under a heading of the act's own.
		if (
			use === 'other' &&
			part === null &&
			before?.player &&
			areFrets(cells) &&
			isBesideTuning(made)
		) {
			decided.push({ code: 'capo-column', column: heading, player: before.player.name });
			return make('player', before.player, 'capo');
		}
		if (part && part.part !== 'whole') {
			const own = part.player === '' ? lastPlayer : playerFor(part.player, part.player, undefined);
			if (own) return make('player', own, part.part);
			// Tunings without a player, where no other column may be one.
			decided.push({ code: 'one-player' });
			return make('player', playerFor(NOBODY_NAMED.name, heading, undefined), part.part);
		}
		if (part && part.player !== '' && headed.headings.some((one) => isPartOf(one, part.player))) {
			return make('player', playerFor(part.player, part.player, undefined), part.part);
		}
		if (heading === '' || !headed.isHeaded) {
			const guess = unheadedUse(cells, hasTitle);
			if (guess === 'notes' && hasTitle && !headed.isHeaded) {
				const reading = readsAsPlayer('', cells, wishes);
				const name = `Player ${index + 1}`;
				if (reading === 'player') {
					decided.push({ code: 'unheaded-player', column: String(index + 1), name });
					return make('player', playerFor(name, name, undefined));
				}
				if (reading === 'unclear') return { ...make('notes'), heading: name, isNames: true };
			}
			if (guess === 'title') hasTitle = true;
			if (guess === 'length' && headed.isHeaded)
				decided.push({ code: 'length-column', column: '', number: index + 1 });
			if (guess === 'notes') intoNotes.push(heading || String(index + 1));
			return make(guess);
		}
		const isKnown = wishes.players.some(({ id, name }) =>
			[headingKey(id), headingKey(name)].includes(headingKey(heading)),
		);
		const isUnderKind = headed.kindColumns.has(index);
		const reading = isKnown || isUnderKind ? 'player' : readsAsPlayer(heading, cells, wishes);
		if (reading === 'player') return make('player', playerFor(heading, heading, undefined));
		if (reading === 'nobody') intoNotes.push(heading);
		return { ...make('notes'), isNames: reading === 'unclear' };
	};
	for (const [index, heading] of headed.headings.entries()) made.push(columnAt(heading, index));
	const columns: readonly Column[] = made;
	const named = namesAmong(columns, cellsOf);
	const all = columns.map((column): Column => {
		if (!column.isNames) return column;
		const { heading } = column;
		const isPlayer = named.has(column.index);
		if (!headed.isHeaded && !isPlayer) {
			intoNotes.push(String(column.index + 1));
			return { ...column, heading: '' };
		}
		if (isPlayer && !headed.isHeaded) {
			decided.push({ code: 'unheaded-player', column: String(column.index + 1), name: heading });
		} else if (isPlayer) decided.push({ code: 'names-column', column: heading });
		else decided.push({ code: 'column-unclear', row: headed.headingRow, column: heading });
		return isPlayer
			? { ...column, use: 'player', player: playerFor(heading, heading, undefined) }
			: column;
	});
	for (const { heading, index, isDotted } of all) {
		if (isDotted) decided.push({ code: 'dotted-lengths', column: heading || String(index + 1) });
	}
	if (intoNotes.length > 0) decided.push({ code: 'into-notes', columns: intoNotes });
	if (clocks.length > 0) decided.push({ code: 'clock-column', columns: clocks });
	for (const text of new Set(headed.areGroupsKinds ? headed.groups : [])) {
		const players = playersOf(all).filter(({ group }) => group === text && text !== '');
		if (players.length > 0)
			decided.push({ code: 'group', text, players: players.map(({ name }) => name) });
	}
	return all;
}

/** Whether the cells are hours of the day or sums of lengths; a heading that speaks of such has little to prove. */
function isClockColumn(cells: readonly string[], use: Use): boolean {
	const times = cells.map((cell) => /^(\d{1,2})[:.h](\d\d)(?:[:.](\d\d))?$/.exec(cell.trim()));
	const read = times.flatMap((time) =>
		time ? [Number(time[1]) * 3600 + Number(time[2]) * 60 + Number(time[3] ?? 0)] : [],
	);
	if (read.length < cells.length * 0.7) return false;
	if (use === 'clock') return true;
	return read.length >= 4 && goUpAsHours(read) && Math.max(...read) >= EVENING_SECONDS;
}

/** Whether the cells are lengths of songs, whatever stands above them: nobody plays a time. A sum or a word may stand below them. */
function areLengths(cells: readonly string[]): boolean {
	const said = cells.filter(
		(cell) => rowWord(cell)?.is !== 'total' && !/^(?:\?+|tb[ac]|[-–—]+)$/i.test(cell),
	);
	const times = said.filter((cell) =>
		/^~?\(?\d{1,2}[:'’′][0-5]\d(?::[0-5]\d|["”″])?\)?$/.test(cell),
	);
	return times.length >= 2 && times.length * 10 >= said.length * 7;
}

/** Whether the cells are frets and signs for none. */
function areFrets(cells: readonly string[]): boolean {
	const isFret = (cell: string) => /^(?:\d|1[0-2])$/.test(cell);
	return cells.some(isFret) && cells.every((cell) => isFret(cell) || /^[-–—]+$/.test(cell));
}

/** Whether the last column is a player's tuning, and one before it the player's instrument. */
function isBesideTuning(columns: readonly Column[]): boolean {
	const last = columns.at(-1);
	return (
		last?.part === 'tuning' &&
		columns.some(({ player, part }) => player === last.player && part === 'whole')
	);
}

/** Whether the cells count the rows, whatever stands above them. */
function areCounted(cells: readonly string[]): boolean {
	const numbers = cells.flatMap((cell) =>
		/^\d{1,3}[.)]?$/.test(cell) ? [Number.parseInt(cell, 10)] : [],
	);
	const isMost = numbers.length >= 3 && numbers.length * 10 >= cells.length * 7;
	return isMost && numbers.every((one, i) => one === i + 1);
}

/** Whether all are like 3.45 and none has more than 59 behind the dot: tenths of minutes would. */
function areDotted(cells: readonly string[]): boolean {
	const dotted = cells.filter((cell) => /^\d{1,2}[.,][0-5]\d$/.test(cell));
	return (
		dotted.length >= 4 && cells.every((cell) => dotted.includes(cell) || !/^\d+[.,]\d+$/.test(cell))
	);
}

/** `Jo` of `Jo (gtr)` and of `Gtr 1 (Jo)`, where nobody else is called so. */
function nameIn(heading: string, headings: readonly string[]): string {
	const bare = (text: string) => {
		const [, before = '', inside = ''] = /^(.*\S)\s*[([]([^()[\]]*)[)\]]$/.exec(text) ?? [];
		if (before === '') return text;
		if (kindIn(inside) !== null) return before;
		const isName = /^\p{Lu}\p{L}+$/u.test(inside) && !ROLE.test(inside);
		return isName && kindIn(before) !== null ? inside : text;
	};
	const name = bare(heading);
	const isOwn = headings.filter((one) => headingKey(bare(one)) === headingKey(name)).length === 1;
	return isOwn && kindIn(name) === null ? name : heading;
}

/** What somebody does, and no name. */
const ROLE = /^(?:lead|rhythm|solo|left|right|main|drop|tuned|low|high|new|old|spare|backup)$/i;

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
	// A minor key among them, since E and D may be tunings too.
	if (
		hasTitle &&
		share((cell) => KEY_CELL.test(cell)) === 1 &&
		cells.some((cell) => /m/.test(cell))
	)
		return 'key';
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

export function playersOf(columns: readonly Column[]): readonly ListPlayer[] {
	return [...new Set(columns.flatMap(({ player }) => (player ? [player] : [])))];
}
