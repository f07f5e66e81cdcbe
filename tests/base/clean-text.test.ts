import fc from 'fast-check';
import { describe, expect, test } from 'vitest';

import { cleanText } from '../../src/base/clean-text.ts';

const RUNS = { numRuns: Number(process.env.PROPERTY_RUNS ?? 200) };

// Control sequences from ECMA-48 and xterm's "Control Sequences" page, from memory.
const HOSTILE: readonly (readonly [what: string, text: string, shown: string])[] = [
	['sets the window title (OSC 0)', '\x1b]0;gone\x07Amber', '␛]0;gone␇Amber'],
	['hides a link (OSC 8)', '\x1b]8;;file:///etc\x1b\\Amber', '␛]8;;file:///etc␛\\Amber'],
	['writes the clipboard (OSC 52)', '\x1b]52;c;cm0=\x07', '␛]52;c;cm0=␇'],
	['asks for a font (OSC 50)', '\x1b]50;?\x07', '␛]50;?␇'],
	['opens a device string (DCS)', '\x1bP$q"p\x1b\\', '␛P$q"p␛\\'],
	['asks where the cursor is (CSI 6n)', '\x1b[6n', '␛[6n'],
	['resets the terminal', '\x1bc', '␛c'],
	['is cut off in the middle', 'Amber\x1b[38;5', 'Amber␛[38;5'],
	['uses an eight-bit CSI', '\x9b2JAmber', '·2JAmber'],
	['uses eight-bit DCS, OSC and ST', '\x90q\x9d0;x\x9c', '·q·0;x·'],
	['goes back over the line (CR)', 'ready\rgone!', 'ready␍gone!'],
	['rubs out what stands there (BS)', 'wrong\b\b\b\b\bright', 'wrong␈␈␈␈␈right'],
	['ends the text (NUL)', 'A\0B', 'A␀B'],
	['rings and rubs out (BEL, DEL)', '\x07\x7f', '␇␡'],
	['runs right to left (U+202E)', 'A\u202eB\u202c', 'A·B·'],
	['isolates a direction', '\u2066A\u2069\u200f', '·A··'],
	['marks an Arabic letter', 'A\u061cB', 'A·B'],
	['holds invisible spaces', 'A\u200b\u2060\ufeffB', 'A···B'],
	['hides something between two emoji', '😀\u200b😀\u202e😀', '😀·😀·😀'],
	['holds joiners outside an emoji', 'A\u200dB\u200cC', 'A·B·C'],
	['holds a soft hyphen', 'A\u00adB', 'A·B'],
	['spells in tag characters', 'A\u{e0068}\u{e0069}', 'A··'],
	['dresses a plain letter with a selector', 'A\ufe0f1\ufe0e', 'A·1·'],
	['holds a far variation selector', 'A\u{e0100}', 'A·'],
	['is filled with Hangul fillers', '\u3164\u115f', '··'],
	['holds annotation anchors', '\ufff9A\ufffb', '·A·'],
	['holds half a surrogate pair', 'A\ud83dB\udc00', 'A�B�'],
	['holds a code that is no character', 'A\uffffB', 'A�B'],
];

describe('text from outside', () => {
	test.each(HOSTILE)('that %s', (_, text, shown) => {
		expect(cleanText(text)).toBe(shown);
	});

	test.each([
		['plain', 'Quay Street, second night'],
		['accented', 'Café Müller, Dvořák'],
		['wide', '夜の部 東京'],
		['right to left', 'שלום عليكم'],
		['with marks that have no composed form', 'x̣̃'],
		['a family joined from three', '👩‍👩‍👧'],
		['a joined emoji with selectors', '❤️‍🔥 🏳️‍🌈'],
		['a joined emoji with a skin tone', '👩🏽‍🎤'],
		['a flag', '🇳🇴'],
		['a keycap', '1️⃣ #️⃣'],
		['an emoji asked for as text', '☎︎'],
	])('stays as it is when it is %s', (_, text) => {
		expect(cleanText(text)).toBe(text.normalize('NFC'));
	});

	test('stands on one line, with plain spaces', () => {
		expect(cleanText('one\ntwo\r\nthree\tfour\u2028five\u00a0six\u3000seven')).toBe(
			'one two three four five six seven',
		);
	});

	test('is the same however an accent was typed', () => {
		expect(cleanText('Cafe\u0301')).toBe(cleanText('Caf\u00e9'));
	});

	test('keeps eight of 500 marks on one character', () => {
		expect(cleanText(`x${'\u0301'.repeat(500)}y`)).toBe(`x${'\u0301'.repeat(8)}y`);
	});

	test('counts the marks of each character anew', () => {
		const marked = `x${'\u0301'.repeat(6)}`;
		expect(cleanText(marked.repeat(3))).toBe(marked.repeat(3));
	});

	test('puts a mark with nothing under it on a circle', () => {
		expect(cleanText('\u0301A')).toBe('◌\u0301A');
	});

	test('of a megabyte of marks in the worst order is done within a second', () => {
		const text = `x${'\u0301\u0323'.repeat(500_000)}`;
		const began = performance.now();
		expect(cleanText(text)).toHaveLength(9);
		expect(performance.now() - began).toBeLessThan(1000);
	});
});

describe('whatever the text', () => {
	const point = fc.oneof(
		fc.integer({ min: 0, max: 0x9f }),
		fc.integer({ min: 0x300, max: 0x36f }),
		fc.integer({ min: 0x2000, max: 0x206f }),
		fc.integer({ min: 0xfe00, max: 0xfe0f }),
		fc.integer({ min: 0x1f3fb, max: 0x1f3ff }),
		fc.integer({ min: 0x1f466, max: 0x1f469 }),
		fc.integer({ min: 0xe0000, max: 0xe01ef }),
		fc.integer({ min: 0, max: 0x10ffff }),
	);
	const anyText = fc
		.array(point, { maxLength: 40 })
		.map((points) => String.fromCodePoint(...points));

	test('nothing is left that could steer a terminal or hide', () => {
		fc.assert(
			fc.property(anyText, (text) => {
				const clean = cleanText(text);
				expect(clean).not.toMatch(/[\p{Cc}\p{Bidi_Control}\p{Cs}\u{e0000}-\u{e0fff}]/u);
				expect(clean).not.toMatch(/[\u200b\u200c\u2028\u2029\u2060-\u2064\ufeff\u00ad]/u);
				expect(clean).not.toMatch(/\p{M}{10}/u);
			}),
			RUNS,
		);
	});

	test('it is in NFC, and cleaning it again changes nothing', () => {
		fc.assert(
			fc.property(anyText, (text) => {
				const clean = cleanText(text);
				expect(clean.normalize('NFC')).toBe(clean);
				expect(cleanText(clean)).toBe(clean);
			}),
			RUNS,
		);
	});
});
