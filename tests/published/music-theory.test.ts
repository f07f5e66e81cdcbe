// Pitch names, frequencies, intervals and the spelling of chords against a general library of music theory,
// tonal, which is installed for these tests alone: a second opinion on every note, not only on a table's.

import { Chord, Interval, Note } from 'tonal';
import { describe, expect, test } from 'vitest';
import { keyHeard } from '../../src/tuning/capo-shapes.ts';
import { openShapeName, parseShape } from '../../src/tuning/chord-shape.ts';
import { byEar, intervalOfSize } from '../../src/tuning/interval.ts';
import { INSTRUMENT_KINDS } from '../../src/tuning/kind.ts';
import { namedTuningsOf } from '../../src/tuning/named-tunings.ts';
import { hertz, midiOf, parsePitch, transposeName } from '../../src/tuning/pitch.ts';
import { retuneSteps } from '../../src/tuning/retune-steps.ts';
import { namedTunings } from '../../src/tuning/tuning.ts';

const LETTERS = [...'CDEFGAB'];
const MARKS = ['bb', 'b', '', '#', '##'];
const OCTAVES = [-1, 0, 1, 2, 3, 4, 5, 6, 7, 8, 9];
/** Every name that MIDI has a note for. */
const NAMES = LETTERS.flatMap((letter) =>
	MARKS.flatMap((mark) => OCTAVES.map((octave) => `${letter}${mark}${octave}`)),
).filter((name) => parsePitch(name) !== null);
const ON_STRINGS = NAMES.filter((name) => /^[A-G][b#]?[1-5]$/.test(name));
const TUNINGS = INSTRUMENT_KINDS.flatMap((kind) => namedTunings(kind));

/** `P4` as the library writes it, `4P`. */
function asTonal(interval: string): string {
	const [, quality = '', number = ''] = /^([A-Za-z]+)(\d+)$/.exec(interval) ?? [];
	return `${number}${quality}`;
}

test('every pitch has the number and the frequency that the library gives it', () => {
	expect(NAMES.length).toBeGreaterThan(360);
	for (const name of NAMES) {
		expect(midiOf(name), name).toBe(Note.midi(name));
		expect(hertz(midiOf(name), 440) / (Note.freq(name) ?? 0), name).toBeCloseTo(1, 12);
	}
});

test('so has every string of every tuning that has a name', () => {
	for (const { name, notes } of TUNINGS) {
		const found = notes.map((note) => hertz(midiOf(note), 440).toFixed(6));
		expect(found, name).toEqual(notes.map((note) => Note.freq(note)?.toFixed(6)));
	}
});

test('every interval of so many semitones is called as the library calls it', () => {
	for (let semitones = 0; semitones <= 60; semitones += 1) {
		const found = asTonal(intervalOfSize(semitones));
		expect(Interval.semitones(found), found).toBe(semitones);
		// The tritone is the augmented fourth here, the diminished fifth there; both are right.
		if (semitones % 12 !== 6) expect(found).toBe(Interval.fromSemitones(semitones));
	}
});

test('what is spelled as another interval is called by what is heard', () => {
	expect(Interval.distance('Gb2', 'B2')).toBe('3A');
	const [low, high] = ['Gb2', 'B2'].map((note) => ({ note, hertz: Note.freq(note) ?? 0 }));
	expect(low && high && byEar(low, high).interval).toBe('P4');
});

test('a note goes as many semitones as the library’s intervals, spelled alike on plain letters', () => {
	const up = ['1P', '2m', '2M', '3m', '3M', '4P', '4A', '5P', '6m', '6M', '7m', '7M', '8P'];
	for (const name of ON_STRINGS) {
		for (const [semitones, interval] of up.entries()) {
			const wanted = Note.transpose(name, interval);
			const found = transposeName(name, semitones);
			expect(midiOf(found), `${name} ${interval}`).toBe(Note.midi(wanted));
			// A white key keeps its plain letter here, whatever an interval would call it.
			if (/^[A-G][b#]?\d$/.test(wanted) && Note.get(found).acc !== '') {
				expect(found, `${name} ${interval}`).toBe(wanted);
			}
		}
	}
});

describe('open shapes', () => {
	const open = ['E2', 'A2', 'D3', 'G3', 'B3', 'E4'];
	test.each([
		['022100', 'E'],
		['022000', 'Em'],
		['x02220', 'A'],
		['x02210', 'Am'],
		['xx0232', 'D'],
		['xx0231', 'Dm'],
		['320003', 'G'],
		['x32010', 'C'],
	])('%s has the notes of %s and is recognised as it', (text, name) => {
		const shape = parseShape(text) ?? [];
		expect(openShapeName(shape, open)).toBe(name);
		const heard = shape.flatMap((fret, index) =>
			fret === null ? [] : [Note.transpose(open[index] ?? '', Interval.fromSemitones(fret))],
		);
		const classes = new Set(heard.map((note) => Note.chroma(note)));
		expect(classes).toEqual(new Set(Chord.get(name).notes.map((note) => Note.chroma(note))));
		const detected = Chord.detect(heard.map((note) => Note.pitchClass(Note.simplify(note))));
		expect(detected).toContain(name.endsWith('m') ? name : `${name}M`);
	});

	test.each(['E', 'A', 'D', 'G', 'C'])(
		'%s under a capo sounds in the key that is said',
		(shape) => {
			for (let capo = 0; capo <= 7; capo += 1) {
				const key = Note.transpose(shape, Interval.fromSemitones(capo));
				expect(Note.chroma(keyHeard({ shape, capo }))).toBe(Note.chroma(key));
			}
		},
	);
});

test('a tuning that is called open is that chord', () => {
	const open = INSTRUMENT_KINDS.flatMap((kind) => namedTuningsOf(kind)).filter(({ name }) =>
		/^open [A-G]( minor)?$/.test(name),
	);
	expect(open.length).toBeGreaterThan(8);
	for (const { name, courses } of open) {
		const [, root = '', minor = ''] = /^open ([A-G])( minor)?$/.exec(name) ?? [];
		const notes = Chord.get(`${root}${minor === '' ? 'M' : 'm'}`).notes;
		const classes = new Set(courses.split(' ').map((note) => Note.pitchClass(note)));
		expect([...classes].toSorted(), name).toEqual(notes.toSorted());
	}
});

test('each string of a retuning goes as far as the library counts', () => {
	const guitar = namedTunings('electric-6');
	for (const from of guitar) {
		for (const to of guitar) {
			for (const step of retuneSteps(from.notes, to.notes, 'fixed')) {
				expect(step.move).toBe(Interval.semitones(Interval.distance(step.from, step.to)));
			}
		}
	}
});

test('beats between open strings by the library’s frequencies', () => {
	const [low, high] = ['G3', 'B3'].map((note) => ({ note, hertz: Note.freq(note) ?? 0 }));
	// 5:4 is the third that does not beat.
	const wanted = Math.abs(4 * (Note.freq('B3') ?? 0) - 5 * (Note.freq('G3') ?? 0));
	expect(low && high && byEar(low, high).beatsHz).toBeCloseTo(wanted, 9);
});
