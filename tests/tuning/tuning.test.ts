import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { InstrumentKind } from '../../src/tuning/kind.ts';
import { INSTRUMENT_KINDS, KINDS, stringCount } from '../../src/tuning/kind.ts';
import { midiOf, parsePitch, transposeName } from '../../src/tuning/pitch.ts';
import { type Abbreviations, namedTunings, readTuning } from '../../src/tuning/tuning.ts';
import { tuningExpectedWords, tuningHintWords } from '../../src/words/unread-tuning.ts';

const anyText = fc
	.array(fc.oneof(fc.integer({ min: 0, max: 0x7f }), fc.integer({ min: 0, max: 0x10ffff })), {
		maxLength: 100,
	})
	.map((points) => String.fromCodePoint(...points));

const RUNS = { numRuns: Number(process.env.PROPERTY_RUNS ?? 200) };

function read(
	text: string,
	kind: InstrumentKind,
	abbreviations: Record<string, string> = {},
): string {
	const reading = readTuning(text, kind, abbreviations);
	return reading.ok ? `${reading.tuning.name}: ${reading.tuning.notes.join(' ')}` : 'refused';
}

// Tunings and their names in this file are common practice, no source.
describe('standard alone is the usual of the kind', () => {
	test.each<[InstrumentKind, string]>([
		['electric-6', 'E standard: E2 A2 D3 G3 B3 E4'],
		['nylon-6', 'E standard: E2 A2 D3 G3 B3 E4'],
		['acoustic-12', 'E standard: E2 E3 A2 A3 D3 D4 G3 G4 B3 B3 E4 E4'],
		['baritone-6', 'B standard: B1 E2 A2 D3 F#3 B3'],
		['bass-4', 'E standard: E1 A1 D2 G2'],
		['upright-4', 'E standard: E1 A1 D2 G2'],
		['bass-5', 'B standard: B0 E1 A1 D2 G2'],
		['bass-6', 'B standard: B0 E1 A1 D2 G2 C3'],
		['mandolin-8', 'GDAE: G3 G3 D4 D4 A4 A4 E5 E5'],
		['ukulele-4', 'standard: G4 C4 E4 A4'],
		['banjo-5', 'standard: G4 D3 G3 B3 D4'],
		['other', 'refused'],
	])('%s', (kind, tuning) => {
		expect(read('standard', kind)).toBe(tuning);
		expect(read('STD', kind)).toBe(tuning);
	});
});

describe('a name', () => {
	test.each([
		['half-step down', 'Eb2 Ab2 Db3 Gb3 Bb3 Eb4'],
		['whole step down', 'D2 G2 C3 F3 A3 D4'],
		['drop D', 'D2 A2 D3 G3 B3 E4'],
		['double drop D', 'D2 A2 D3 G3 B3 D4'],
		['drop C#', 'C#2 G#2 C#3 F#3 A#3 D#4'],
		['drop C', 'C2 G2 C3 F3 A3 D4'],
		['DADGAD', 'D2 A2 D3 G3 A3 D4'],
		['open G', 'D2 G2 D3 G3 B3 D4'],
		['open D', 'D2 A2 D3 F#3 A3 D4'],
		['open E', 'E2 B2 E3 G#3 B3 E4'],
		['open A', 'E2 A2 E3 A3 C#4 E4'],
		['open C', 'C2 G2 C3 G3 C4 E4'],
	])('%s gives its notes', (name, notes) => {
		expect(read(name, 'electric-6')).toBe(`${name}: ${notes}`);
	});

	test.each([
		['DROP d', 'drop D'],
		['Drop-D', 'drop D'],
		['dropped D', 'drop D'],
		['DD', 'drop D'],
		['dadgad', 'DADGAD'],
		['D A D G A D', 'DADGAD'],
		['EADGBE', 'E standard'],
		['OpG', 'open G'],
		['open-g tuning', 'open G'],
		['½↓', 'half-step down'],
		['½ step down', 'half-step down'],
		['1/2 step down', 'half-step down'],
		['Half Step Down', 'half-step down'],
		['down a half step', 'half-step down'],
		['Eb', 'half-step down'],
		['E♭', 'half-step down'],
		['Eb standard', 'half-step down'],
		['E♭ STD', 'half-step down'],
		['D standard', 'whole step down'],
		['full step down', 'whole step down'],
		['1↓', 'whole step down'],
		['drop C♯', 'drop C#'],
		['drop Db', 'drop C#'],
		['E', 'E standard'],
		['standard tuning', 'E standard'],
	])('%s is %s', (text, name) => {
		const reading = readTuning(text, 'acoustic-6', {});
		expect(reading.ok && reading.tuning.name).toBe(name);
	});

	test.each<[string, InstrumentKind]>([
		['drop D', 'mandolin-8'],
		['open G', 'bass-4'],
		['E standard', 'baritone-6'],
		['B standard', 'electric-6'],
		['GDAE', 'ukulele-4'],
		['half step', 'electric-6'],
		['half step up', 'electric-6'],
		['toString', 'electric-6'],
		['__proto__', 'electric-6'],
		['', 'electric-6'],
		['drop D', 'other'],
	])('%j is refused on %s', (text, kind) => {
		expect(read(text, kind)).toBe('refused');
	});
});

