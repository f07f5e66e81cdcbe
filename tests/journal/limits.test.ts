// What a record may hold, and what becomes of what it may not.

import fc from 'fast-check';
import { expect, test } from 'vitest';
import { entryProblems, fitEntries } from '../../src/journal/limits.ts';
import { runs } from './sample-journal.ts';

const codes = (entries: Parameters<typeof entryProblems>[0]) => entryProblems(entries);

test('entries within the limits are kept as they are', () => {
	const entries = [{ k: 'memo-written', words: 'é'.repeat(2048), list: [1, null, true] }];
	expect(entryProblems(entries)).toEqual([]);
	expect(fitEntries(entries)).toBe(entries);
});

test('a text over 4 KB is a problem, and is cut to 4 KB if it comes all the same', () => {
	const entries = [{ k: 'memo-written', words: 'é'.repeat(2049) }];
	expect(codes(entries)).toEqual(['text-too-long']);
	const [fitted] = fitEntries(entries);
	expect(fitted?.words).toBe(`${'é'.repeat(2046)}…`);
});

test('a number without a value is a problem, and becomes null', () => {
	for (const number of [Number.NaN, Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY]) {
		const entries = [{ k: 'noted', deep: { list: [number] } }];
		expect(codes(entries)).toEqual(['number-not-finite']);
		expect(fitEntries(entries)).toEqual([{ k: 'noted', deep: { list: [null] } }]);
	}
});

test('more than 16 KB in one step is a problem', () => {
	const entries = Array.from({ length: 5 }, () => ({ k: 'memo-written', words: 'a'.repeat(4000) }));
	expect(codes(entries)).toEqual(['record-too-long']);
	expect(codes(entries.slice(1))).toEqual([]);
});

test('a whole show is kept as it is, as in a header', () => {
	const entries = [{ k: 'show-read-again', show: { notes: 'a'.repeat(20_000) } }];
	expect(entryProblems(entries)).toEqual([]);
	expect(fitEntries(entries)).toBe(entries);
});

test('whatever is cut ends whole, and fits', () => {
	fc.assert(
		fc.property(fc.string({ unit: 'binary', minLength: 1200, maxLength: 6000 }), (words) => {
			const [fitted] = fitEntries([{ k: 'memo-written', words }]);
			expect(Buffer.byteLength(fitted?.words ?? '')).toBeLessThanOrEqual(4096);
			expect(fitted?.words.isWellFormed()).toBe(true);
			expect(words.startsWith((fitted?.words ?? '').replace(/…$/, ''))).toBe(true);
			expect(entryProblems(fitted ? [fitted] : [])).toEqual([]);
		}),
		{ numRuns: runs },
	);
});
