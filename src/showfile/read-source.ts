// The bytes of a show file as text, or the reasons why they are none. Apart from YAML because size and
// encoding must be judged before anything tries to understand the words.

import type { Place } from '../base/problem.ts';
import type { ShowFault } from './show-fault.ts';

/** A show's files may have this many bytes in all: a season's gear and songs many times over. */
export const LARGEST_SHOW_BYTES = 1_000_000;

/** Text with plain line ends, or what is wrong with the bytes. */
export type SourceText =
	| { readonly ok: true; readonly text: string }
	| { readonly ok: false; readonly problems: readonly ShowFault[] };

/** Complaints about single characters in one file; past these the file is plainly no text. */
const MOST_PROBLEMS = 10;

const LF = 0x0a;
// Control characters but tab and line feed. Those from U+0080 on are shown as what they are, not refused.
const UNREADABLE = /[^\P{Cc}\t\n\r\u0080-\u009f]|\r(?!\n)/gu;

/**
 * The text of UTF-8 bytes, a leading byte order mark dropped and CRLF turned into LF. Refused, with
 * the line: bytes that are no UTF-8 (UTF-16 and lone surrogates among them), NUL and other control
 * characters, a carriage return that ends no line. More than `mostBytes` is refused unread.
 */
export function readSource(file: string, bytes: Uint8Array, mostBytes: number): SourceText {
	if (bytes.length > mostBytes) return { ok: false, problems: [tooLarge(file, bytes.length)] };
	if (hasUtf16Mark(bytes)) {
		const problem: ShowFault = {
			code: 'not-utf8',
			isUtf16: true,
			where: { file, line: 1, column: 1 },
		};
		return { ok: false, problems: [problem] };
	}
	const text = decode(bytes);
	if (text === null) {
		// A picture or a packed file is full of zeros, and its lines are none.
		if (bytes.includes(0)) return { ok: false, problems: [{ code: 'not-text', where: { file } }] };
		return { ok: false, problems: badBytes(file, bytes) };
	}
	const problems = badCharacters(file, text);
	if (problems.length > 0) return { ok: false, problems };
	return { ok: true, text: text.replaceAll('\r\n', '\n') };
}

function tooLarge(file: string, size: number): ShowFault {
	return { code: 'too-large', bytes: size, where: { file } };
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
function badBytes(file: string, bytes: Uint8Array): ShowFault[] {
	const problems: ShowFault[] = [];
	for (let start = 0, line = 1; start <= bytes.length; line += 1) {
		const feed = bytes.indexOf(LF, start);
		const end = feed === -1 ? bytes.length : feed;
		const part = bytes.subarray(start, end);
		if (decode(part) === null) {
			const column = new TextDecoder('utf-8').decode(part).indexOf('\ufffd') + 1;
			problems.push({ code: 'not-utf8', isUtf16: false, where: { file, line, column } });
			if (problems.length === MOST_PROBLEMS) break;
		}
		start = end + 1;
	}
	return problems;
}

function badCharacters(file: string, text: string): ShowFault[] {
	const problems: ShowFault[] = [];
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

function badCharacter(character: number, where: Place): ShowFault {
	return character === 0x0d
		? { code: 'lone-return', where }
		: { code: 'control-character', character, where };
}
