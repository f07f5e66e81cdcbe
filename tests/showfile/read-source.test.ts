// Bytes to text: what a file may be encoded as, and what is named with its line.

import { describe, expect, it } from 'vitest';
import { LARGEST_SHOW_BYTES, readSource } from '../../src/showfile/read-source.ts';
import { problemText } from '../../src/words/problem-text.ts';
import { problemOf } from '../../src/words/problems.ts';

const bytes = (text: string) => new TextEncoder().encode(text);

function read(source: Uint8Array): string {
	const reading = readSource('show.yaml', source, LARGEST_SHOW_BYTES);
	return reading.ok
		? JSON.stringify(reading.text)
		: reading.problems.map((one) => problemText(problemOf(one))).join('\n');
}

describe('reading bytes', () => {
	it('takes UTF-8 with a byte order mark and with CRLF', () => {
		expect(read(bytes('\ufeffa: 1\r\nb: ü\r\n'))).toBe('"a: 1\\nb: ü\\n"');
	});

	it('takes tabs, and control characters of the second set, which are only shown as what they are', () => {
		expect(read(bytes('a: "x\ty\u0085"\n'))).toBe(JSON.stringify('a: "x\ty\u0085"\n'));
	});

	it('says once that a picture is no text', () => {
		// The first bytes of a PNG: ISO/IEC 15948, section 5.2; then the length of its first chunk.
		const picture = [0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a, 0, 0, 0, 13, 0x0a, 0xff];
		expect(read(new Uint8Array(picture))).toMatch(/^show\.yaml: this is not text[^\n]*$/);
	});

	it.each([
		['UTF-16', new Uint8Array([0xff, 0xfe, 0x61, 0x00]), 'show.yaml:1:1: the file is not UTF-8'],
		['UTF-16, big end first', new Uint8Array([0xfe, 0xff, 0, 0x61]), 'show.yaml:1:1: the file is'],
		[
			'a byte of Latin-1',
			new Uint8Array([0x61, 0x0a, 0x62, 0xf6]),
			'show.yaml:2:2: some bytes here',
		],
		// A sequence longer than it need be: the Unicode Standard, section 3.9, table 3-7.
		['an overlong sequence', new Uint8Array([0xc0, 0xaf]), 'show.yaml:1:1: some bytes here'],
		[
			'half a surrogate pair',
			new Uint8Array([0x61, 0xed, 0xa0, 0x80]),
			'show.yaml:1:2: some bytes here',
		],
		['a cut sequence', new Uint8Array([0xe2, 0x82]), 'show.yaml:1:1: some bytes here'],
		['NUL', bytes('a\nb\0'), 'show.yaml:2:2: a control character is not allowed here (found NUL)'],
		[
			'an escape',
			bytes('a\u001b[2J'),
			'show.yaml:1:2: a control character is not allowed here (found U+001B)',
		],
		[
			'DEL',
			bytes('\u007f'),
			'show.yaml:1:1: a control character is not allowed here (found U+007F)',
		],
		[
			'a lone carriage return',
			bytes('a\r\nb\rc'),
			'show.yaml:2:2: a carriage return here ends no line',
		],
	])('names %s with its line', (_, source, line) => {
		expect(read(source).split('\n')[0]).toContain(line);
	});

	it('says where each of several stands, and no more than ten', () => {
		const lines = read(bytes('\0\n'.repeat(30))).split('\n');
		expect(lines).toHaveLength(10);
		expect(lines[9]).toContain('show.yaml:10:1:');
	});

	it('refuses what is too large before it looks at a single character', () => {
		const untouchable = new Proxy(new Uint8Array(LARGEST_SHOW_BYTES + 1), {
			get: (target, key) => {
				if (key === 'length') return target.length;
				throw new Error(`looked at ${String(key)}`);
			},
		});
		expect(read(untouchable)).toContain('show.yaml: the file is too large (found 1.1 MB');
	});

	it('takes a file of just the largest size', () => {
		expect(
			readSource('f', new Uint8Array(LARGEST_SHOW_BYTES).fill(0x20), LARGEST_SHOW_BYTES).ok,
		).toBe(true);
	});
});
