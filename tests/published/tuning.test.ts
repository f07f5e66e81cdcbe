// Pitches, cents and intervals against values from outside. Those "computed" come from a short
// independent script on the law or from the music theory library tonal 6.3.0; none from our code.

import { describe, expect, test } from 'vitest';
import { byEar, pureRatio } from '../../src/tuning/interval.ts';
import type { InstrumentKind } from '../../src/tuning/kind.ts';
import { centsBetween, hertz, midiOf, transposeName } from '../../src/tuning/pitch.ts';
import { pureChainCents, stackedRatio } from '../../src/tuning/pure-chain.ts';
import { readTuning } from '../../src/tuning/tuning.ts';

function frequencies(text: string, kind: InstrumentKind, referenceHz: number): readonly number[] {
	const reading = readTuning(text, kind, {});
	if (!reading.ok) throw new Error(`no tuning: ${text}`);
	return reading.tuning.notes.map((note) => hertz(midiOf(note), referenceHz));
}

function expectNear(found: readonly number[], wanted: readonly number[], tolerance: number): void {
	expect(found).toHaveLength(wanted.length);
	for (const [index, value] of wanted.entries()) {
		expect(Math.abs((found[index] ?? Number.NaN) - value)).toBeLessThanOrEqual(tolerance);
	}
}

test('A4 is 440 Hz: ISO 16:1975', () => {
	expect(hertz(midiOf('A4'), 440)).toBe(440);
});

test('MIDI notes 0, 1, 9, 12: MIDI Tuning Standard text; OEIS A320304', () => {
	const found = [0, 1, 9, 12].map((midi) => hertz(midi, 440));
	expectNear(found, [8.1758, 8.662, 13.75, 16.3516], 0.000_05);
});

describe('open strings at A4 = 440', () => {
	// Computed with tonal 6.3.0, Note.freq. The six-string values stand to two places on
	// guitar-tuning pages, the bass's in a newsgroup table of 1996. Octave courses and the
	// names DADGAD and drop D are from memory.
	test.each<[string, InstrumentKind, readonly number[]]>([
		['E standard', 'electric-6', [82.4069, 110, 146.8324, 195.9977, 246.9417, 329.6276]],
		['E standard', 'bass-4', [41.2034, 55, 73.4162, 97.9989]],
		['DADGAD', 'acoustic-6', [73.4162, 110, 146.8324, 195.9977, 220, 293.6648]],
		['drop D', 'electric-6', [73.4162, 110, 146.8324, 195.9977, 246.9417, 329.6276]],
		['half-step down', 'electric-6', [77.7817, 103.8262, 138.5913, 184.9972, 233.0819, 311.127]],
	])('%s on %s', (name, kind, wanted) => {
		expectNear(frequencies(name, kind, 440), wanted, 0.0001);
	});

	test('the second string of each course of a twelve-string', () => {
		const seconds = frequencies('E standard', 'acoustic-12', 440).filter((_, i) => i % 2 === 1);
		expectNear(seconds, [164.8138, 220, 293.6648, 391.9954, 246.9417, 329.6276], 0.0001);
	});

	test('both strings of each course of a mandolin', () => {
		const wanted = [195.9977, 293.6648, 440, 659.2551].flatMap((value) => [value, value]);
		expectNear(frequencies('GDAE', 'mandolin-8', 440), wanted, 0.0001);
	});
});

test('six strings at A4 = 442: computed from the law', () => {
	const wanted = [82.7815, 110.5, 147.4998, 196.8886, 248.0641, 331.1259];
	expectNear(frequencies('E standard', 'electric-6', 442), wanted, 0.0001);
});

test('lowering a string, and its tension by the square of the pitch: tonal; T ~ f²', () => {
	const drop = [hertz(midiOf('E2'), 440), hertz(midiOf('D2'), 440)] as const;
	expectNear([centsBetween(...drop)], [-200], 1e-9);
	expectNear([(drop[1] / drop[0]) ** 2], [0.793_701], 1e-6);
	const half = hertz(midiOf('Eb2'), 440) / hertz(midiOf('E2'), 440);
	expectNear([half ** 2], [0.890_899], 1e-6);
});

