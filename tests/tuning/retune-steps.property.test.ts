// Steps of a retuning, transposition, capos and units hold for whatever is tuned.

import fc from 'fast-check';
import { expect, test } from 'vitest';

import { openTuningsFor, soundingMidis } from '../../src/tuning/capo.ts';
import { notesHeard } from '../../src/tuning/capo-shapes.ts';
import { INSTRUMENT_KINDS } from '../../src/tuning/kind.ts';
import { lengthWords, millimetresOf, parseLength } from '../../src/tuning/length-unit.ts';
import { midiOf, transposeName } from '../../src/tuning/pitch.ts';
import { retuneSteps } from '../../src/tuning/retune-steps.ts';
import { hertzUnder, tensionNewtons } from '../../src/tuning/string-tension.ts';
import { namedTunings } from '../../src/tuning/tuning.ts';

const RUNS = { numRuns: Number(process.env.PROPERTY_RUNS ?? 200) };

const kinds = INSTRUMENT_KINDS.filter((kind) => namedTunings(kind).length > 0);
const threeTunings = fc.constantFrom(...kinds).chain((kind) => {
	const tuning = fc.constantFrom(...namedTunings(kind));
	return fc.tuple(tuning, tuning, tuning);
});
const bridge = fc.constantFrom('fixed' as const, 'floating' as const);

/** Semitones that each string has moved once all steps are done, string 1 last. */
function moved(from: readonly string[], to: readonly string[], on: 'fixed' | 'floating'): number[] {
	const moves = from.map(() => 0);
	for (const { string, move } of retuneSteps(from, to, on).steps) {
		moves[from.length - string] = (moves[from.length - string] ?? 0) + move;
	}
	return moves;
}

test('steps to a tuning by way of another come to the steps straight there', () => {
	fc.assert(
		fc.property(threeTunings, bridge, ([one, two, three], on) => {
			const first = moved(one.notes, two.notes, on);
			const then = moved(two.notes, three.notes, on);
			const straight = moved(one.notes, three.notes, on);
			expect(first.map((move, index) => move + (then[index] ?? 0))).toEqual(straight);
		}),
		RUNS,
	);
});

test('on a fixed bridge nothing goes up before all that goes down is down', () => {
	fc.assert(
		fc.property(threeTunings, ([one, two]) => {
			const hows = retuneSteps(one.notes, two.notes, 'fixed').steps.map(({ how }) => how);
			expect(hows).toEqual(hows.toSorted());
		}),
		RUNS,
	);
});

test('on a floating bridge every string comes round twice', () => {
	fc.assert(
		fc.property(threeTunings, ([one, two]) => {
			const { steps } = retuneSteps(one.notes, two.notes, 'floating');
			const rounds = new Set(steps.map(({ string, round }) => `${string} ${round}`));
			expect([0, one.notes.length * 2]).toContain(rounds.size);
			expect(steps).toHaveLength(rounds.size);
		}),
		RUNS,
	);
});

test('a capo and a lower tuning make what was wanted', () => {
	fc.assert(
		fc.property(fc.constantFrom(...kinds), (kind) => {
			for (const wanted of namedTunings(kind)) {
				for (const { tuning, capo } of openTuningsFor(wanted, kind)) {
					expect(notesHeard(tuning.notes, { fret: capo }).map(midiOf)).toEqual(
						soundingMidis(wanted, 0),
					);
				}
			}
		}),
		RUNS,
	);
});

test('transposed there and back is the same pitch, whatever it is called', () => {
	fc.assert(
		fc.property(
			fc.integer({ min: 24, max: 100 }),
			fc.integer({ min: -23, max: 23 }),
			(midi, by) => {
				const name = transposeName('C4', midi - 60);
				expect(midiOf(transposeName(transposeName(name, by), -by))).toBe(midi);
			},
		),
		RUNS,
	);
});

test('a length goes to each unit and back', () => {
	fc.assert(
		fc.property(
			fc.integer({ min: 0, max: 2000 }),
			fc.constantFrom('mm' as const, 'thou' as const, '64ths' as const),
			(tenths, unit) => {
				const value = unit === 'thou' ? tenths : tenths / 10;
				const millimetres = millimetresOf(value, unit);
				expect(parseLength(lengthWords(millimetres, unit))).toBeCloseTo(millimetres, 9);
			},
		),
		RUNS,
	);
});

test('a pitch goes to a tension and back', () => {
	const positive = (max: number) => fc.double({ min: 0.1, max, noNaN: true });
	fc.assert(
		fc.property(positive(50), positive(1300), positive(1000), (mass, scale, hertz) => {
			const string = { gramsPerMetre: mass, scaleMillimetres: scale };
			const again = hertzUnder(tensionNewtons({ ...string, hertz }), string);
			expect(again / hertz).toBeCloseTo(1, 9);
		}),
		RUNS,
	);
});
