// `same as 1` behind a title: the song is played as another one of the list, by its number, its place or its title.

import { titleKey } from './name-key.ts';

const LEAD = '^(.*?\\S)\\s*(?:\\s[-–—|]|[,;(])\\s*';
const WORDS = '(?:same|ditto|dito)\\s+(?:\\p{L}+\\s+)?as';
const NUMBER = '(?:song|track|no\\.?|nr\\.?|number|#)?\\s*(\\d{1,3})(?![:.\\d])';
const ABOVE = '(?:the\\s+)?(?:above|before|last|previous)(?:\\s+(?:one|song))?(?![\\p{L}])';
/** What may stand behind it: lengths, brackets, what follows at once. */
const TAIL = "((?:[\\s,;)–—-]*(?:\\([^()]*\\)|\\d{1,2}[:'’′]\\d\\d))*[\\s)]*(?:(?:>>+|→).*)?)$";
const BY_NUMBER = new RegExp(`${LEAD}(?:${WORDS}|as)\\s+${NUMBER}${TAIL}`, 'iu');
const BY_PLACE = new RegExp(
	`${LEAD}(?:(?:same\\s+)?as\\s+${ABOVE}|same(?:\\s+again)?|ditto|dito)${TAIL}`,
	'iu',
);
/** With more behind the number, which nobody reads. */
const AND_MORE = new RegExp(`${LEAD}${WORDS}\\s+(${NUMBER}.*)$`, 'iu');
const BY_TITLE = new RegExp(`${LEAD}${WORDS}\\s+(.*?)${TAIL}`, 'iu');
const BEFORE = new RegExp(`^(?:${WORDS}|as)\\s+`, 'iu');
const ABOVE_ALONE = new RegExp(`^${ABOVE}$`, 'iu');
const AGAIN = /^(?:same(?:\s+again)?|ditto|dito)$/i;
const NUMBER_ALONE = new RegExp(`^${NUMBER}$`, 'iu');
const CELL = new RegExp(`^(?:${WORDS}|as)\\s+${NUMBER}$`, 'iu');

/** The line without the words, and the words themselves; null for a line without. `isTitle`: whether a line of the list begins so. */
export function sameAsIn(
	text: string,
	isTitle: (title: string) => boolean,
): { readonly rest: string; readonly said: string } | null {
	const numbered = BY_NUMBER.exec(text);
	if (numbered) return apart(text, numbered[1], numbered[3]);
	const placed = BY_PLACE.exec(text);
	if (placed) return apart(text, placed[1], placed[2]);
	const more = AND_MORE.exec(text);
	if (more) return apart(text, more[1], '');
	const titled = BY_TITLE.exec(text);
	return titled && isTitle(titled[2] ?? '') ? apart(text, titled[1], titled[3]) : null;
}

function apart(text: string, title = '', tail = '') {
	const said = text.slice(title.length, text.length - tail.length).replace(/^[\s,;|/(–—-]+/, '');
	return { rest: `${title} ${tail.replace(/^[\s)]+/, '')}`.trim(), said };
}

/** The number of the song that a player's cell refers to; null for other cells. */
export function songOfCell(text: string): string | null {
	return CELL.exec(text)?.[1] ?? null;
}

/** A song as it was listed. */
export type Listed = { readonly number: number | null; readonly title: string };

/** Which of the songs above is meant; undefined where none is, or several are. */
export function songMeant<Song extends Listed>(
	said: string,
	above: readonly Song[],
): Song | undefined {
	const text = said.trim().replace(BEFORE, '');
	if (ABOVE_ALONE.test(text) || AGAIN.test(text)) return above.at(-1);
	const number = NUMBER_ALONE.exec(text)?.[1];
	if (number === undefined) return above.findLast((one) => titleKey(one.title) === titleKey(text));
	if (above.every((one) => one.number === null)) return above[Number(number) - 1];
	const [only, other] = above.filter((one) => one.number === Number(number));
	return other ? undefined : only;
}
