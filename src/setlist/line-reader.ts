// A line of a pasted list as songs, and the players that such lines speak of.

import { headingKey } from './columns.ts';
import { type Field, type ListPlayer, NOBODY_NAMED, type SongRow } from './list-row.ts';
import { titleKey } from './name-key.ts';
import { namesSpokenOf, piecesByName } from './named-pieces.ts';
import { idFrom, isUsableId } from './player-ids.ts';
import { type CellReader, readCell, shorthandIn } from './read-cell.ts';
import { readLength } from './read-length.ts';
import { sameAsIn } from './same-as.ts';

/** What is known before the list is read. */
export type PastedWishes = {
	readonly players: readonly { readonly id: string; readonly name: string }[];
	readonly abbreviations: Readonly<Record<string, string>>;
};

const BRACKET = /^(.*?)\s*(?:\(([^()]*)\)|\[([^[\]]*)\])$/su;
const TIME_AT_END = /^(.*\S)\s*[\s,:–—-]\s*(\d{1,2}(?::\d\d|['’′]\d\d?["”″]?|m\d\d))$/su;
const NUMBER_AT_END = /^(.*\S)\s+(\d{2,3})$/su;
const TEMPO_AT_END = /^(.*\S)\s+[,–-]?\s*(\d{2,3}\s*bpm)$/isu;
const QUOTED = /^"((?:[^"]|"")*)"(.*)$/su;
const CELL =
	/^\s*\|\s*((?:[^|:[\]]|\[[^[\]]*\])+?)\s*:\s(.*?)(?=\s\|\s(?:[^|:[\]]|\[[^[\]]*\])+?:\s|$)/su;

/** Cells as this program prints them. */
const BARRED = /\s\|\s(?:[^|:[\]]|\[[^[\]]*\])+?:\s/u;
/** Notes as this program prints them, behind all else. */
const NOTES_AT_END = /^((?:"(?:[^"]|"")*")?.*?\S)\s\|\s+notes?\s*:\s(.*\S)\s*$/isu;

/** What follows at once, as people draw it. */
const SEGUE = /\s*(?:>>+|→|[-–=]+>)\s*|\s+>\s+/u;
/** The same in words behind the sign. */
const AT_ONCE =
	/((?:>>+|→|[-–=]+>)\s*)(?:straight (?:in|on|into(?: (?:the )?next)?)|segue|attacca|no gap)[.!]*$/iu;