test.each(INSTRUMENT_KINDS)('what %s does not have is told with all that it has', (kind) => {
	const { expected } = refusal('quay street', kind);
	for (const { name } of namedTunings(kind)) expect(expected).toContain(name);
	expect(expected).toMatch(/note/);
});

test('letters that two tunings share mean the more usual', () => {
	expect(read('GCEA', 'ukulele-4')).toBe('standard: G4 C4 E4 A4');
});

describe('notes', () => {
	test.each<[string, InstrumentKind, string]>([
		['E2 A2 D3 G3 B3 E4', 'electric-6', 'E standard: E2 A2 D3 G3 B3 E4'],
		['d#2 g#2 c#3 f#3 a#3 d#4', 'electric-6', 'half-step down: Eb2 Ab2 Db3 Gb3 Bb3 Eb4'],
		['D2, A2, D3, G3, A3, E4', 'electric-6', 'D2 A2 D3 G3 A3 E4: D2 A2 D3 G3 A3 E4'],
		['C1 G1 D2 A2', 'bass-4', 'C1 G1 D2 A2: C1 G1 D2 A2'],
		['D2 A2 D3 G3 B3 E4', 'electric-12', 'drop D: D2 D3 A2 A3 D3 D4 G3 G4 B3 B3 E4 E4'],
		[
			'E2 E3 A2 A3 D3 D4 G3 G4 B3 B3 E4 E4',
			'acoustic-12',
			'E standard: E2 E3 A2 A3 D3 D4 G3 G4 B3 B3 E4 E4',
		],
		[
			'E3 E2 A3 A2 D4 D3 G4 G3 B3 B3 E4 E4',
			'acoustic-12',
			'E standard: E2 E3 A2 A3 D3 D4 G3 G4 B3 B3 E4 E4',
		],
		['C3 G3 D4 A4', 'mandolin-8', 'C3 C3 G3 G3 D4 D4 A4 A4: C3 C3 G3 G3 D4 D4 A4 A4'],
		['G2 D3 A3 E4', 'other', 'G2 D3 A3 E4: G2 D3 A3 E4'],
		['G3 D4 A4 D5', 'mandolin-8', 'G3 G3 D4 D4 A4 A4 D5 D5: G3 G3 D4 D4 A4 A4 D5 D5'],
		['G4 C4 E4 A4', 'ukulele-4', 'standard: G4 C4 E4 A4'],
		['A4', 'other', 'A4: A4'],
		['D3 A3 D4', 'other', 'D3 A3 D4: D3 A3 D4'],
	])('%s on %s', (text, kind, tuning) => {
		expect(read(text, kind)).toBe(tuning);
	});

	test('too few, or without octaves, are refused with what to do', () => {
		expect(refusal('E2 A2 D3 G3 B3', 'electric-6').hint).toBe(
			'The six-string electric guitar has 6 strings; here are 5 notes.',
		);
		expect(refusal('D A D F A D', 'electric-6').hint).toBe('Give each note its octave, as in E2.');
		expect(read(Array(25).fill('A4').join(' '), 'other')).toBe('refused');
		expect(read('E9 A9 D9 G9 B8 E8', 'electric-12')).toBe('refused');
	});
});

describe('the abbreviations of the file', () => {
	const own = { OPG: 'open G', DD: 'double drop D', STD: 'Eb', XX: 'D2 A2 D3 G3 A3 E4' };

	test('go before the shorts of the trade', () => {
		expect(read('opg', 'acoustic-6', own)).toMatch(/^open G:/);
		expect(read('dd', 'acoustic-6', own)).toMatch(/^double drop D:/);
		expect(read('STD', 'acoustic-6', own)).toMatch(/^half-step down:/);
		expect(read('xx', 'acoustic-6', own)).toMatch(/^D2 A2 D3 G3 A3 E4:/);
	});

	test('never go before a name', () => {
		expect(read('standard', 'acoustic-6', own)).toMatch(/^E standard:/);
		expect(read('drop D', 'acoustic-6', { 'Drop d': 'open G' })).toMatch(/^drop D:/);
	});

	test('that mean nothing on this kind are named in the hint', () => {
		expect(refusal('OPG', 'bass-4', own).hint).toBe('OPG stands for open G in this show.');
	});

	test('that lead to each other go nowhere', () => {
		expect(read('P', 'bass-4', { P: 'Q', Q: 'P' })).toBe('refused');
	});
});

