// A rehearsal script as steps: what to press at which mark of the show clock. Reading is apart from
// playing, so that a mistake on the last line is told before the first key is pressed.

import { cleanText } from '../../base/clean-text.ts';
import { graphemes } from '../../base/display-width.ts';
import type { Problem } from '../../base/problem.ts';
import { markText, parseMark } from '../../base/show-clock.ts';
import type { Key } from '../../terminal/key.ts';
import { SCRIPT, SIZE_NEEDS } from '../../words/requests.ts';
import { notAmong } from '../not-among.ts';

export type ScreenSize = { readonly columns: number; readonly rows: number };

/** What a script does at one moment. */
export type ScriptAct =
	| { readonly do: 'press'; readonly key: Key }
	| { readonly do: 'ready' }
	| { readonly do: 'state' }
	| { readonly do: 'screen'; readonly size: ScreenSize }
	| { readonly do: 'kill' };

/** `atMs` on the show clock, never before that of the step before. */
export type ScriptStep = { readonly atMs: number; readonly line: number; readonly act: ScriptAct };

export type ScriptReading =
	| { readonly ok: true; readonly steps: readonly ScriptStep[] }
	| { readonly ok: false; readonly problems: readonly Problem[] };

/** Between two keys of one line, unless it says otherwise. */
const KEY_APART_MS = 400;

/** Keys that are written by name; all others as the sign that they type. */
export const NAMED_KEYS: readonly Key[] = [
	'space',
	'enter',
	'esc',
	'tab',
	'backspace',
	'up',
	'down',
	'left',
	'right',
	'pageup',
	'pagedown',
	'home',
	'end',
	'delete',
	'f1',
];
const DIRECTIVES = ['!ready', '!state', '!screen', '!kill'] as const;

const MOST_PROBLEMS = 20;
const MOST_REPEATS = 10_000;
const MOST_STEPS = 200_000;
const LARGEST_SIDE = 1000;

/** The screen's size where neither the script nor the request names one. */
export const DEFAULT_SIZE: ScreenSize = { columns: 80, rows: 24 };

/** A time before the first song's start may be as far away as this. */
const LONGEST_MS = 48 * 3_600_000;

/**
 * The steps of a script, in order. `file` is for the places in problems: a time or a key that cannot
 * be read, a line that begins before the keys of the line before it have ended. `defaultSize` is for
 * every `!screen` that names none.
 */
export function parseScript(
	text: string,
	file: string,
	defaultSize: ScreenSize = DEFAULT_SIZE,
): ScriptReading {
	const problems: Problem[] = [];
	const steps: ScriptStep[] = [];
	let endMs = Number.NEGATIVE_INFINITY;
	for (const [index, row] of text.split(/\r?\n/).entries()) {
		const line = index + 1;
		const complain = (problem: Omit<Problem, 'where'>, column: number): void => {
			problems.push({ ...problem, where: { file: cleanText(file), line, column } });
		};
		const words = splitWords(row, complain);
		const [first, ...rest] = words;
		if (!first) continue;
		const startMs = readTime(first, complain);
		if (startMs === null) continue;
		if (startMs < endMs) complain(tooEarly(startMs, endMs), first.column);
		if (rest.length === 0) complain(nothingToDo(), first.column + first.text.length);
		const reader = new LineReader({ startMs, line, defaultSize }, complain);
		reader.read(rest);
		// One at a time: a spread of so many would fill the stack.
		for (const step of reader.steps) steps.push(step);
		endMs = Math.max(endMs, reader.steps.at(-1)?.atMs ?? startMs);
		if (steps.length > MOST_STEPS) complain(tooLong(), 1);
		if (problems.length >= MOST_PROBLEMS || steps.length > MOST_STEPS) break;
	}
	return problems.length === 0 ? { ok: true, steps } : { ok: false, problems };
}

type Word = { readonly text: string; readonly isQuoted: boolean; readonly column: number };
type Complain = (problem: Omit<Problem, 'where'>, column: number) => void;

