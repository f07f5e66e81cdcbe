import fc from 'fast-check';
import { expect, test } from 'vitest';
import { CAPO_HIGHEST, openTuningsFor, soundingMidis, soundsLike } from '../../src/tuning/capo.ts';
import type { InstrumentKind } from '../../src/tuning/kind.ts';
import { INSTRUMENT_KINDS, KINDS } from '../../src/tuning/kind.ts';
import type { Tuning } from '../../src/tuning/tuning.ts';
import { namedTunings, readTuning } from '../../src/tuning/tuning.ts';

const RUNS = { numRuns: Number(process.env.PROPERTY_RUNS ?? 200) };

function tuning(text: string, kind: InstrumentKind): Tuning {
	const reading = readTuning(text, kind, {});
	if (!reading.ok) throw new Error(`no tuning: ${text}`);
	return reading.tuning;
}

test('open D with a capo on 2 sounds as open E, and not as E standard', () => {
	const openD = tuning('open D', 'acoustic-6');
	expect(soundsLike(openD, 2, tuning('open E', 'acoustic-6'))).toBe(true);
	expect(soundsLike(openD, 0, tuning('open E', 'acoustic-6'))).toBe(false);
	expect(soundsLike(openD, 2, tuning('E standard', 'acoustic-6'))).toBe(false);
});

test('one string off is not the sound wanted, nor is one string fewer', () => {
	const standard = tuning('E standard', 'acoustic-6');
	expect(soundsLike(tuning('drop D', 'acoustic-6'), 0, standard)).toBe(false);
	expect(soundsLike({ name: '', notes: standard.notes.slice(0, 5) }, 0, standard)).toBe(false);
	expect(soundsLike(standard, 0, { name: '', notes: standard.notes.slice(0, 5) })).toBe(false);
});

test('E standard is had from half-step down at 1 and whole step down at 2', () => {
	const ways = openTuningsFor(tuning('E standard', 'electric-12'), 'electric-12');
	expect(ways).toHaveLength(8);
	expect(ways.slice(0, 3).map((way) => [way.tuning.name, way.capo])).toEqual([
		['E standard', 0],
		['half-step down', 1],
		['whole step down', 2],
	]);
});

test('no capo goes on an upright, and none is planned on a bass by itself', () => {
	for (const kind of INSTRUMENT_KINDS) {
		const sounds = namedTunings(kind)[0] ?? { name: 'D3', notes: ['D3'] };
		const capos = openTuningsFor(sounds, kind).map(({ capo }) => capo);
		const isBass = /^(?:bass|upright)/.test(kind);
		// Capos for electric basses are sold; on an upright there is no fret to put one behind: common practice.
		expect(KINDS[kind].canTakeCapo, kind).toBe(!kind.startsWith('upright'));
		expect(capos, kind).toEqual(isBass ? [0] : [0, 1, 2, 3, 4, 5, 6, 7]);
	}
	expect(CAPO_HIGHEST).toBe(7);
});

test('a sound at the bottom of the range leaves only the frets that have notes', () => {
	expect(openTuningsFor({ name: 'D-1', notes: ['D-1'] }, 'other').map(({ capo }) => capo)).toEqual([
		0, 1, 2,
	]);
});

test('every open tuning that is offered sounds as wanted', () => {
	const wanted = INSTRUMENT_KINDS.flatMap((kind) =>
		namedTunings(kind).map((sounds) => ({ kind, sounds })),
	);
	fc.assert(
		fc.property(fc.constantFrom(...wanted), ({ kind, sounds }) => {
			for (const way of openTuningsFor(sounds, kind)) {
				expect(soundsLike(way.tuning, way.capo, sounds)).toBe(true);
				expect(soundingMidis(way.tuning, way.capo)).toEqual(soundingMidis(sounds, 0));
			}
		}),
		RUNS,
	);
});
