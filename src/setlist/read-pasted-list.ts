// A set list as people type it into a message: a line a song, with numbers or bullets, lengths and tunings in
// brackets, `>>` for what follows at once.

import { legendOf } from './legend.ts';
import { LineReader, type PastedWishes } from './line-reader.ts';
import type { Decided, ListRow, SetList, SongRow } from './list-row.ts';
import { isOfDay, listedDay, sureHour, withoutHours } from './listed-day.ts';
import {
	firstOfBare,
	isFarewell,
	isGearHeading,
	isGreeting,
	isMark,
	isNoSongLine,
	type Line,
	linesOf,
	SEPARATOR,
} from './pasted-lines.ts';
import { rowWord } from './row-words.ts';

/** A heading is cut here; nobody has a longer one. */
const LONGEST_TITLE = 200;

/** The set list of this text. */
export function readPastedList(text: string, wishes: PastedWishes): SetList {
	const { lines, firstHour, sign } = linesOf(text);
	const isListed = isListOfMarks(lines);
	const first = isListed ? lines.findIndex((line) => line.isListed) : firstOfBare(lines);
	const end = isListed ? lines.findLastIndex((line) => line.isListed) + 1 : lines.length;
	// Whoever writes anew in a chat, or takes leave, writes below the list.
	const farewell = lines.findIndex(
		(line, index) =>
			(index >= first && isFarewell(line, index >= end)) ||
			(index >= Math.max(end, first + 1) && line.isOpening) ||
			(!isListed && index > first && line.isOpening),
	);
	const last = farewell === -1 ? lines.length : farewell;
	const heading = lines.slice(0, first).filter(({ text: one }) => !isMark(one));
	const title = heading.find(
		(one) => !isGreeting(one.text) && !isOfDay(one.text) && !isNoSongLine(one, isListed),
	);
	const decided: Decided[] = [];
	const above = heading.flatMap((one) => (one === title ? [] : [one.text]));
	const gear = gearLines(lines, { first, last });
	const aside = (line: Line, why: 'heading' | 'no-song') =>
		({ kind: 'aside', row: line.row, text: line.text, why }) as const;
	const marked = lines.map((line, index): Marked => {
		if (index >= last || (index < first && !isMark(line.text))) return aside(line, 'heading');
		if (gear.has(line)) return aside(line, 'heading');
		return isNoSongLine(line, isListed) ? aside(line, 'no-song') : line;
	});
	const among = lines.flatMap((line, index) => {
		const one = marked[index];
		const isNoSong = one !== undefined && 'kind' in one && one.why === 'no-song';
		return isNoSong || gear.has(line) ? [line.text] : [];
	});
	const below = lines.slice(last).map(({ text: one }) => one);
	const day = listedDay([...heading.map((one) => one.text), ...among, ...below]);
	for (const [code, texts] of [
		['above', above],
		['among', among],
		['below', below],
	] as const) {
		const unused = withoutHours(texts, day);
		if (unused.length > 0) decided.push({ code, texts: unused });
	}
	if (sign !== null) decided.push({ code: 'in-one-line', sign });
	if (firstHour !== null) decided.push({ code: 'clock-lines', first: firstHour });
	const reader = new LineReader(
		wishes,
		marked.flatMap((line) => ('kind' in line || isMark(line.text) ? [] : [line.text])),
	);
	const rows = ordered(marked, reader, decided);
	const spoken = reader.spokenOf.filter((name) => reader.players.some((one) => one.name === name));
	if (spoken.length > 0) decided.push({ code: 'named-in-lines', names: spoken });
	if (reader.hasGuessedPlayer) decided.push({ code: 'one-player' });
	return {
		title: title?.text.replace(/\s*:$/, '').slice(0, LONGEST_TITLE) ?? null,
		players: reader.players,
		rows,
		rowCount: text.split('\n').filter((line) => line.trim() !== '').length,
		decided,
		abbreviations: legendOf(rows),
		day: { ...day, start: day.start ?? firstStart(firstHour) },
	};
}

