// Whose a column of a table is and what it holds, told by its heading, what stands before it, and its cells.

import {
	areClockTimes,
	areCounted,
	areDotted,
	areFrets,
	areLengths,
	readsAsPlayer,
	unheadedUse,
} from './column-cells.ts';
import { columnUse, headingKey, type PlayerPart, playerPartOf, type Use } from './columns.ts';
import { HeadedPlayers, type KnownPlayer } from './headed-players.ts';
import { type Decided, type ListPlayer, NOBODY_NAMED } from './list-row.ts';
import { isUsableId } from './player-ids.ts';
import type { Headed } from './table-headings.ts';

/** What is known before the table is read. */
export type TableWishes = {
	/** Heading to player's id, as asked for. */
	readonly columns: Readonly<Record<string, string>>;
	/** Players who are known already. */
	readonly players: readonly KnownPlayer[];
	readonly abbreviations: Readonly<Record<string, string>>;
};

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

/** A column nobody has read yet: `cells` without the empty ones, `use` by its heading. */
type Unread = {
	readonly index: number;
	readonly heading: string;
	readonly cells: readonly string[];
	readonly use: Use;
};

/** The cells of a column that hold something. */
export function cellsOf({ body }: Headed, index: number): readonly string[] {
	return body.flatMap(({ cells }) => {
		const cell = cells[index] ?? '';
		return cell === '' ? [] : [cell];
	});
}

/** Reads the columns from left to right: what one is hangs on those before it. */
export class ColumnReader {
	readonly players: HeadedPlayers;
	/** Headings of columns that are kept beside the songs, and of those that hold hours. */
	readonly intoNotes: string[] = [];
	readonly clocks: string[] = [];
	readonly #headed: Headed;
	readonly #wishes: TableWishes;
	readonly #decided: Decided[];
	readonly #made: Column[] = [];
	readonly #once = new Set<Use>();
	/** This program's own table has lengths where it says so. */
	readonly #isOwnTable: boolean;
	readonly #hasLengths: boolean;
	#hasTitle = false;

