// What a slip in the YAML itself is called: plain sentences in place of the library's.

import type { ErrorCode } from 'yaml';

import type { Place, Problem } from '../base/problem.ts';

import { shownText } from './shown-text.ts';

type Words = { readonly what: string; readonly hint: string; readonly code?: string };

const INDENT_HINT = 'Indent by spaces, everything on one level by the same number.';
const QUOTE_HINT = 'Put the text in quotes.';

const NESTED: Words = {
	what: 'this does not stand where something of its kind can',
	hint: `${INDENT_HINT} A text that holds a colon and a space goes in quotes.`,
};

const WORDS: Readonly<Partial<Record<ErrorCode, Words>>> = {
	ALIAS_PROPS: {
		code: 'alias',
		what: 'an alias stands here, and show files have none',
		hint: QUOTE_HINT,
	},
	BAD_ALIAS: {
		code: 'alias',
		what: 'an alias stands here, and show files have none',
		hint: QUOTE_HINT,
	},
	BAD_DIRECTIVE: {
		code: 'yaml-directive',
		what: 'this line begins with a % that means nothing here',
		hint: QUOTE_HINT,
	},
	BAD_DQ_ESCAPE: {
		what: 'this backslash begins nothing that is known',
		hint: 'Double the backslash, or use single quotes.',
	},
	BAD_INDENT: {
		what: 'the indentation does not fit here',
		hint: `${INDENT_HINT} Look for a bracket that was never closed.`,
	},
	BAD_SCALAR_START: { what: 'a text cannot begin with this character', hint: QUOTE_HINT },
	BLOCK_AS_IMPLICIT_KEY: NESTED,
	BLOCK_IN_FLOW: {
		what: 'a list or map in lines cannot stand in brackets',
		hint: 'Use brackets throughout.',
	},
	KEY_OVER_1024_CHARS: { what: 'this key is too long', hint: 'Check that a colon is not missing.' },
	MISSING_CHAR: {
		what: 'a closing quote or bracket, a colon, a comma or a space is missing',
		hint: 'Look before this place for a quote or bracket left open, and at the indentation.',
	},
	MULTILINE_IMPLICIT_KEY: {
		what: 'this begins like a key and runs over several lines',
		hint: 'Look for a missing colon, quote or bracket.',
	},
	MULTIPLE_ANCHORS: {
		code: 'anchor',
		what: 'an anchor stands here, and show files have none',
		hint: QUOTE_HINT,
	},
	MULTIPLE_DOCS: {
		code: 'many-documents',
		what: 'a second document begins here, and a show file is one',
		hint: 'Take out the line --- or keep what follows in a file of its own.',
	},
	MULTIPLE_TAGS: {
		code: 'tag',
		what: 'a tag stands here, and show files have none',
		hint: QUOTE_HINT,
	},
	NON_STRING_KEY: {
		code: 'odd-key',
		what: 'a key here is not a plain word',
		hint: 'Write the key as a word, followed by a colon and a space.',
	},
	TAB_AS_INDENT: { what: 'a tab stands where spaces belong', hint: 'Indent by spaces.' },
	TAG_RESOLVE_FAILED: {
		code: 'tag',
		what: 'a tag stands here, and show files have none',
		hint: 'Take it out; a word that begins with ! goes in quotes.',
	},
	UNEXPECTED_TOKEN: {
		what: 'something stands here that does not belong',
		hint: 'Look at what comes just before; a text with special characters goes in quotes.',
	},
};

/** The problem that a fault of the YAML library is, at its place; what is not in the table keeps the library's words. */
export function syntaxProblem(code: ErrorCode, message: string, where: Place): Problem {
	const words = WORDS[code];
	if (!words) return { code: 'syntax', what: shownText(message), where, hint: QUOTE_HINT };
	return { code: words.code ?? 'syntax', what: words.what, where, hint: words.hint };
}
