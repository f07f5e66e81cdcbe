// Pitches as note names with their octave (`E2`, `F#3`, `Eb4`), and what they are in hertz and
// cents. Everything else about tunings is built on these.

export type Pitch = {
	/** Canonical: upper-case letter, `#` or `b` (doubled where need be), octave. */
	readonly name: string;
	/** MIDI note number, 0 to 127; A4 is 69 and C4 is 60. */
	readonly midi: number;
};

const NOTE = /^([A-G])(##|#|bb|b)?(-1|\d)$/i;
const LETTERS = 'CDEFGAB';
const LETTER_SEMITONES = [0, 2, 4, 5, 7, 9, 11] as const;
const ACCIDENTAL_SEMITONES: Readonly<Record<string, number>> = { bb: -2, b: -1, '#': 1, '##': 2 };
/** Letters moved for each number of semitones: minor and major intervals, and the augmented fourth. */
const LETTER_STEPS = [0, 1, 1, 2, 2, 3, 3, 4, 5, 5, 6, 6] as const;
const SHARP_NAMES = ['C', 'C#', 'D', 'D#', 'E', 'F', 'F#', 'G', 'G#', 'A', 'A#', 'B'] as const;
const FLAT_NAMES = ['C', 'Db', 'D', 'Eb', 'E', 'F', 'Gb', 'G', 'Ab', 'A', 'Bb', 'B'] as const;

/**
 * The pitch that a note with its octave names, or null; letters in either case, `#` or `♯`, `b` or
 * `♭`, doubled too. Octaves -1 to 9, as far as MIDI has notes (0 to 127).
 *
 * @example
 * parsePitch('e♭4') // => { name: 'Eb4', midi: 63 }
 * parsePitch('H2') // => null
 */
export function parsePitch(text: string): Pitch | null {
	const ascii = text.trim().replaceAll('♯', '#').replaceAll('♭', 'b');
	const [, letter, accidental, octave] =
		NOTE.exec(ascii.replace('𝄪', '##').replace('𝄫', 'bb')) ?? [];
	if (letter === undefined || octave === undefined) return null;
	const marks = (accidental ?? '').toLowerCase();
	const natural = LETTER_SEMITONES[LETTERS.indexOf(letter.toUpperCase())] ?? 0;
	const midi = (Number(octave) + 1) * 12 + natural + (ACCIDENTAL_SEMITONES[marks] ?? 0);
	if (midi < 0 || midi > 127) return null;
	return { name: `${letter.toUpperCase()}${marks}${octave}`, midi };
}

/**
 * The MIDI note number of a name that `parsePitch` reads; throws on any other.
 *
 * @example
 * midiOf('A4') // => 69
 */
export function midiOf(name: string): number {
	const known = midis.get(name);
	if (known !== undefined) return known;
	const pitch = parsePitch(name);
	if (pitch === null) throw new RangeError(`not a pitch: ${name}`);
	midis.set(name, pitch.midi);
	return pitch.midi;
}

// A show has a few dozen names of notes and asks for each of them thousands of times.
const midis = new Map<string, number>();

/**
 * Hertz of a MIDI note in equal temperament, where A4 is `referenceHz` (440 in ISO 16:1975). The
 * law is that of the MIDI Tuning Standard: reference × 2^((midi − 69) / 12).
 *
 * @example
 * hertz(57, 440) // => 220
 */
export function hertz(midi: number, referenceHz: number): number {
	return referenceHz * 2 ** ((midi - 69) / 12);
}

/**
 * Cents from the first frequency up to the second, negative when it lies below: 1200 × log2 of
 * their ratio, by the definition of the cent.
 *
 * @example
 * centsBetween(220, 440) // => 1200
 */
export function centsBetween(fromHz: number, toHz: number): number {
	return 1200 * Math.log2(toHz / fromHz);
}

/**
 * The name so many semitones above (below when negative): a white key by its plain letter, a black
 * one as the minor, major or perfect interval spells it, and one semitone down as the flat. Throws
 * on what is no pitch, or ends outside MIDI's range.
 *
 * @example
 * transposeName('E2', 2) // => 'F#2'
 * transposeName('Bb3', 3) // => 'Db4'
 * transposeName('E4', -1) // => 'Eb4'
 */
export function transposeName(name: string, semitones: number): string {
	const midi = midiOf(name) + semitones;
	if (midi < 0 || midi > 127) throw new RangeError(`outside MIDI's range: ${name} ${semitones}`);
	const pitchClass = midi % 12;
	const isSharp = SHARP_NAMES[pitchClass]?.startsWith(letterAfter(name, semitones)) ?? false;
	const names = isSharp ? SHARP_NAMES : FLAT_NAMES;
	return `${names[pitchClass]}${Math.floor(midi / 12) - 1}`;
}

function letterAfter(name: string, semitones: number): string {
	const steps = semitones === -1 ? 0 : (LETTER_STEPS[Math.abs(semitones) % 12] ?? 0);
	const moved = LETTERS.indexOf(name.trim().charAt(0).toUpperCase()) + Math.sign(semitones) * steps;
	return LETTERS.charAt((moved + 7) % 7);
}
