// A line of text being typed, and the ordinary keys that edit it. Letters are graphemes: an accent or
// a joined emoji goes as it came, in one.

import { graphemes } from '../base/display-width.ts';

/** The text on both sides of where the next letter goes. */
export type TextLine = { readonly before: string; readonly after: string };

/** A line with this text, ready to go on at its end. */
export function lineOf(text: string): TextLine {
	return { before: text, after: '' };
}

/** The whole text. */
export function lineText({ before, after }: TextLine): string {
	return before + after;
}

/** The line with more text typed where one is. */
export function typeInto({ before, after }: TextLine, text: string): TextLine {
	return { before: before + text, after };
}

type Edit = (line: TextLine) => TextLine;

const split = (text: string, at: number): readonly [string, string] => {
	const letters = graphemes(text);
	return [letters.slice(0, at).join(''), letters.slice(at).join('')];
};

const toStart: Edit = (line) => ({ before: '', after: lineText(line) });
const toEnd: Edit = (line) => lineOf(lineText(line));

/** What each key does, as command lines have it (GNU Readline, "Readline Init File", emacs mode). */
const EDITS: Readonly<Record<string, Edit>> = {
	left: ({ before, after }) => {
		const [rest, last] = split(before, -1);
		return { before: rest, after: last + after };
	},
	right: ({ before, after }) => {
		const [first, rest] = split(after, 1);
		return { before: before + first, after: rest };
	},
	home: toStart,
	'ctrl-a': toStart,
	end: toEnd,
	'ctrl-e': toEnd,
	backspace: ({ before, after }) => ({ before: split(before, -1)[0], after }),
	delete: ({ before, after }) => ({ before, after: split(after, 1)[1] }),
	'ctrl-u': ({ after }) => ({ before: '', after }),
	'ctrl-k': ({ before }) => ({ before, after: '' }),
	'ctrl-w': ({ before, after }) => ({ before: before.replace(/\S+\s*$/u, ''), after }),
};

/** The line after an editing key; null when the key is none. */
export function editLine(line: TextLine, key: string): TextLine | null {
	return (Object.hasOwn(EDITS, key) ? EDITS[key]?.(line) : null) ?? null;
}
