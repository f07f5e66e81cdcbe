import fc from 'fast-check';
import stringWidth from 'string-width';
import { describe, expect, test } from 'vitest';

import { cleanText } from '../../src/base/clean-text.ts';
import { displayWidth, fitWidth, graphemes } from '../../src/base/display-width.ts';

const anyText = fc
	.array(fc.oneof(fc.integer({ min: 0, max: 0x7f }), fc.integer({ min: 0, max: 0x10ffff })), {
		maxLength: 100,
	})
	.map((points) => String.fromCodePoint(...points));

const RUNS = { numRuns: Number(process.env.PROPERTY_RUNS ?? 200) };

describe('the cells that a text fills', () => {
	// Wide and narrow by Unicode's East Asian Width (UAX #11); emoji are two cells (common practice).
	test.each([
		['', 0],
		['Amber', 5],
		['Café', 4],
		['夜', 2],
		['x\u0301\u0323', 1],
		['👩‍👩‍👧', 2],
		['🇳🇴', 2],
		['1️⃣', 2],
		['½↓ … ·', 6],
	])('%j: %i', (text, cells) => {
		expect(displayWidth(text)).toBe(cells);
	});
});

describe('what a reader sees as one character', () => {
	// Extended grapheme clusters, UAX #29.
	test('stays together', () => {
		expect(graphemes('e\u0301👩‍👩‍👧🇳🇴x')).toEqual(['e\u0301', '👩‍👩‍👧', '🇳🇴', 'x']);
		expect(graphemes('abc')).toEqual(['a', 'b', 'c']);
	});
});

describe('characters that are counted without the library', () => {
	const points = Array.from({ length: 0x3000 }, (_, index) => index + 0x20);
	const plain = points.map((point) => String.fromCodePoint(point));
	const segmenter = new Intl.Segmenter('en', { granularity: 'grapheme' });

	test('are as wide as the library says', () => {
		// Also between others, where one that joins would take no cell of its own.
		const wrong = plain.filter((one) =>
			[one, `é${one}`, `${one}♭`].some((text) => displayWidth(text) !== stringWidth(text)),
		);
		expect(wrong).toEqual([]);
	});

	test('stand alone where Unicode has them alone', () => {
		const segments = (text: string) => Array.from(segmenter.segment(text), (one) => one.segment);
		const wrong = plain
			.flatMap((one) => [`é${one}`, `${one}♭`, `${one}${one}`])
			.filter((text) => graphemes(text).join('|') !== segments(text).join('|'));
		expect(wrong).toEqual([]);
	});
});

describe('a text made to fit', () => {
	test.each([
		['Amber', 8, {}, 'Amber   '],
		['Amber', 8, { align: 'right' as const }, '   Amber'],
		['Amber', 5, {}, 'Amber'],
		['Amber', 4, {}, 'Amb…'],
		['Amber', 4, { ascii: true }, 'Amb~'],
		['Amber', 1, {}, '…'],
		['Amber', 0, {}, ''],
		['Amber', -3, {}, ''],
		['夜の部', 4, {}, '夜… '],
		['夜の部', 4, { align: 'right' as const }, ' 夜…'],
		['夜', 1, {}, '…'],
		['A👩‍👩‍👧B', 3, {}, 'A… '],
		['x\u0301yz', 2, {}, 'x\u0301…'],
	])('%j in %i cells %o', (text, width, options, shown) => {
		expect(fitWidth(text, width, options)).toBe(shown);
	});

	test('fills exactly the width, whatever it holds', () => {
		fc.assert(
			fc.property(
				anyText,
				fc.integer({ min: 0, max: 40 }),
				fc.constantFrom('left' as const, 'right' as const),
				(text, width, align) => {
					expect(displayWidth(fitWidth(cleanText(text), width, { align }))).toBe(width);
				},
			),
			RUNS,
		);
	});
});
