// A set list as people type it into a message: a line a song, with numbers or bullets, lengths and tunings in
// brackets, `>>` for what follows at once.

import { LineReader, type PastedWishes } from './line-reader.ts';
import { type Decided, type ListRow, rowWord, type SetList, type SongRow } from './list-row.ts';
import {
	firstOfBare,
	isFarewell,
	isGreeting,
	isMark,
	type Line,
	linesOf,
	SEPARATOR,
	SET_HEADING,
} from './pasted-lines.ts';

/** A heading is cut here; nobody has a longer one. */
const LONGEST_TITLE = 200;

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
