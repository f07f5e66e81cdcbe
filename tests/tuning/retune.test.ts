import fc from 'fast-check';
import { describe, expect, test } from 'vitest';

import type { InstrumentKind } from '../../src/tuning/kind.ts';
import { INSTRUMENT_KINDS, KINDS } from '../../src/tuning/kind.ts';
import { midiOf } from '../../src/tuning/pitch.ts';
import type { RetuneKind } from '../../src/tuning/retune.ts';
import { isReachable, retuneKind, retuneSeconds } from '../../src/tuning/retune.ts';
import { namedTunings, readTuning } from '../../src/tuning/tuning.ts';

const RUNS = { numRuns: Number(process.env.PROPERTY_RUNS ?? 200) };

function notes(text: string, kind: InstrumentKind): readonly string[] {
	const reading = readTuning(text, kind, {});
	if (!reading.ok) throw new Error(`no tuning: ${text}`);
	return reading.tuning.notes;
}

test.each<[InstrumentKind, string, string, RetuneKind]>([
	['electric-6', 'E standard', 'E standard', 'none'],
	['electric-6', 'E standard', 'drop D', 'one-string'],
	['electric-6', 'E standard', 'double drop D', 'two-strings'],
	['electric-6', 'E standard', 'DADGAD', 'other'],
	['electric-6', 'E standard', 'half-step down', 'all-same-interval'],
	['electric-6', 'drop C', 'drop D', 'all-same-interval'],
	['electric-6', 'E standard', 'drop C', 'other'],
	['electric-12', 'E standard', 'drop D', 'one-string'],
	['electric-12', 'E standard', 'double drop D', 'two-strings'],
	['electric-12', 'E standard', 'whole step down', 'all-same-interval'],
	['mandolin-8', 'GDAE', 'GDGD', 'two-strings'],
	['mandolin-8', 'GDAE', 'G3 D4 A4 D5', 'one-string'],
	['bass-4', 'E standard', 'D1 G1 D2 G2', 'two-strings'],
])('%s from %s to %s: %s', (kind, from, to, change) => {
	expect(retuneKind(notes(from, kind), notes(to, kind), kind)).toBe(change);
});

test('a spelling is no change', () => {
	expect(retuneKind(['Eb2', 'Ab2'], ['D#2', 'G#2'], 'other')).toBe('none');
});

test('another number of strings is another change, and out of reach', () => {
	expect(retuneKind(['D3'], ['D3', 'A3'], 'other')).toBe('other');
	expect(isReachable(['D3'], ['D3', 'A3'], 'other')).toBe(false);
});

// Times: common practice, no source.
test.each<[InstrumentKind, readonly number[]]>([
	['electric-6', [45, 60, 75, 90, 120]],
	['electric-12', [180, 195, 210, 360, 255]],
	['bass-4', [40, 55, 70, 80, 115]],
	['mandolin-8', [60, 75, 90, 120, 135]],
])('%s takes %j seconds', (kind, seconds) => {
	const changes = ['none', 'one-string', 'two-strings', 'all-same-interval', 'other'] as const;
	expect(changes.map((change) => retuneSeconds(change, KINDS[kind].touchUpSeconds))).toEqual(
		seconds,
	);
});

describe('within reach', () => {
	test.each<[InstrumentKind, string, string, boolean]>([
		['acoustic-6', 'E standard', 'whole step down', true],
		['acoustic-6', 'E standard', 'drop C', false],
		['acoustic-6', 'E standard', 'open E', true],
		['acoustic-6', 'E standard', 'open A', false],
		['acoustic-6', 'whole step down', 'E standard', false],
		['acoustic-6', 'half-step down', 'E standard', true],
		['acoustic-6', 'E standard', 'open C', false],
		['acoustic-12', 'double drop D', 'E standard', true],
		['acoustic-12', 'DADGAD', 'E standard', false],
		['mandolin-8', 'GDAE', 'AEAE', true],
	])('%s from %s: %s %s', (kind, file, open, is) => {
		expect(isReachable(notes(file, kind), notes(open, kind), kind)).toBe(is);
	});
});

const anyPair = fc
	.constantFrom(...INSTRUMENT_KINDS.filter((kind) => kind !== 'other'))
	.chain((kind) =>
		fc.record({
			kind: fc.constant(kind),
			from: fc.constantFrom(...namedTunings(kind)),
			to: fc.constantFrom(...namedTunings(kind)),
		}),
	);

test('there and back is the same kind of work, and none only between equals', () => {
	fc.assert(
		fc.property(anyPair, ({ kind, from, to }) => {
			const there = retuneKind(from.notes, to.notes, kind);
			expect(retuneKind(to.notes, from.notes, kind)).toBe(there);
			expect(there === 'none').toBe(from === to);
		}),
		RUNS,
	);
});

test('what is in reach moves no string by more than two semitones', () => {
	fc.assert(
		fc.property(anyPair, ({ kind, from, to }) => {
			const moves = to.notes.map((note, i) => midiOf(note) - midiOf(from.notes[i] ?? ''));
			const size = KINDS[kind].stringsPerCourse;
			const raised = moves.filter((move) => move === 2).length / size;
			const furthest = Math.max(...moves.map(Math.abs));
			expect(isReachable(from.notes, to.notes, kind)).toBe(furthest <= 2 && raised <= 2);
		}),
		RUNS,
	);
});
