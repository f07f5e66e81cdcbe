import { describe, expect, test } from 'vitest';
import { keyHeard, sameSounds, shapesFor } from '../../src/tuning/capo-shapes.ts';
import { sameSoundWords } from '../../src/words/bench-advice.ts';

describe('open shapes under a capo (common practice, no source)', () => {
	test.each([
		['E', 2, 'F#'],
		['G', 2, 'A'],
		['C', 5, 'F'],
		['D', 0, 'D'],
		['A', 1, 'Bb'],
	])('%s shapes at fret %i sound in %s', (shape, capo, key) => {
		expect(keyHeard({ shape, capo })).toBe(key);
		expect(shapesFor(key)).toContainEqual({ shape, capo });
	});

	test('every way to the same sound is named once', () => {
		expect(sameSoundWords(sameSounds({ shape: 'C', capo: 2 }))).toBe(
			'capo 2 in C shapes = capo 0 in D shapes = capo 5 in A shapes = capo 7 in G shapes',
		);
	});
});
