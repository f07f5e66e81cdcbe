// A set list as people type it into a message: a line a song, with numbers or bullets, lengths and tunings in
// brackets, `>>` for what follows at once.

import { headingKey } from './columns.ts';
import {
	type Decided,
	type Field,
	type ListPlayer,
	type ListRow,
	NOBODY_NAMED,
	rowWord,
	type SetList,
	type SongRow,
} from './list-row.ts';
import { idFrom, isUsableId } from './player-ids.ts';
import { type CellReader, readCell, shorthandIn } from './read-cell.ts';
import { readLength } from './read-length.ts';

/** What is known before the list is read. */
export type PastedWishes = {
	readonly players: readonly { readonly id: string; readonly name: string }[];
	readonly abbreviations: Readonly<Record<string, string>>;
};

const NUMBER = /^(?:\(?\d{1,3}[.):]\)?|#\d{1,3}[.):]?|\d{1,3}\s[-–—])\s*/;
const BARE_NUMBER = /^\d{1,3}\s+(?=\S)/;
const BULLET = /^(?:[-–—*•·▪◦‣►●○☐✓+]|\[[ x]?\])\s+/i;
const SEPARATOR = /^[-–—_=*~#.\s]{3,}$/;
const SET_HEADING =
	/^\W*(?:(?:set|part|half|act)\s*(?:\d|one|two|three|i{1,3})|(?:\d|1st|2nd|3rd|first|second|third)\.?\s*(?:set|part|half|act)|set)\W*$/i;
const BRACKET = /^(.*?)\s*(?:\(([^()]*)\)|\[([^[\]]*)\])$/su;
const TIME_AT_END = /^(.*\S)\s*[\s,:–—-]\s*(\d{1,2}(?::\d\d|['’′]\d\d?["”″]?|m\d\d))$/su;
const NUMBER_AT_END = /^(.*\S)\s+(\d{2,3})$/su;
const TEMPO_AT_END = /^(.*\S)\s+[,–-]?\s*(\d{2,3}\s*bpm)$/isu;
const QUOTED = /^"((?:[^"]|"")*)"(.*)$/su;
const CELL =
	/^\s*\|\s*((?:[^|:[\]]|\[[^[\]]*\])+?)\s*:\s(.*?)(?=\s\|\s(?:[^|:[\]]|\[[^[\]]*\])+?:\s|$)/su;

/** A heading is cut here; nobody has a longer one. */
const LONGEST_TITLE = 200;

type Line = {
	readonly row: number;
	readonly text: string;
	readonly isListed: boolean;
	/** A blank line stands above it. */
	readonly isAfterBlank: boolean;
};

/** The set list of this text. */
export function readPastedList(text: string, wishes: PastedWishes): SetList {
	const lines = linesOf(text);
	const isListed = lines.some((line) => line.isListed);
	const first = isListed ? lines.findIndex((line) => line.isListed) : firstOfBare(lines);
	const end = isListed ? lines.findLastIndex((line) => line.isListed) + 1 : lines.length;
	const farewell = lines.findIndex(
		(line, index) => index >= first && isFarewell(line, index >= end),
	);
	const last = farewell === -1 ? lines.length : farewell;
	const heading = lines.slice(0, first).filter(({ text: one }) => !isMark(one));
	const title = heading.find(({ text: one }) => !isGreeting(one));
	const decided: Decided[] = [];
	const above = heading.flatMap((one) => (one === title ? [] : [one.text]));
	if (above.length > 0) decided.push({ code: 'above', texts: above });
	const below = lines.slice(last).map(({ text: one }) => one);
	if (below.length > 0) decided.push({ code: 'below', texts: below });
	const reader = new LineReader(wishes);
	const marked = lines.map((line, index) =>
		index >= last || (index < first && !isMark(line.text))
			? ({ kind: 'aside', row: line.row, text: line.text, why: 'heading' } as const)
			: line,
	);
	const rows = ordered(marked, reader, decided);
	if (reader.hasGuessedPlayer) decided.push({ code: 'one-player' });
	return {
		title: title?.text.replace(/\s*:$/, '').slice(0, LONGEST_TITLE) ?? null,
		players: reader.players,
		rows,
		rowCount: lines.length,
		decided,
	};
}

function linesOf(text: string): readonly Line[] {
	const all = text.split('\n').map((line) => line.trim());
	const said = all.filter((line) => line !== '');
	const bare = said.filter((line) => BARE_NUMBER.test(line) && !NUMBER.test(line));
	// `7 Sisters` is a song, unless the lines are counted that way.
	const isBareCounted =
		bare.length > 2 && bare.every((line, i) => Number.parseInt(line, 10) === i + 1);
	return all.flatMap((line, index): Line[] => {
		if (line === '') return [];
		const isMarked = NUMBER.test(line) || BULLET.test(line);
		const isBare = isBareCounted || countsOn(all, index);
		const stripped = NUMBER.test(line)
			? line.replace(NUMBER, '')
			: isBare
				? line.replace(BARE_NUMBER, '')
				: line.replace(BULLET, '');
		const isSeparator = SEPARATOR.test(line);
		return [
			{
				row: index + 1,
				text: isSeparator || stripped === '' ? line : stripped,
				isListed:
					!isSeparator && stripped !== '' && (isMarked || (isBare && BARE_NUMBER.test(line))),
				isAfterBlank: all[index - 1] === '',
			},
		];
	});
}

/** Whether a line with a bare number is the one between its neighbours, whose numbers are marked: `5 Barrow` after `4. Lamp`. */
function countsOn(lines: readonly string[], index: number): boolean {
	const numberOf = (line: string | undefined) =>
		line !== undefined && NUMBER.test(line) ? Number(/\d+/.exec(line)?.[0]) : null;
	const number = Number.parseInt(lines[index] ?? '', 10);
	const before = numberOf(lines.slice(0, index).findLast((line) => NUMBER.test(line)));
	const after = numberOf(lines.slice(index + 1).find((line) => NUMBER.test(line)));
	return before === number - 1 && (after === null || after === number + 1);
}

function isMark(text: string): boolean {
	return SEPARATOR.test(text) || SET_HEADING.test(text) || rowWord(text) !== null;
}

/** Without numbers a line alone before the first blank one is the title, and what greets above it is no song. */
function firstOfBare(lines: readonly Line[]): number {
	const isAlone = (index: number) => lines[index + 1]?.isAfterBlank === true;
	const greetings = lines.findIndex(
		({ text }, index) => !isGreeting(text) || !(isAlone(index) || /[:,]$/.test(text)),
	);
	const at = Math.max(0, greetings);
	const first = lines[at];
	const isTitle = first && isAlone(at) && !isMark(first.text) && !first.text.startsWith('"');
	return isTitle ? at + 1 : at;
}

/** What people write to one another above a list and below it; common practice, no source. */
const ADDRESSED = '(?:all|everyone|everybody|folks|guys|gang|team|crew|both|there|lads|ladies)';
const HELLO = new RegExp(
	[
		`^(?:hi|hiya|hello|hey|dear)(?:\\s+${ADDRESSED}\\b.*|(?:\\s+\\p{L}+)?\\s*[,!:–—].*|)$`,
		`^(?:good )?(?:morning|afternoon|evening)(?:\\s+${ADDRESSED}\\b.*|(?:\\s+\\p{L}+)?\\s*[,!:])$`,
	].join('|'),
	'iu',
);
const INTRODUCES =
	/\b(?:here(?:['’]s| is| are| comes)|below is|this is)\b.*\b(?:list|set ?list|set|songs|order|tonight)\b/iu;
const FAREWELL =
	/^(?:thanks|thank you|thx|cheers|best|regards|kind regards|see you|see ya|love|yours)\b(?:[^\d]{0,40})$/iu;

function isGreeting(text: string): boolean {
	return HELLO.test(text) || INTRODUCES.test(text);
}

/** Behind the last numbered line; in a list without numbers it must stand apart from the songs. */
function isFarewell({ text, isAfterBlank, isListed }: Line, isBehindAll: boolean): boolean {
	return !isListed && FAREWELL.test(text) && (isBehindAll || isAfterBlank) && /[,!.]/.test(text);
}

type Marked = Line | Extract<ListRow, { kind: 'aside' }>;

function ordered(
	lines: readonly Marked[],
	reader: LineReader,
	decided: Decided[],
): readonly ListRow[] {
	const rows: ListRow[] = [];
	const isSaid = (line: Marked): line is Line => !('kind' in line);
	const hasWord = lines.some((line) => isSaid(line) && rowWord(line.text)?.is === 'encore');
	const hasSeparator = lines.some((line) => isSaid(line) && SEPARATOR.test(line.text));
	const blanks = encoreBlanks(lines);
	const firstBlank = hasWord || hasSeparator ? undefined : blanks[0];
	if (firstBlank !== undefined && blanks.length > 1)
		decided.push({ code: 'blank-lines', row: firstBlank });
	let hasSongs = false;
	for (const line of lines) {
		if (!isSaid(line)) {
			rows.push(line);
			continue;
		}
		const { row, text } = line;
		const word = text.startsWith('"') ? null : rowWord(text);
		if (row === firstBlank) rows.push({ kind: 'encore', row, isEncore: true });
		if (SEPARATOR.test(text)) {
			if (hasSongs && !hasWord) rows.push({ kind: 'encore', row, isEncore: true });
			else rows.push({ kind: 'aside', row, text, why: 'heading' });
		} else if (SET_HEADING.test(text)) {
			if (/^\W*set\W*$/i.test(text)) rows.push({ kind: 'encore', row, isEncore: false });
			else if (hasSongs) rows.push({ kind: 'interval', row, length: null });
			else rows.push({ kind: 'aside', row, text, why: 'heading' });
		} else if (word?.is === 'interval' && (word.isSure || !line.isListed)) {
			const length = word.length === null ? null : { text: word.length, column: 'list' };
			rows.push({ kind: 'interval', row, length });
		} else if (word?.is === 'total') rows.push({ kind: 'aside', row, text, why: 'total' });
		else if (word?.is === 'encore' && word.song === null) {
			rows.push({ kind: 'encore', row, isEncore: true });
		} else {
			if (word?.is === 'encore') rows.push({ kind: 'encore', row, isEncore: true });
			const song = word?.is === 'encore' ? (word.song ?? text) : text;
			const read = reader.songs(song, row);
			const piece = word?.is === 'interval' ? (word.length ?? '') : null;
			const doubtful = (one: SongRow): SongRow =>
				piece === null
					? one
					: { ...one, doubt: { why: 'interval-or-song', piece, title: one.title } };
			rows.push(...read.map(doubtful));
			hasSongs = true;
		}
	}
	return rows;
}

/** Rows of lines that stand behind a blank line and a song; none where the whole list is spaced so. */
function encoreBlanks(lines: readonly Marked[]): readonly number[] {
	const found: number[] = [];
	let isAfterSong = false;
	let songs = 0;
	for (const line of lines) {
		const isSong = !('kind' in line) && !isMark(line.text);
		if (isSong && line.isAfterBlank && isAfterSong) found.push(line.row);
		if (isSong) songs += 1;
		isAfterSong = isSong;
	}
	return found.length > 2 && found.length >= (songs - 1) / 2 ? [] : found;
}

/** Reads lines of songs and gathers the players that they speak of. */
class LineReader {
	readonly players: ListPlayer[];
	hasGuessedPlayer = false;
	readonly #wishes: PastedWishes;
	#single: ListPlayer | null = null;

	constructor(wishes: PastedWishes) {
		this.#wishes = wishes;
		this.players = [];
	}

	/** One song, or several that `>>` joins. */
	songs(text: string, row: number): SongRow[] {
		const quoted = QUOTED.exec(text);
		if (quoted && quoted[1]?.trim() !== '') return [this.#exact(quoted, row)];
		const hands: Record<string, Field> = {};
		const said = this.#takeCells(text, hands);
		const pieces = said.split(/\s*(?:>>+|→)\s*/u);
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

	#exact([, title = '', rest = '']: RegExpExecArray, row: number): SongRow {
		const hands: Record<string, Field> = {};
		const song = this.#song(this.#takeCells(`x${rest}`, hands), row, hands);
		return { ...song, title: title.replaceAll('""', '"'), isExact: true };
	}

	#song(text: string, row: number, cells: Readonly<Record<string, Field>>): SongRow {
		const hands: Record<string, Field> = { ...cells };
		let rest = text;
		let length: Field | null = null;
		let tempo: Field | null = null;
		let doubt: SongRow['doubt'] = null;
		const notes: string[] = [];
		for (let isOpen = true; isOpen; ) {
			isOpen = false;
			const bracket = BRACKET.exec(rest);
			const inside = bracket?.[2] ?? bracket?.[3];
			if (bracket && inside !== undefined && bracket[1] !== '') {
				if (length === null && isTime(inside)) length = { text: inside, column: 'length' };
				else if (this.#isShorthand(inside)) {
					const player = this.#onlyPlayer();
					if (player && hands[player.id] === undefined)
						hands[player.id] = { text: inside, column: 'list' };
					else {
						notes.push(inside);
						doubt = { why: 'which-player', piece: inside, title: '' };
					}
				} else break;
				rest = bracket[1] ?? rest;
				isOpen = true;
				continue;
			}
			const time: RegExpExecArray | null = length === null ? TIME_AT_END.exec(rest) : null;
			if (time) {
				length = { text: time[2] ?? '', column: 'length' };
				rest = time[1] ?? rest;
				isOpen = true;
				continue;
			}
			const speed: RegExpExecArray | null = tempo === null ? TEMPO_AT_END.exec(rest) : null;
			if (speed) {
				tempo = { text: speed[2] ?? '', column: 'tempo' };
				rest = speed[1] ?? rest;
				isOpen = true;
			}
		}
		const title = rest.replace(/\s+/g, ' ').trim();
		const shorthand = Object.keys(hands).length === 0 ? shorthandIn(title, this.#reader()) : null;
		if (shorthand)
			doubt ??= { why: 'shorthand-in-title', piece: shorthand.piece, title: shorthand.rest };
		const [, before = '', number] = (length === null && NUMBER_AT_END.exec(title)) || [];
		if (number !== undefined && Number(number) >= 60 && Number(number) < 1000)
			doubt ??= { why: 'length-or-title', piece: number, title: before };
		return {
			...{ kind: 'song', row, titleColumn: 'list', length, tempo, hands, notes, doubt, title },
			...{ gap: null, starts: null, ends: null, isExact: false, id: null },
		};
	}

	/** Cells as this program prints them: `| Ash: Amber [A1] drop D`. Gives back what stands before. */
	#takeCells(text: string, hands: Record<string, Field>): string {
		const at = text.search(/\s\|\s(?:[^|:[\]]|\[[^[\]]*\])+?:\s/u);
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

function isTime(text: string): boolean {
	return /^\W*\d/.test(text) && /^[\d:.'’′"″\sminsec~]+$/i.test(text) && readLength(text) !== null;
}