/** When the first song starts; what counts from the first song on begins with nothing. */
function firstStart(firstHour: string | null): string | null {
	return firstHour === null || /^0+:00$/.test(firstHour) ? null : sureHour(firstHour);
}

/** Whether numbers or bullets say which lines are songs: a few of them among other lines say nothing. */
function isListOfMarks(lines: readonly Line[]): boolean {
	const numbered = lines.filter((line) => line.isNumbered).length;
	const listed = lines.filter((line) => line.isListed).length;
	return numbered >= 3 || (listed > 0 && listed * 2 >= lines.length);
}

/** What stands under a heading such as `Guitars:`, up to the next mark or numbered song. */
function gearLines(
	lines: readonly Line[],
	{ first, last }: { readonly first: number; readonly last: number },
): ReadonlySet<Line> {
	const found = new Set<Line>();
	let isGear = false;
	for (const [index, line] of lines.entries()) {
		if (index <= first || index >= last) continue;
		if (isGearHeading(line)) isGear = true;
		else if (isMark(line.text) || /^\(?\d/.test(line.text) || line.isNumbered) isGear = false;
		if (isGear) found.add(line);
	}
	return found;
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
	const isCapital = areCapital(lines);
	const parts: { readonly row: number; readonly title: string }[] = [];
	let hasSongs = false;
	for (const line of lines) {
		if (!isSaid(line)) {
			rows.push(line);
			continue;
		}
		const { row, text } = line;
		const word = text.startsWith('"') ? null : rowWord(text);
		if (row === firstBlank) rows.push({ kind: 'encore', row, isEncore: true });
		if (line.isPart) {
			const at = rows.findLastIndex(({ kind }) => kind === 'song');
			const whole = rows[at];
			if (whole?.kind === 'song') {
				rows[at] = { ...whole, notes: [...whole.notes, text] };
				parts.push({ row, title: whole.title });
				continue;
			}
		}
		if (SEPARATOR.test(text)) {
			if (hasSongs && !hasWord) rows.push({ kind: 'encore', row, isEncore: true });
			else rows.push({ kind: 'aside', row, text, why: 'heading' });
		} else if (word?.is === 'set' && !(line.isNumbered && /\S\s+\S/.test(text))) {
			// With a number `Part Two` is a song; `2. Set` is none.
			if (word.isBare) rows.push({ kind: 'encore', row, isEncore: false });
			else if (hasSongs) rows.push({ kind: 'interval', row, length: null, isImplied: true });
			else rows.push({ kind: 'aside', row, text, why: 'heading' });
		} else if (word?.is === 'interval' && (word.isSure || !line.isListed)) {
			const length = word.length === null ? null : { text: word.length, column: 'list' };
			rows.push({ kind: 'interval', row, length });
		} else if (word?.is === 'total' && !line.isNumbered)
			rows.push({ kind: 'aside', row, text, why: 'total' });
		else if (word?.is === 'encore' && word.song === null) {
			rows.push({ kind: 'encore', row, isEncore: true });
		} else {
			if (word?.is === 'encore') rows.push({ kind: 'encore', row, isEncore: true });
			const song = word?.is === 'encore' ? (word.song ?? text) : text;
			const read = reader.songs(song, row);
			const piece = word?.is === 'interval' ? (word.length ?? '') : null;
			const isRemark =
				(word === null && (line.isBetween || (isCapital && isSpoken(line)))) ||
				/^\([^()]*(?:\s[^()]*){3}\)$/.test(text);
			const why = piece === null ? (isRemark ? 'heading-or-song' : null) : 'interval-or-song';
			const doubtful = (one: SongRow): SongRow =>
				why === null || (one.doubt !== null && why === 'heading-or-song')
					? one
					: { ...one, doubt: { why, piece: piece ?? '', title: one.title } };
			rows.push(
				...read.map((one, i) => ({ ...doubtful(one), number: i === 0 ? line.number : null })),
			);
			hasSongs = true;
		}
	}
	for (const title of new Set(parts.map((one) => one.title))) {
		const theirs = parts.filter((one) => one.title === title).map(({ row }) => row);
		decided.push({ code: 'parts', rows: theirs, title });
	}
	return rows;
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
