// A set list as people type it into a message: a line a song, with numbers or bullets, lengths and tunings in
// brackets, `>>` for what follows at once.

import { legendOf } from './legend.ts';
import { LineReader, type PastedWishes } from './line-reader.ts';
import type { Decided, SetList } from './list-row.ts';
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
} from './pasted-lines.ts';
import { type Marked, rowsOfLines } from './pasted-rows.ts';

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
	const rows = rowsOfLines(marked, reader, decided);
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
