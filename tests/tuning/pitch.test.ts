import fc from 'fast-check';
import { describe, expect, test } from 'vitest';

import { centsBetween, hertz, midiOf, parsePitch, transposeName } from '../../src/tuning/pitch.ts';

const RUNS = { numRuns: Number(process.env.PROPERTY_RUNS ?? 200) };

describe('a note with its octave', () => {
	test.each([
		['E2', 'E2', 40],
		['f#3', 'F#3', 54],
		['F♯3', 'F#3', 54],
		['Eb4', 'Eb4', 63],
		['e♭4', 'Eb4', 63],
		['b3', 'B3', 59],
		['bb3', 'Bb3', 58],
		['BB3', 'Bb3', 58],
		['bbb3', 'Bbb3', 57],
		['C##4', 'C##4', 62],
		['C𝄪4', 'C##4', 62],
		['D𝄫4', 'Dbb4', 60],
		['Cb4', 'Cb4', 59],
		['B#3', 'B#3', 60],
		['C-1', 'C-1', 0],
		['G9', 'G9', 127],
		[' A4 ', 'A4', 69],
	])('%j is %s', (text, name, midi) => {
		expect(parsePitch(text)).toEqual({ name, midi });
	});

	test.each([
		'',
		'E',
		'2',
		'H2',
		'E10',
		'Cb-1',
		'G#9',
		'E-2',
		'E#b2',
		'E###2',
		'E2 A2',
		'Eß2',
		'E٢',
	])('%j is none', (text) => {
		expect(parsePitch(text)).toBeNull();
	});

	test('asked for by a name that is none is a bug, and says so', () => {
		expect(() => midiOf('X9')).toThrow('not a pitch: X9');
	});
});

const anyName = fc
	.record({
		letter: fc.constantFrom(...'ABCDEFG'),
		accidental: fc.constantFrom('', '#', 'b', '##', 'bb'),
		octave: fc.integer({ min: 1, max: 7 }),
	})
	.map(({ letter, accidental, octave }) => `${letter}${accidental}${octave}`);

describe('transposing', () => {
	test('moves by exactly the semitones, and names it with one accidental at most', () => {
		fc.assert(
			fc.property(anyName, fc.integer({ min: -12, max: 12 }), (name, semitones) => {
				const moved = transposeName(name, semitones);
				expect(midiOf(moved)).toBe(midiOf(name) + semitones);
				expect(moved).toMatch(/^[A-G][#b]?(?:-1|\d)$/);
			}),
			RUNS,
		);
	});

	// A half step down is spelled in flats: common practice, no source.
	test('a half step down spells flats, a fourth down a baritone', () => {
		const standard = ['E2', 'A2', 'D3', 'G3', 'B3', 'E4'];
		expect(standard.map((name) => transposeName(name, -1)).join(' ')).toBe(
			'Eb2 Ab2 Db3 Gb3 Bb3 Eb4',
		);
		expect(standard.map((name) => transposeName(name, -5)).join(' ')).toBe('B1 E2 A2 D3 F#3 B3');
	});

	test('out of range is a bug, and says so', () => {
		expect(() => transposeName('G9', 1)).toThrow(RangeError);
		expect(() => transposeName('C-1', -1)).toThrow(RangeError);
	});
});

test('an octave is 1200 cents whatever the reference', () => {
	fc.assert(
		fc.property(
			fc.integer({ min: 0, max: 115 }),
			fc.double({ min: 390, max: 470, noNaN: true }),
			(midi, reference) => {
				expect(centsBetween(hertz(midi, reference), hertz(midi + 12, reference))).toBeCloseTo(
					1200,
					8,
				);
			},
		),
		RUNS,
	);
});
