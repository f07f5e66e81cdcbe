// The lines of a pasted list: which are numbered, which are marks, what people write above the list and below it.

import { isLegend } from './legend.ts';
import { withoutMarks } from './message-marks.ts';
import { isEnd, isOfTheDay, rowWord } from './row-words.ts';
import { piecesOf, signBetween } from './songs-in-a-line.ts';

const NUMBER = /^(?:\(?\d{1,3}(?:[.)]|:(?!\d))\)?|#\d{1,3}[.):]?|\d{1,3}\s[-–—])\s*/;
const BARE_NUMBER = /^\d{1,3}\s+(?=\S)/;
const BULLET = /^(?:[-–—*•·▪◦‣►●○☐✓+]|\[[ x]?\])\s+/i;
export const SEPARATOR = /^[-–—_=*~#.\s]{3,}$/;
export type Line = {
	readonly row: number;
	readonly text: string;
	/** It has a number or a bullet. */
	readonly isListed: boolean;
	readonly isNumbered: boolean;
	/** As it was written; null for none. */
	readonly number: number | null;
	/** A blank line stands above it. */
	readonly isAfterBlank: boolean;
	/** Somebody writes anew here, in a chat. */
	readonly isOpening: boolean;
	/** A piece of the numbered song above it, as of a medley. */
	readonly isPart: boolean;
	/** Between two numbers that follow one another, so that it is likelier no song. */
	readonly isBetween: boolean;
};

export type Lines = {
	readonly lines: readonly Line[];
	/** The first hour of the day where every song has one before it. */
	readonly firstHour: string | null;
	/** What stands between the songs of a line; null where each has its own. */
	readonly sign: string | null;
};

export function linesOf(text: string): Lines {
	const { lines: marked, firstHour } = withoutMarks(text.split('\n'));
	const all = marked.map((line) => line.text.trim());
	const isListed = all.some((line) => NUMBER.test(line) || BULLET.test(line));
	const sign = isListed ? null : signBetween(all);
	const said = all.filter((line) => line !== '');
	const noted = footnotesOf(said);
	const beside = numbersBeside(all);
	const bare = said.filter((line) => BARE_NUMBER.test(line) && !NUMBER.test(line));
	// `7 Sisters` is a song, unless the lines are counted that way.
	const isBareCounted =
		bare.length > 2 && bare.every((line, i) => Number.parseInt(line, 10) === i + 1);
	const lines = all.flatMap((line, index): Line[] => {
		if (line === '') return [];
		const isExplained = isLegend(line) && !NUMBER.test(line);
		const isMarked = !isExplained && (NUMBER.test(line) || BULLET.test(line));
		const isBare = isBareCounted || countsOn(line, beside[index]);
		const stripped = NUMBER.test(line)
			? line.replace(NUMBER, '')
			: isBare
				? line.replace(BARE_NUMBER, '')
				: isExplained
					? line
					: line.replace(BULLET, '');
		const isSeparator = SEPARATOR.test(line);
		return [
			{
				row: index + 1,
				text: noted(isSeparator || stripped === '' ? line : stripped),
				isListed:
					!isSeparator && stripped !== '' && (isMarked || (isBare && BARE_NUMBER.test(line))),
				isNumbered: NUMBER.test(line) || (isBare && BARE_NUMBER.test(line)),
				number:
					NUMBER.test(line) || (isBare && BARE_NUMBER.test(line))
						? Number(/\d+/.exec(line)?.[0])
						: null,
				isAfterBlank: all[index - 1] === '',
				isOpening: marked[index]?.isOpening ?? false,
				isPart: BULLET.test(line) && isBetween(line, beside[index]),
				isBetween: !isMarked && !isSeparator && isBetween(line, beside[index]),
			},
		];
	});
	return {
		lines: sign === null ? lines : lines.flatMap((line) => apart(line, sign)),
		firstHour,
		sign,
	};
}

function apart(line: Line, sign: string): readonly Line[] {
	return piecesOf(line.text, sign)
		.filter((text) => text !== '')
		.map((text, index) => ({ ...line, text, isAfterBlank: line.isAfterBlank && index === 0 }));
}

/** `* = DADGAD` below a list says what a star behind a title means. */
function footnotesOf(lines: readonly string[]): (title: string) => string {
	const marks = lines
		.flatMap((line) => {
			const [, mark, means] = /^([*†‡^°#+]{1,3})\s*=\s*(\S.*)$/u.exec(line) ?? [];
			return mark === undefined || means === undefined ? [] : [{ mark, means }];
		})
		.toSorted((a, b) => b.mark.length - a.mark.length);
	return (title) => {
		const found = marks.find(({ mark }) => title.endsWith(mark));
		return found ? `${title.slice(0, -found.mark.length).trimEnd()} (${found.means})` : title;
	};
}

/** The numbers of the next numbered lines above and below a line; null for none. */
type Beside = { readonly before: number | null; readonly after: number | null };

function numbersBeside(lines: readonly string[]): readonly Beside[] {
	const numbers = lines.map((line) => (NUMBER.test(line) ? Number(/\d+/.exec(line)?.[0]) : null));
	const carried = (all: readonly (number | null)[]) => {
		let last: number | null = null;
		return all.map((number) => {
			const seen = last;
			last = number ?? last;
			return seen;
		});
	};
	const before = carried(numbers);
	const after = carried(numbers.toReversed()).toReversed();
	return lines.map((_, i) => ({ before: before[i] ?? null, after: after[i] ?? null }));
}

/** Whether a line without a number stands between two numbers that follow one another. */
function isBetween(line: string, { before, after }: Beside = NONE_BESIDE): boolean {
	return !NUMBER.test(line) && before !== null && after === before + 1;
}

/** Whether a line with a bare number is the one between its neighbours, whose numbers are marked: `5 Barrow` after `4. Lamp`. */
function countsOn(line: string, { before, after }: Beside = NONE_BESIDE): boolean {
	const number = Number.parseInt(line, 10);
	return before === number - 1 && (after === null || after === number + 1);
}

const NONE_BESIDE: Beside = { before: null, after: null };

export function isMark(text: string): boolean {
	return SEPARATOR.test(text) || rowWord(text) !== null;
}

/** Over what hangs on the rack, who is there, what is to be brought: no songs follow. */
const GEAR_HEADING =
	/^\W*(?:(?:electric|acoustic|bass|lead|rhythm)?\s*(?:guitars?|gtrs?|basses|bass|mandolins?|instruments?)|gear|backline|rack|tunings?|crew|players?|band|line[- ]?up|notes?|legend|key|abbreviations|spares?|strings|bring|to bring|reminders?|pedals?|amps?|gitarren|guitares|guitarras|chitarre)\s*:\s*$/iu;
const REMARK =
	/^(?:ps|p\.s\.|nb|n\.b\.|note|notes|remember|please|reminder|spares?|gear)\b\s*[:!,–—-]?\s/i;

export function isGearHeading({ text, isListed }: Line): boolean {
	return !isListed && GEAR_HEADING.test(text);
}

/** Whether a line of no number speaks of an hour, a page or a word, or is addressed to somebody. */
export function isNoSongLine({ text, isListed }: Line, isCounted: boolean): boolean {
	if (isListed) return isEnd(text);
	return isOfTheDay(text) || isLegend(text) || (isCounted && REMARK.test(text));
}

/** Without numbers a line alone before the first blank one is the title; what greets, or is no song, above the songs is passed. */
export function firstOfBare(lines: readonly Line[]): number {
	let hasTitle = false;
	for (const [index, line] of lines.entries()) {
		const { text } = line;
		const isAlone = lines[index + 1]?.isAfterBlank === true;
		if (isNoSongLine(line, false)) continue;
		const isSurelyGreeting = HELLO.test(text) && INTRODUCES.test(text);
		if (isSurelyGreeting || (isGreeting(text) && (isAlone || /[:,]$/.test(text)))) continue;
		if (SAYS_LIST.test(text)) continue;
		const isHeading = isAlone || /\S:$/.test(text);
		const isTitle = !hasTitle && isHeading && !isMark(text) && !text.startsWith('"');
		if (!isTitle) return index;
		hasTitle = true;
	}
	return lines.length;
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
	/^(?:thanks|thank you|thx|ta|cheers|best|regards|kind regards|see you|see ya|see u|laters?|love|yours|x{1,3}$)\b(?:[^\d]{0,40})$/iu;

/** What is above a list and says no more than that it is one. */
const SAYS_LIST = /^\W*(?:set ?list\s*:?|(?:songs?|the list|list|tonight|tonight's set)\s*:)\s*$/iu;

export function isGreeting(text: string): boolean {
	return SAYS_LIST.test(text) || HELLO.test(text) || INTRODUCES.test(text);
}

/** Behind the last numbered line; in a list without numbers it must stand apart from the songs. */
export function isFarewell({ text, isAfterBlank, isListed }: Line, isBehindAll: boolean): boolean {
	return !isListed && FAREWELL.test(text) && (isBehindAll || isAfterBlank) && /[,!.]/.test(text);
}
