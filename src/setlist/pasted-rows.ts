// The lines of a pasted list as its rows: what begins an encore or another set, an interval, a sum, else songs.

import type { LineReader } from './line-reader.ts';
import type { Decided, ListRow, SongRow } from './list-row.ts';
import { isMark, type Line, SEPARATOR } from './pasted-lines.ts';
import { rowWord } from './row-words.ts';

/** A line, or what is known not to be a song of the list. */
export type Marked = Line | Extract<ListRow, { kind: 'aside' }>;

export function rowsOfLines(
	lines: readonly Marked[],
	reader: LineReader,
	decided: Decided[],
): readonly ListRow[] {
	const said = lines.filter(isSaid);
	const hasWord = said.some(({ text }) => rowWord(text)?.is === 'encore');
	const hasSeparator = said.some(({ text }) => SEPARATOR.test(text));
	const blanks = encoreBlanks(lines);
	const firstBlank = hasWord || hasSeparator ? undefined : blanks[0];
	if (firstBlank !== undefined && blanks.length > 1)
		decided.push({ code: 'blank-lines', row: firstBlank });
	const isCapital = areCapital(lines);
	const rows: ListRow[] = [];
	const parts: { readonly row: number; readonly title: string }[] = [];
	for (const line of lines) {
		if (!isSaid(line)) {
			rows.push(line);
			continue;
		}
		const { row, text } = line;
		if (row === firstBlank) rows.push({ kind: 'encore', row, isEncore: true });
		const at = rows.findLastIndex(({ kind }) => kind === 'song');
		const whole = rows[at];
		if (line.isPart && whole?.kind === 'song') {
			rows[at] = { ...whole, notes: [...whole.notes, text] };
			parts.push({ row, title: whole.title });
			continue;
		}
		const mark = markRow(line, { hasSongs: at !== -1, hasWord });
		if (mark) rows.push(mark);
		else {
			const word = wordOf(line);
			if (word?.is === 'encore') rows.push({ kind: 'encore', row, isEncore: true });
			const read = reader.songs((word?.is === 'encore' && word.song) || text, row);
			const why = doubtOf(line, isCapital);
			rows.push(...read.map((one, i) => doubted(one, why, i === 0 ? line.number : null)));
		}
	}
	for (const title of new Set(parts.map((one) => one.title))) {
		const theirs = parts.filter((one) => one.title === title).map(({ row }) => row);
		decided.push({ code: 'parts', rows: theirs, title });
	}
	return rows;
}

function isSaid(line: Marked): line is Line {
	return !('kind' in line);
}

/** The word that a line is, or begins with; a title in quotes is a title. */
function wordOf({ text }: Line) {
	return text.startsWith('"') ? null : rowWord(text);
}

/** The row of a line that is no song; null where it is one. */
function markRow(
	line: Line,
	{ hasSongs, hasWord }: { readonly hasSongs: boolean; readonly hasWord: boolean },
): ListRow | null {
	const { row, text } = line;
	const heading = { kind: 'aside', row, text, why: 'heading' } as const;
	if (SEPARATOR.test(text))
		return hasSongs && !hasWord ? { kind: 'encore', row, isEncore: true } : heading;
	const word = wordOf(line);
	// With a number `Part Two` is a song; `2. Set` is none.
	if (word?.is === 'set' && !(line.isNumbered && /\S\s+\S/.test(text))) {
		if (word.isBare) return { kind: 'encore', row, isEncore: false };
		return hasSongs ? { kind: 'interval', row, length: null, isImplied: true } : heading;
	}
	if (word?.is === 'interval' && (word.isSure || !line.isListed)) {
		const length = word.length === null ? null : { text: word.length, column: 'list' };
		return { kind: 'interval', row, length };
	}
	if (word?.is === 'total' && !line.isNumbered) return { kind: 'aside', row, text, why: 'total' };
	if (word?.is === 'encore' && word.song === null) return { kind: 'encore', row, isEncore: true };
	return null;
}

type Doubt = { readonly why: 'heading-or-song' | 'interval-or-song'; readonly piece: string };

/** What else a line may be that is read as a song. */
function doubtOf(line: Line, isCapital: boolean): Doubt | null {
	const word = wordOf(line);
	if (word?.is === 'interval') return { why: 'interval-or-song', piece: word.length ?? '' };
	const isRemark =
		(word === null && (line.isBetween || (isCapital && isSpoken(line)))) ||
		/^\([^()]*(?:\s[^()]*){3}\)$/.test(line.text);
	return isRemark ? { why: 'heading-or-song', piece: '' } : null;
}

function doubted(song: SongRow, doubt: Doubt | null, number: Line['number']): SongRow {
	const isOwn = song.doubt !== null && doubt?.why === 'heading-or-song';
	if (doubt === null || isOwn) return { ...song, number };
	return { ...song, number, doubt: { ...doubt, title: song.title } };
}

/** Whether most lines begin with a capital or a number. */
function areCapital(lines: readonly Marked[]): boolean {
	return lines.filter(({ text }) => SMALL.test(text)).length * 3 < lines.length;
}

/** Whether a line without a number runs on in small letters. */
function isSpoken({ text, isListed }: Line): boolean {
	return !isListed && SMALL.test(text) && text.split(' ').length >= 3;
}

const SMALL = /^\p{Ll}/u;

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