	constructor(headed: Headed, wishes: TableWishes, decided: Decided[]) {
		this.#headed = headed;
		this.#wishes = wishes;
		this.#decided = decided;
		this.players = new HeadedPlayers(headed, wishes.players);
		const uses = headed.headings.map(columnUse);
		this.#isOwnTable = uses.includes('section');
		this.#hasLengths = uses.some(
			(use, index) => use === 'length' && cellsOf(headed, index).length > 0,
		);
	}

	read(): readonly Column[] {
		for (const [index, heading] of this.#headed.headings.entries()) {
			const cells = cellsOf(this.#headed, index);
			this.#made.push(this.#column({ index, heading, cells, use: columnUse(heading) }));
		}
		return this.#made;
	}

	#column(one: Unread): Column {
		const told = this.#asAsked(one) ?? this.#byHeading(one) ?? this.#byNumbers(one);
		if (told) return told;
		if (one.cells.length === 0) return made(one, 'other');
		return this.#ofPlayer(one) ?? this.#unheaded(one) ?? this.#byCells(one);
	}

	/** As somebody asked for it, or as this program writes it: `Ash [ash]`. */
	#asAsked(one: Unread): Column | null {
		const { heading } = one;
		const asked = Object.entries(this.#wishes.columns).find(
			([column]) => heading !== '' && headingKey(column) === headingKey(heading),
		)?.[1];
		if (asked !== undefined) {
			const name = asked.charAt(0).toUpperCase() + asked.slice(1);
			return made(one, this.players.named(name, heading, asked));
		}
		const [, name = '', id] = /^(.*?)\s*\[([^[\]]+)\]$/.exec(heading) ?? [];
		if (id === undefined) return null;
		if (!isUsableId(id)) return made(one, this.players.named(heading));
		return made(one, this.players.named(name || id, heading, id));
	}

	/** A heading that says what stands below it. What is there a second time is kept beside the song. */
	#byHeading(one: Unread): Column | null {
		const { use, cells, heading } = one;
		if (use === 'title') {
			const isAgain = this.#hasTitle;
			this.#hasTitle = true;
			return made(one, isAgain ? 'notes' : 'title');
		}
		const isTimes = !this.#isOwnTable && (use === 'clock' || use === 'length');
		if (cells.length > 0 && isTimes && areClockTimes(cells, use)) {
			this.clocks.push(heading);
			return made(one, 'clock');
		}
		if (use === 'other' || use === 'clock') return null;
		const isAgain = this.#once.has(use) && use !== 'notes' && use !== 'number';
		if (cells.length > 0) this.#once.add(use);
		if (isAgain && cells.length > 0) this.intoNotes.push(heading);
		return made(one, isAgain ? 'notes' : use);
	}

	/** Numbers of rows, hours or lengths below a heading that says nothing. */
	#byNumbers(one: Unread): Column | null {
		const { use, cells, heading, index } = one;
		if (use !== 'other') return null;
		if (areCounted(cells)) return made(one, 'number');
		if (!areLengths(cells)) return null;
		const isFirst = !this.#once.has('length') && !this.#hasLengths;
		this.#once.add('length');
		if (areClockTimes(cells, 'length')) {
			this.clocks.push(nameOf(one));
			return made(one, 'clock');
		}
		if (isFirst) this.#decided.push({ code: 'length-column', column: heading, number: index + 1 });
		else this.intoNotes.push(nameOf(one));
		return made(one, isFirst ? 'length' : 'notes');
	}

	/** One of several columns of a player: by what stands above it, beside it or in its heading. */
	#ofPlayer(one: Unread): Column | null {
		const { heading, index } = one;
		const { groups, areGroupsKinds, headings } = this.#headed;
		const group = areGroupsKinds ? '' : (groups[index] ?? '');
		const said = playerPartOf(heading);
		if (group !== '' && (said !== null || heading === ''))
			return made(one, this.players.named(group), said?.part);
		if (said === null) return this.#fretsBeside(one);
		if (said.part !== 'whole') {
			const own =
				said.player === ''
					? this.#made.findLast(({ player }) => player !== null)?.player
					: this.players.named(said.player);
			if (own) return made(one, own, said.part);
			// Tunings without a player, where no other column may be one.
			this.#decided.push({ code: 'one-player' });
			return made(one, this.players.named(NOBODY_NAMED.name, heading), said.part);
		}
		if (said.player !== '' && headings.some((other) => isPartOf(other, said.player)))
			return made(one, this.players.named(said.player));
		return null;
	}

	/** Frets beside an instrument and its tuning, under a heading of the act's own. */
	#fretsBeside(one: Unread): Column | null {
		const player = this.#made.at(-1)?.player;
		if (one.use !== 'other' || !player || !areFrets(one.cells)) return null;
		if (!isBesideTuning(this.#made)) return null;
		this.#decided.push({ code: 'capo-column', column: one.heading, player: player.name });
		return made(one, player, 'capo');
	}

	/** A column without a heading. */
	#unheaded(one: Unread): Column | null {
		const { heading, cells, index } = one;
		const { isHeaded } = this.#headed;
		if (heading !== '' && isHeaded) return null;
		const guess = unheadedUse(cells, this.#hasTitle);
		if (guess === 'notes' && this.#hasTitle && !isHeaded) {
			const reading = readsAsPlayer('', cells, this.#wishes.abbreviations);
			const name = `Player ${index + 1}`;
			if (reading === 'player') {
				this.#decided.push({ code: 'unheaded-player', column: String(index + 1), name });
				return made(one, this.players.named(name));
			}
			if (reading === 'unclear') return { ...made(one, 'notes'), heading: name, isNames: true };
		}
		if (guess === 'title') this.#hasTitle = true;
		if (guess === 'length' && isHeaded)
			this.#decided.push({ code: 'length-column', column: '', number: index + 1 });
		if (guess === 'notes') this.intoNotes.push(nameOf(one));
		return made(one, guess);
	}

	/** Below a heading that is a player's name, or anything. */
	#byCells(one: Unread): Column {
		const { heading, cells, index } = one;
		const isPlayer = this.players.isKnown(heading) || this.#headed.kindColumns.has(index);
		const reading = isPlayer ? 'player' : readsAsPlayer(heading, cells, this.#wishes.abbreviations);
		if (reading === 'player') return made(one, this.players.named(heading));
		if (reading === 'nobody') this.intoNotes.push(heading);
		return { ...made(one, 'notes'), isNames: reading === 'unclear' };
	}
}

/** The column read: a player's, or of another use. */
function made(
	{ index, heading, cells }: Unread,
	is: Use | ListPlayer,
	part: PlayerPart = 'whole',
): Column {
	const [use, player] = typeof is === 'string' ? [is, null] : (['player', is] as const);
	return {
		...{ index, heading, use, player, part },
		isInMinutes: /^min/.test(headingKey(heading)),
		isDotted: use === 'length' && areDotted(cells),
		isNames: false,
	};
}

/** What a column is called when people are told of it. */
export function nameOf({ heading, index }: Pick<Column, 'heading' | 'index'>): string {
	return heading || String(index + 1);
}

/** Whether the last column is a player's tuning, and one before it the player's instrument. */
function isBesideTuning(columns: readonly Column[]): boolean {
	const last = columns.at(-1);
	return (
		last?.part === 'tuning' &&
		columns.some(({ player, part }) => player === last.player && part === 'whole')
	);
}

/** `Ash tuning` beside `Ash guitar`. */
function isPartOf(heading: string, player: string): boolean {
	const part = playerPartOf(heading);
	return part !== null && part.part !== 'whole' && headingKey(part.player) === headingKey(player);
}