function splitWords(row: string, complain: Complain): readonly Word[] {
	const words: Word[] = [];
	const pattern = /\s*(?:(#.*)|"((?:[^"\\]|\\.)*)"(?=\s|$)|([^\s"]\S*|"(?=\s|$)))/uy;
	while (pattern.lastIndex < row.length) {
		const from = pattern.lastIndex;
		const found = pattern.exec(row);
		const column = from + (/\S/.exec(row.slice(from))?.index ?? 0) + 1;
		if (!found) {
			if (row.slice(from).trim() === '') return words;
			complain(badQuotes(row.slice(column - 1)), column);
			return [];
		}
		const [, comment, quoted, plain] = found;
		if (comment !== undefined) return words;
		const text = quoted === undefined ? (plain ?? '') : quoted.replace(/\\(.)/gu, '$1');
		words.push({ text, isQuoted: quoted !== undefined, column });
	}
	return words;
}

function readTime(word: Word, complain: Complain): number | null {
	const ms = word.isQuoted ? null : parseMark(word.text);
	if (ms !== null && Math.abs(ms) <= LONGEST_MS) return ms;
	complain(
		{
			code: 'script-time',
			what: SCRIPT.time,
			found: shown(word.text),
			expected: SCRIPT.timeExpected,
		},
		word.column,
	);
	return null;
}

class LineReader {
	readonly steps: ScriptStep[] = [];
	readonly #line: number;
	readonly #complain: Complain;
	readonly #defaultSize: ScreenSize;
	#atMs: number;
	#hasPressed = false;

	constructor(
		from: { readonly startMs: number; readonly line: number; readonly defaultSize: ScreenSize },
		complain: Complain,
	) {
		this.#atMs = from.startMs;
		this.#line = from.line;
		this.#defaultSize = from.defaultSize;
		this.#complain = complain;
	}

	read(words: readonly Word[]): void {
		for (let index = 0; index < words.length; index += 1) {
			const word = words[index] as Word;
			if (word.isQuoted) this.#type(word);
			else if (word.text.length > 1 && word.text.startsWith('!')) {
				index += this.#direct(word, words.slice(index + 1));
			} else this.#press(word);
		}
	}

	/** Gives back how many of the words after it belong to it. */
	#direct(word: Word, after: readonly Word[]): number {
		if (word.text === '!ready') this.#add({ do: 'ready' });
		else if (word.text === '!state') this.#add({ do: 'state' });
		else if (word.text === '!kill') this.#add({ do: 'kill' });
		else if (word.text === '!screen') return this.#screen(word, after);
		else {
			this.#complain(unknownWord(word.text, DIRECTIVES), word.column);
		}
		return 0;
	}

	#screen(word: Word, after: readonly Word[]): number {
		const [option, value] = after;
		if (option?.text !== '--size' || option.isQuoted) {
			this.#add({ do: 'screen', size: this.#defaultSize });
			return 0;
		}
		const size = parseScreenSize(value?.text ?? '');
		if (size) this.#add({ do: 'screen', size });
		else this.#complain(badSize(value?.text ?? ''), value?.column ?? word.column);
		return value ? 2 : 1;
	}

	#type(word: Word): void {
		for (const key of graphemes(word.text)) {
			this.#pressOnce(key === ' ' ? 'space' : key, KEY_APART_MS);
		}
	}

	#press(word: Word): void {
		const [, name = '', times, apart] =
			/^(.+?)(?:\*(\d{1,9}))?(?:@(\d{1,9})ms)?$/su.exec(word.text) ?? [];
		const isKey = NAMED_KEYS.includes(name) || graphemes(name).length === 1;
		const count = Number(times ?? 1);
		if (!isKey || (times === undefined && apart !== undefined)) {
			this.#complain(unknownWord(word.text, [...NAMED_KEYS, ...DIRECTIVES]), word.column);
			return;
		}
		if (count < 1 || count > MOST_REPEATS) {
			this.#complain(badCount(count), word.column);
			return;
		}
		for (let press = 0; press < count; press += 1) {
			this.#pressOnce(name, press === 0 || apart === undefined ? KEY_APART_MS : Number(apart));
		}
	}

	#pressOnce(key: Key, apartMs: number): void {
		if (this.#hasPressed) this.#atMs += apartMs;
		this.#hasPressed = true;
		this.#add({ do: 'press', key });
	}

	#add(act: ScriptAct): void {
		this.steps.push({ atMs: this.#atMs, line: this.#line, act });
	}
}

/** Columns and rows from `120x40`, each 1 to 1000; null for anything else. */
export function parseScreenSize(text: string): ScreenSize | null {
	const found = /^(\d{1,4})x(\d{1,4})$/i.exec(text);
	const columns = Number(found?.[1]);
	const rows = Number(found?.[2]);
	const isUsable = (side: number): boolean => side >= 1 && side <= LARGEST_SIDE;
	return isUsable(columns) && isUsable(rows) ? { columns, rows } : null;
}

function shown(text: string): string {
	const clean = cleanText(text);
	return clean.length > 40 ? `${clean.slice(0, 40)}…` : clean;
}

function badSize(found: string): Omit<Problem, 'where'> {
	return {
		code: 'script-size',
		what: SIZE_NEEDS,
		found: found === '' ? SCRIPT.nothing : shown(found),
		expected: SCRIPT.sizeExpected,
	};
}

function badCount(count: number): Omit<Problem, 'where'> {
	return {
		code: 'script-count',
		what: SCRIPT.count,
		found: String(count),
		expected: SCRIPT.countExpected(MOST_REPEATS),
	};
}

function badQuotes(found: string): Omit<Problem, 'where'> {
	return {
		code: 'script-quotes',
		what: SCRIPT.quotes,
		found: shown(found),
		expected: SCRIPT.quotesExpected,
	};
}

function unknownWord(word: string, known: readonly string[]): Omit<Problem, 'where'> {
	const unknown = { code: 'script-key', what: SCRIPT.word, found: word };
	return {
		...notAmong(unknown, known),
		found: shown(word),
		expected: SCRIPT.wordExpected([...NAMED_KEYS.slice(0, 9), ...DIRECTIVES]),
	};
}

function tooEarly(startMs: number, endMs: number): Omit<Problem, 'where'> {
	return {
		code: 'script-overlap',
		what: SCRIPT.overlap,
		found: markText(startMs),
		expected: SCRIPT.orLater(
			`${markText(endMs)}${endMs % 1000 === 0 ? '' : `.${String(Math.abs(endMs % 1000)).padStart(3, '0')}`}`,
		),
		hint: SCRIPT.apart,
	};
}

function nothingToDo(): Omit<Problem, 'where'> {
	return {
		code: 'script-empty',
		what: SCRIPT.empty,
		expected: SCRIPT.emptyExpected,
	};
}

function tooLong(): Omit<Problem, 'where'> {
	return {
		code: 'script-long',
		what: SCRIPT.long,
		expected: SCRIPT.longExpected(MOST_STEPS),
	};
}
