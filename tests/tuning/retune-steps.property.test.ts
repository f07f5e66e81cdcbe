// Steps of a retuning, transposition, capos and units hold for whatever is tuned.

import fc from 'fast-check';
import { expect, test } from 'vitest';

import { parseGauge, parseScale } from '../../src/showfile/string-measure.ts';
import { openTuningsFor, soundingMidis } from '../../src/tuning/capo.ts';
import { notesHeard } from '../../src/tuning/capo-shapes.ts';
import { parseShape, shapeWords } from '../../src/tuning/chord-shape.ts';
import { INSTRUMENT_KINDS } from '../../src/tuning/kind.ts';
import { lengthWords, millimetresOf, parseLength } from '../../src/tuning/length-unit.ts';
import { midiOf, transposeName } from '../../src/tuning/pitch.ts';
import { retuneSteps } from '../../src/tuning/retune-steps.ts';
import {
	hertzUnder,
	kilogramsForce,
	poundsForce,
	tensionNewtons,
} from '../../src/tuning/string-tension.ts';
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
	for (const { string, move } of retuneSteps(from, to, on)) {
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
			const hows = retuneSteps(one.notes, two.notes, 'fixed').map(({ how }) => how);
			expect(hows).toEqual(hows.toSorted());
		}),
		RUNS,
	);
});

test('on a floating bridge every string comes round twice', () => {
	fc.assert(
		fc.property(threeTunings, ([one, two]) => {
			const steps = retuneSteps(one.notes, two.notes, 'floating');
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

test('scales and gauges come to the same millimetres in either unit', () => {
	const sixteenths = fc.integer({ min: 160, max: 672 }).map((one) => one / 16);
	fc.assert(
		fc.property(
			sixteenths,
			fc.integer({ min: 6, max: 140 }),
			fc.boolean(),
			(inches, thou, wound) => {
				const scale = parseScale(`${inches} in`);
				expect(scale).toBeCloseTo(inches * 25.4, 6);
				expect(parseScale(`${scale} mm`)).toBeCloseTo(scale ?? 0, 6);
				const mark = wound ? 'w' : '';
				const gauge = parseGauge(`${thou}${mark}`);
				expect(gauge?.millimetres).toBeCloseTo(thou * 0.0254, 6);
				expect(parseGauge(`${gauge?.millimetres} mm${mark}`)).toEqual(gauge);
			},
		),
		RUNS,
	);
});

test('forces go to pounds and kilograms alike: 0.45359237 kg to the pound', () => {
	fc.assert(
		fc.property(fc.double({ min: 0.1, max: 2000, noNaN: true }), (newtons) => {
			expect((poundsForce(newtons) * 0.453_592_37) / kilogramsForce(newtons)).toBeCloseTo(1, 12);
		}),
		RUNS,
	);
});

test('a chord shape is read as it is written', () => {
	const fret = fc.option(fc.integer({ min: 0, max: 24 }));
	const shape = fc
		.array(fret, { minLength: 1, maxLength: 12 })
		.filter((frets) => frets.some((one) => one !== null));
	// One string alone in a two-digit fret has no neighbour to be told from.
	const readable = shape.filter((frets) => frets.length > 1 || (frets[0] ?? 0) < 10);
	fc.assert(
		fc.property(readable, (frets) => {
			expect(parseShape(shapeWords(frets))).toEqual(frets);
		}),
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
