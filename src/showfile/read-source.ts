// The bytes of a show file as text, or the reasons why they are none. Apart from YAML because size and
// encoding must be judged before anything tries to understand the words.

import type { Problem } from '../base/problem.ts';

/** A show's files may have this many bytes in all: a season's gear and songs many times over. */
export const LARGEST_SHOW_BYTES = 1_000_000;

/** Text with plain line ends, or what is wrong with the bytes. */
export type SourceText =
	| { readonly ok: true; readonly text: string }
	| { readonly ok: false; readonly problems: readonly Problem[] };

/** Complaints about single characters in one file; past these the file is plainly no text. */
const MOST_PROBLEMS = 10;

const LF = 0x0a;
// Control characters but tab and line feed. Those from U+0080 on are shown as what they are, not refused.
const UNREADABLE = /[^\P{Cc}\t\n\r\u0080-\u009f]|\r(?!\n)/gu;

const UTF16_HINT = 'Save it as UTF-8 in your editor.';

/**
 * The text of UTF-8 bytes, a leading byte order mark dropped and CRLF turned into LF. Refused, with
 * the line: bytes that are no UTF-8 (UTF-16 and lone surrogates among them), NUL and other control
 * characters, a carriage return that ends no line. More than `mostBytes` is refused unread.
 */
export function readSource(file: string, bytes: Uint8Array, mostBytes: number): SourceText {
	if (bytes.length > mostBytes) return { ok: false, problems: [tooLarge(file, bytes.length)] };
	if (hasUtf16Mark(bytes)) {
		const problem: Problem = {
			code: 'not-utf8',
			what: 'the file is not UTF-8 text',
			where: { file, line: 1, column: 1 },
			found: 'UTF-16',
			hint: UTF16_HINT,
		};
		return { ok: false, problems: [problem] };
	}
	const text = decode(bytes);
	if (text === null) return { ok: false, problems: badBytes(file, bytes) };
	const problems = badCharacters(file, text);
	if (problems.length > 0) return { ok: false, problems };
	return { ok: true, text: text.replaceAll('\r\n', '\n') };
}

function tooLarge(file: string, size: number): Problem {
	return {
		code: 'too-large',
		what: 'the file is too large',
		where: { file },
		found: `${(Math.ceil(size / 100_000) / 10).toFixed(1)} MB`,
		expected: 'at most 1 MB, included files counted in',
		hint: 'Check that it is the right file.',
	};
}

function hasUtf16Mark(bytes: Uint8Array): boolean {
	const [first, second] = bytes;
	return (first === 0xff && second === 0xfe) || (first === 0xfe && second === 0xff);
}

function decode(bytes: Uint8Array): string | null {
	try {
		return new TextDecoder('utf-8', { fatal: true }).decode(bytes);
	} catch {
		return null;
	}
}

// A line feed is never part of a longer UTF-8 sequence, so each line can be tried by itself.
function badBytes(file: string, bytes: Uint8Array): Problem[] {
	const problems: Problem[] = [];
	for (let start = 0, line = 1; start <= bytes.length; line += 1) {
		const feed = bytes.indexOf(LF, start);
		const end = feed === -1 ? bytes.length : feed;
		const part = bytes.subarray(start, end);
		if (decode(part) === null) {
			const column = new TextDecoder('utf-8').decode(part).indexOf('\ufffd') + 1;
			problems.push({
				code: 'not-utf8',
				what: 'bytes stand here that are not UTF-8 text',
				where: { file, line, column },
				hint: UTF16_HINT,
			});
			if (problems.length === MOST_PROBLEMS) break;
		}
		start = end + 1;
	}
	return problems;
}

function badCharacters(file: string, text: string): Problem[] {
	const problems: Problem[] = [];
	let line = 1;
	let lineStart = 0;
	for (const match of text.matchAll(UNREADABLE)) {
		for (let feed = text.indexOf('\n', lineStart); feed !== -1 && feed < match.index; ) {
			line += 1;
			lineStart = feed + 1;
			feed = text.indexOf('\n', lineStart);
		}
		const where = { file, line, column: match.index - lineStart + 1 };
		problems.push(badCharacter(match[0].charCodeAt(0), where));
		if (problems.length === MOST_PROBLEMS) break;
	}
	return problems;
}

function badCharacter(code: number, where: Problem['where'] & object): Problem {
	if (code === 0x0d) {
		return {
			code: 'lone-return',
			what: 'a carriage return stands here that ends no line',
			where,
			hint: 'Save the file with line ends LF or CRLF.',
		};
	}
	return {
		code: 'control-character',
		what: 'a control character stands here',
		where,
		found: code === 0 ? 'NUL' : `U+${code.toString(16).toUpperCase().padStart(4, '0')}`,
		hint: code === 0 ? UTF16_HINT : 'Take it out.',
	};
}
