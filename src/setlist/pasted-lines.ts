// The lines of a pasted list: which are numbered, which are marks, what people write above the list and below it.

import { rowWord } from './list-row.ts';

const NUMBER = /^(?:\(?\d{1,3}[.):]\)?|#\d{1,3}[.):]?|\d{1,3}\s[-–—])\s*/;
const BARE_NUMBER = /^\d{1,3}\s+(?=\S)/;
const BULLET = /^(?:[-–—*•·▪◦‣►●○☐✓+]|\[[ x]?\])\s+/i;
export const SEPARATOR = /^[-–—_=*~#.\s]{3,}$/;
export const SET_HEADING =
	/^\W*(?:(?:set|part|half|act)\s*(?:\d|one|two|three|i{1,3})|(?:\d|1st|2nd|3rd|first|second|third)\.?\s*(?:set|part|half|act)|set)\W*$/i;
export type Line = {
	readonly row: number;
	readonly text: string;
	readonly isListed: boolean;
	/** A blank line stands above it. */
	readonly isAfterBlank: boolean;
};

export function linesOf(text: string): readonly Line[] {
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

export function isMark(text: string): boolean {
	return SEPARATOR.test(text) || SET_HEADING.test(text) || rowWord(text) !== null;
}

/** Without numbers a line alone before the first blank one is the title, and what greets above it is no song. */
export function firstOfBare(lines: readonly Line[]): number {
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

export function isGreeting(text: string): boolean {
	return HELLO.test(text) || INTRODUCES.test(text);
}

/** Behind the last numbered line; in a list without numbers it must stand apart from the songs. */
export function isFarewell({ text, isAfterBlank, isListed }: Line, isBehindAll: boolean): boolean {
	return !isListed && FAREWELL.test(text) && (isBehindAll || isAfterBlank) && /[,!.]/.test(text);
}