describe('cents, computed from their definition', () => {
	test('of references against 440', () => {
		const found = [441, 442, 432].map((reference) => centsBetween(440, reference));
		expectNear(found, [3.9302, 7.8514, -31.7667], 0.0001);
	});

	test('of readings against the string', () => {
		const low = centsBetween(hertz(midiOf('E2'), 440), 82);
		const third = centsBetween(hertz(midiOf('G3'), 440), 196.5);
		expectNear([low, third], [-8.5693, 4.4309], 0.001);
	});

	test('one cent in hertz at E2 and E4 is 2^(1/1200)', () => {
		for (const [name, wanted] of [
			['E2', 0.047_61],
			['E4', 0.190_46],
		] as const) {
			const string = hertz(midiOf(name), 440);
			expectNear([centsBetween(string, string + wanted)], [1], 0.0003);
		}
	});

	test('just intervals; the third is 386.3137 in a tuning dictionary and an interval wiki', () => {
		const found = [4, 5, 7].map(pureRatio).map(([high, low]) => centsBetween(low, high));
		expectNear(found, [386.3137, 498.045, 701.955], 0.0001);
	});

	test('four pure fourths and a pure third fall a comma (81/80) short of two octaves', () => {
		const span = centsBetween(1, (4 / 3) ** 4 * (5 / 4));
		expectNear([span, 2400 - span, centsBetween(80, 81)], [2378.4937, 21.5063, 21.5063], 0.0001);
	});
});

test('beats between neighbouring strings in equal temperament: |q·high − p·low|, computed', () => {
	const [e, a, g, b] = ['E2', 'A2', 'G3', 'B3'].map((name) => hertz(midiOf(name), 440));
	const fourth = byEar({ note: 'E2', hertz: e ?? 0 }, { note: 'A2', hertz: a ?? 0 });
	const third = byEar({ note: 'G3', hertz: g ?? 0 }, { note: 'B3', hertz: b ?? 0 });
	expectNear([fourth.beatsHz, third.beatsHz], [0.3724, 7.778], 0.0001);
	expectNear([fourth.centsFromPure, third.centsFromPure], [1.955, 13.6863], 0.0001);
});

test('an equal third above 440 Hz and one of four pure fifths: a page on the mathematics of music', () => {
	expectNear([hertz(midiOf('C#5'), 440)], [554.365], 0.0005);
	// Four fifths up and two octaves down: 81/64, a comma wider than 5/4.
	const [high, low] = stackedRatio([7, 7, -12, 7, 7, -12]);
	expect([high, low]).toEqual([81, 64]);
	expectNear([(440 * high) / low], [556.875], 0.0005);
});

test('six strings tuned pure one from the next end a comma short: 21.5063 c of 2378.4937, computed', () => {
	const [high, low] = stackedRatio([5, 5, 5, 4, 5]);
	expectNear([centsBetween(low, high)], [2378.4937], 0.0001);
	const open = ['E2', 'A2', 'D3', 'G3', 'B3', 'E4'];
	const cents = pureChainCents(open.map((note) => ({ note, hertz: hertz(midiOf(note), 440) })));
	expectNear(cents, [0, -1.955, -3.91, -5.865, -19.5513, -21.5063], 0.0001);
});

test.each([
	['E2', 2, 'F#2'],
	['A2', 7, 'E3'],
	['D3', 5, 'G3'],
	['Bb3', 3, 'Db4'],
])('%s up %i semitones is spelled as tonal 6.3.0 does: %s', (from, semitones, to) => {
	expect(transposeName(from, semitones)).toBe(to);
});

test.each([
	['E2', 'A2', 'P4', 5],
	['G3', 'B3', 'M3', 4],
	['E2', 'E4', 'P15', 24],
])('%s to %s is a %s of so many semitones, by tonal 6.3.0', (from, to, name, semitones) => {
	const [one, other] = [from, to].map((note) => ({ note, hertz: hertz(midiOf(note), 440) }));
	expect(one && other && byEar(one, other).interval).toBe(name);
	expect(midiOf(to) - midiOf(from)).toBe(semitones);
});