/** What a text that is no tuning is told with. */
function refusal(text: string, kind: InstrumentKind, abbreviations: Abbreviations = {}) {
	const reading = readTuning(text, kind, abbreviations);
	if (reading.ok) throw new Error(`${text} is a tuning`);
	const { unread } = reading;
	return { expected: tuningExpectedWords(unread), hint: tuningHintWords(unread) };
}

test('a refusal lists what the kind has, and the nearest name', () => {
	expect(refusal('dorp D', 'upright-4')).toEqual({
		expected:
			'E standard, half-step down, whole step down, drop D, drop C#, drop C, BEAD, solo or 4 notes with ' +
			'their octaves from the highest-numbered string down',
		hint: 'Did you mean drop D?',
	});
	expect(refusal('nonsense', 'other')).toEqual({
		expected: 'one note with its octave for each string',
		hint: null,
	});
});

describe.each(INSTRUMENT_KINDS.filter((kind) => kind !== 'other'))('%s', (kind) => {
	const tunings = namedTunings(kind);

	test('has its usual tuning first, every name once, every sound once', () => {
		expect(tunings[0]?.name).toBe(KINDS[kind].usual);
		expect(new Set(tunings.map(({ name }) => name)).size).toBe(tunings.length);
		const sounds = tunings.map(({ notes }) => notes.map(midiOf).join());
		expect(new Set(sounds).size).toBe(tunings.length);
	});

	test.each(tunings)('$name has a note for each string, and is read back from them', (tuning) => {
		expect(tuning.notes).toHaveLength(stringCount(kind) ?? 0);
		expect(tuning.notes.map((note) => parsePitch(note)?.name)).toEqual(tuning.notes);
		expect(readTuning(tuning.notes.join(' '), kind, {})).toEqual({ ok: true, tuning });
		expect(readTuning(tuning.name.toUpperCase(), kind, {})).toEqual({ ok: true, tuning });
	});

	test('half and whole step down lie that far below the usual, string by string', () => {
		for (const [name, semitones] of [
			['half-step down', -1],
			['whole step down', -2],
		] as const) {
			const down = tunings.find((tuning) => tuning.name === name);
			if (!down) continue;
			const usual = tunings[0]?.notes ?? [];
			expect(down.notes.map(midiOf)).toEqual(usual.map((note) => midiOf(note) + semitones));
		}
	});
});

test('a twelve-string pairs octaves on the four lower courses, unisons above', () => {
	for (const { notes } of namedTunings('electric-12')) {
		const apart = notes.flatMap((note, i) =>
			i % 2 === 0 ? [midiOf(notes[i + 1] ?? '') - midiOf(note)] : [],
		);
		expect(apart).toEqual([12, 12, 12, 12, 0, 0]);
	}
});

test('any tuning by notes is read, named and read back the same', () => {
	const anyKind = fc.constantFrom(...INSTRUMENT_KINDS);
	fc.assert(
		fc.property(
			anyKind,
			fc.array(fc.integer({ min: -5, max: 5 }), { minLength: 12, maxLength: 12 }),
			(kind, moves) => {
				const usual = namedTunings(kind)[0]?.notes ?? ['D3', 'A3', 'D4'];
				const notes = usual.map((note, index) => transposeName(note, moves[index] ?? 0));
				const reading = readTuning(notes.join(' '), kind, {});
				if (!reading.ok) throw new Error(`refused: ${notes.join(' ')}`);
				const sorted = (names: readonly string[]) => names.map(midiOf).sort((a, b) => a - b);
				expect(sorted(reading.tuning.notes)).toEqual(sorted(notes));
				expect(readTuning(reading.tuning.name, kind, {})).toEqual(reading);
			},
		),
		RUNS,
	);
});

test('no text makes the reading throw', () => {
	fc.assert(
		fc.property(
			anyText,
			fc.constantFrom(...INSTRUMENT_KINDS),
			fc.dictionary(fc.string(), fc.string()),
			(text, kind, abbreviations) => {
				const reading = readTuning(text, kind, abbreviations);
				expect(reading.ok || tuningExpectedWords(reading.unread) !== '').toBe(true);
			},
		),
		RUNS,
	);
});