const DOTTED_AT_END = /^(.*\S)\s+(\d{1,2})\.([0-5]\d)$/su;
const TIME_AT_START = /^(\d{1,2}(?::[0-5]\d|['’′][0-5]\d["”″]?))\s*[-–—:|]?\s+(\S.*)$/su;
const KEY = '[A-G][#b♯♭]?\\s?(?:m|min|minor|maj|major|dur|moll)?';
const KEY_AT_END = new RegExp(`^(.*\\S)(?:\\s+[-–—|/]|,)\\s+(${KEY})$`, 'su');
/** A bare number in front of a key, or behind one. */
const BESIDE_KEY = /^(.*\S)(?:\s+[-–—|/]|,)\s+(\d{2,3})$/su;
const KEY_AND_TEMPO = new RegExp(
	`(?:\\s[-–—|/]|,)\\s+(?:${KEY}(?:\\s[-–—|/]|,)\\s+\\d{2,3}|\\d{2,3}(?:\\s[-–—|/]|,)\\s+${KEY})$`,
	'u',
);

/** What stands behind a title, the last group of it or the last two with a colon between. */
type Behind = { readonly what: 'length' | 'tempo' | 'key'; readonly pattern: RegExp };

type Habit = {
	/** In the order in which they are looked for. */
	readonly behind: readonly Behind[];
	readonly hasLengthFirst: boolean;
	/** Instruments behind a dash. */
	readonly hasCell: boolean;
};

/** What at least three lines and half of them all have is no chance, and what the others have in its place is the same. */
function habitOf(texts: readonly string[], reader: CellReader): Habit {
	const bare = texts.map((text) => text.replace(/(?:\s*(?:\([^()]*\)|\[[^[\]]*\]))+$/u, ''));
	const isUsual = (pattern: RegExp) => {
		const found = bare.filter((text) => pattern.test(text)).length;
		return found >= 3 && found * 2 >= bare.length;
	};
	const hasTempo = isUsual(KEY_AND_TEMPO);
	const behind: readonly (Behind | false)[] = [
		{ what: 'length', pattern: TIME_AT_END },
		// Such as 3.50.
		isUsual(DOTTED_AT_END) && { what: 'length', pattern: DOTTED_AT_END },
		{ what: 'tempo', pattern: TEMPO_AT_END },
		hasTempo && { what: 'tempo', pattern: BESIDE_KEY },
		(hasTempo || isUsual(KEY_AT_END)) && { what: 'key', pattern: KEY_AT_END },
	];
	return {
		behind: behind.filter((one) => one !== false),
		hasLengthFirst: isUsual(TIME_AT_START),
		hasCell: !hasTempo && isUsual(BEHIND_DASH) && areCells(bare, reader),
	};
}

const BEHIND_DASH = /^(.*\S)\s+[-–—]\s+(\S.*)$/su;

/** Whether instruments stand behind the dashes: one has a tuning or a capo, and some come again. */
function areCells(texts: readonly string[], reader: CellReader): boolean {
	const said = texts.flatMap((text) => {
		const tail = BEHIND_DASH.exec(text)?.[2];
		return tail === undefined ? [] : [readCell(tail, reader)];
	});
	const named = said.flatMap((one) => (one.kind === 'has' && one.name !== null ? [one] : []));
	const names = new Set(named.map(({ name }) => name?.toLowerCase()));
	const isBeside = named.some(({ tuning, capo }) => tuning !== null || capo !== null);
	return isBeside && names.size < named.length;
}

/** Reads lines of songs and gathers the players that they speak of. */
export class LineReader {
	readonly players: ListPlayer[];
	hasGuessedPlayer = false;
	readonly #wishes: PastedWishes;
	#single: ListPlayer | null = null;

	/** What most of the lines have behind their titles. */
	readonly #habit: Habit;
	readonly #texts: readonly string[];
	/** Names that the lines themselves say. */
	readonly spokenOf: readonly string[];
	readonly #names: readonly string[];
	/** Whether lines name several players each, without a sign behind the name. */
	readonly #isNaming: boolean;

	/** `texts`: all lines that may be songs. */
	constructor(wishes: PastedWishes, texts: readonly string[]) {
		this.#wishes = wishes;
		this.players = [];
		const bare = texts.map((text) => withoutNotes(text)[0]);
		this.#texts = bare;
		this.#habit = habitOf(bare, this.#reader());
		const unbarred = bare.filter((text) => !BARRED.test(text));
		const known = this.#calledBy().map(([name]) => name);
		const isKnown = (name: string) => known.some((one) => headingKey(one) === headingKey(name));
		this.spokenOf = namesSpokenOf(unbarred, this.#read).filter((name) => !isKnown(name));
		this.#names = [...known, ...this.spokenOf];
		const naming = unbarred.filter((text) => this.#countNamed(text) > 1).length;
		this.#isNaming = naming > 1 || (naming > 0 && naming * 2 >= bare.length);
	}

	/** One song, or several that `>>` joins. */
	songs(line: string, row: number): SongRow[] {
		const [text, said] = withoutNotes(line);
		const songs = this.#songsOf(text, row);
		if (said === null) return songs;
		const last = songs.length - 1;
		return songs.map((one, at) => (at === last ? { ...one, notes: [...one.notes, said] } : one));
	}

	#songsOf(line: string, row: number): SongRow[] {
		const text = line.replace(AT_ONCE, '$1').trimEnd();
		const quoted = QUOTED.exec(text);
		if (quoted && quoted[1]?.trim() !== '') return [this.#exact(quoted, row)];
		const hands: Record<string, Field> = {};
		const same = sameAsIn(text, (title) => this.#isTitle(title));
		if (same) {
			const sameAs = { text: same.said, column: '' };
			const songs = this.songs(same.rest, row);
			return songs.map((song, i) => (i === songs.length - 1 ? { ...song, sameAs } : song));
		}
		const named = this.#isNaming && !BARRED.test(text) ? this.#apart(text) : null;
		if (named) {
			const songs = this.songs(named.title, row);
			return songs.map((song, i) => {
				if (i < songs.length - 1) return song;
				const ends = named.isOpen ? { text: '>>', column: song.titleColumn } : song.ends;
				return { ...song, ends, hands: named.hands, notes: [...song.notes, ...named.notes] };
			});
		}
		const said = this.#takeCells(text, hands);
		const pieces = said.split(SEGUE);
		const titles = pieces.filter((piece) => piece !== '');
		if (titles.length === 0) return [this.#song(said, row, hands)];
		const isOpen = pieces.at(-1) === '';
		return titles.map((title, index) => {
			const isLast = index === titles.length - 1;
			const song = this.#song(title, row, isLast ? hands : {});
			if (isLast && !isOpen) return song;
			return { ...song, ends: { text: '>>', column: song.titleColumn } };
		});
	}

	/** The line by the players that it names; null where it names none. */
	#apart(text: string) {
		const found = piecesByName(text, this.#names, this.#read);
		if (!found || found.cells.length === 0) return null;
		const hands: Record<string, Field> = {};
		for (const [name, cell] of found.cells) {
			const id = this.#calledBy().find(([one]) => headingKey(one) === headingKey(name))?.[1];
			const player = this.#named(id ?? name);
			if (hands[player.id] !== undefined) return null;
			hands[player.id] = { text: cell, column: player.name };
		}
		return { ...found, hands };
	}

	#countNamed(text: string): number {
		return piecesByName(text, this.#names, this.#read)?.cells.length ?? 0;
	}

	readonly #read = (text: string) => readCell(text, this.#reader());

	/** Whether a line of the list begins with this title. */
	#isTitle(title: string): boolean {
		const key = titleKey(title);
		return key !== '' && this.#texts.some((text) => titleKey(text).startsWith(key));
	}

	#exact([, title = '', rest = '']: RegExpExecArray, row: number): SongRow {
		const hands: Record<string, Field> = {};
		const song = this.#song(this.#takeCells(`x${rest}`, hands), row, hands);
		return { ...song, title: title.replaceAll('""', '"'), isExact: true };
	}

	#song(text: string, row: number, cells: Readonly<Record<string, Field>>): SongRow {
		const hands: Record<string, Field> = { ...cells };
		let rest = text;
		/** Brackets that say neither, in their place. */
		let kept = '';
		const said = new Map<Behind['what'], string>();
		let doubt: SongRow['doubt'] = null;
		let isTaken = false;
		const notes: string[] = [];
		for (let isOpen = true; isOpen; ) {
			isOpen = false;
			// What stood between the title and what was taken from behind it is no part of either.
			if (isTaken) rest = rest.replace(/[\s,:–—-]+$/u, '') || rest;
			const bracket = BRACKET.exec(rest);
			const inside = bracket?.[2] ?? bracket?.[3];
			if (bracket && inside !== undefined && bracket[1] !== '') {
				if (!said.has('length') && isTime(inside)) said.set('length', inside);
				else if (this.#isShorthand(inside)) {
					const player = this.#onlyPlayer();
					if (player && hands[player.id] === undefined)
						hands[player.id] = { text: inside, column: 'list' };
					else {
						notes.push(inside);
						doubt = { why: 'which-player', piece: inside, title: '' };
					}
				} else kept = `${rest.slice(bracket[1]?.length)}${kept}`;
				isTaken ||= !kept.startsWith(rest.slice(bracket[1]?.length));
				rest = bracket[1] ?? rest;
				isOpen = true;
				continue;
			}
			const end = this.#habit.behind.find(
				({ what, pattern }) => !said.has(what) && pattern.test(rest),
			);
			const [, before, ...texts] = end?.pattern.exec(rest) ?? [];
			if (end && before !== undefined) {
				said.set(end.what, texts.join(':'));
				rest = before;
				isTaken = true;
				isOpen = true;
			}
		}
		const first =
			!said.has('length') && this.#habit.hasLengthFirst ? TIME_AT_START.exec(rest) : null;
		if (first) {
			said.set('length', first[1] ?? '');
			rest = first[2] ?? rest;
		}
		const cell =
			this.#habit.hasCell && Object.keys(hands).length === 0 ? BEHIND_DASH.exec(rest) : null;
		const player = cell && this.#onlyPlayer();
		if (cell && player) {
			hands[player.id] = { text: cell[2] ?? '', column: 'list' };
			rest = cell[1] ?? rest;
		}
		const key = said.get('key');
		if (key !== undefined) notes.unshift(`key ${key}`);
		const title = `${rest}${kept}`.replace(/\s+/g, ' ').trim();
		const shorthand = Object.keys(hands).length === 0 ? shorthandIn(title, this.#reader()) : null;
		if (shorthand)
			doubt ??= { why: 'shorthand-in-title', piece: shorthand.piece, title: shorthand.rest };
		const [, before = '', number] = (!said.has('length') && NUMBER_AT_END.exec(title)) || [];
		if (number !== undefined && Number(number) >= 60 && Number(number) < 1000)
			doubt ??= { why: 'length-or-title', piece: number, title: before };
		const fieldOf = (column: 'length' | 'tempo'): Field | null => {
			const of = said.get(column);
			return of === undefined ? null : { text: of, column };
		};
		return {
			...{ length: fieldOf('length'), tempo: fieldOf('tempo') },
			...{ kind: 'song', row, titleColumn: 'list', hands, notes, doubt, title },
			...{ gap: null, starts: null, ends: null, isExact: false, id: null },
		};
	}

	/** Cells as this program prints them: `| Ash: Amber [A1] drop D`. Gives back what stands before. */
	#takeCells(text: string, hands: Record<string, Field>): string {
		const at = text.search(BARRED);
		if (at === -1) return this.#takeKnown(text, hands);
		let rest = text.slice(at);
		for (let cell = CELL.exec(rest); cell; cell = CELL.exec(rest)) {
			const player = this.#named(cell[1] ?? '');
			hands[player.id] = { text: (cell[2] ?? '').trim(), column: player.column };
			rest = rest.slice(cell[0].length);
		}
		return rest.trim() === '' ? text.slice(0, at).trim() : text;
	}

	/** Cells of players who are known already, as a person types them: `Lantern - Ash: Amber c2, Bo: DADGAD`. */
	#takeKnown(text: string, hands: Record<string, Field>): string {
		const names = [...this.#calledBy()];
		if (names.length === 0) return text;
		const words = names.map(([name]) => name.replace(/[.*+?^${}()|[\]\\/]/g, '\\$&'));
		const start = new RegExp(`(?<=[\\s,;|/(–—-])(${words.join('|')})\\s*:\\s*`, 'giu');
		const found = [...text.matchAll(start)];
		const title = text.slice(0, found[0]?.index).replace(/[\s,;|/(–—-]+$/u, '');
		if (found.length === 0 || title === '') return text;
		for (const [at, one] of found.entries()) {
			const cell = text.slice(one.index + one[0].length, found[at + 1]?.index);
			const id = names.find(([name]) => headingKey(name) === headingKey(one[1] ?? ''))?.[1];
			const player = this.#named(id ?? '');
			hands[player.id] = {
				text: cell.replace(/[\s,;|/)]+$/u, '').trim(),
				column: player.name,
			};
		}
		return title;
	}

	/** What each known player is called, longest first: by name, by id, and by the first word of the name where nobody shares it. */
	#calledBy(): readonly (readonly [string, string])[] {
		const { players } = this.#wishes;
		const firstOf = (name: string) => name.split(' ')[0] ?? name;
		const isOwn = (word: string) =>
			players.filter(({ name }) => headingKey(firstOf(name)) === headingKey(word)).length === 1;
		return players
			.flatMap(({ id, name }) => {
				const first = firstOf(name);
				return [name, id, ...(isOwn(first) ? [first] : [])].map((one) => [one, id] as const);
			})
			.filter(([name]) => name !== '')
			.toSorted(([a], [b]) => b.length - a.length);
	}

	#named(heading: string): ListPlayer {
		const found = /^(.*?)\s*\[([^[\]]+)\]$/.exec(heading);
		const exact = found && isUsableId(found[2] ?? '') ? found : null;
		const name = exact ? exact[1] || (exact[2] ?? heading) : heading;
		const key = headingKey(name);
		const known = this.#wishes.players.find(
			(one) => headingKey(one.name) === key || headingKey(one.id) === key,
		);
		const id = exact?.[2] ?? known?.id ?? null;
		const there = this.players.find((one) =>
			id === null ? headingKey(one.name) === key : one.id === id,
		);
		if (there) return there;
		const taken = new Set(this.players.map((one) => one.id));
		const player = {
			id: id ?? idFrom(name, 'player', taken),
			name: known?.name ?? name,
			column: name,
		};
		this.players.push(player);
		return player;
	}

	/** Whose tunings in brackets are: the rack's only player, or one who is made; null where there are several. */
	#onlyPlayer(): ListPlayer | null {
		if (this.#single) return this.#single;
		const [only, second] = this.#wishes.players;
		if (second) return null;
		this.#single = { ...(only ?? NOBODY_NAMED), column: 'list' };
		this.hasGuessedPlayer = only === undefined;
		this.players.push(this.#single);
		return this.#single;
	}

	#reader(): CellReader {
		const { abbreviations } = this.#wishes;
		return { kind: 'electric-6', abbreviations, isKnown: () => false };
	}

	#isShorthand(text: string): boolean {
		const said = readCell(text, this.#reader());
		return said.kind === 'has' && (said.tuning !== null || said.capo !== null);
	}
}

/** A line without the notes at its end as this program prints them, `| Notes: bow`, and these. */
function withoutNotes(line: string): readonly [string, string | null] {
	const [, before, notes] = NOTES_AT_END.exec(line) ?? [];
	return before === undefined || notes === undefined ? [line, null] : [before, notes];
}

function isTime(text: string): boolean {
	return /^\W*\d/.test(text) && /^[\d:.'’′"″\sminsec~]+$/i.test(text) && readLength(text) !== null;
}
