// What a tuning is on a certain kind of instrument, and the reading of one as somebody wrote it: by
// a name that the kind has, by one of the trade's or the file's shorts, or by its notes.

import { nearestName } from '../base/nearest-name.ts';
import type { InstrumentKind } from './kind.ts';
import { KINDS, stringCount } from './kind.ts';
import { namedTuningsOf } from './named-tunings.ts';
import { midiOf, parsePitch } from './pitch.ts';
import { plainKey, tuningKey } from './tuning-key.ts';

export type Tuning = {
	/** Canonical name, or the notes joined by spaces where the tuning has none. */
	readonly name: string;
	/** One a string, highest-numbered string first, in a course the lower octave first. */
	readonly notes: readonly string[];
};

/** Short to name or notes, as the show file gives them. */
export type Abbreviations = Readonly<Record<string, string>>;

export type TuningReading =
	| { readonly ok: true; readonly tuning: Tuning }
	| { readonly ok: false; readonly unread: UnreadTuning };

/** What a text that is no tuning of a kind could have been. */
export type UnreadTuning = {
	/** Every tuning that the kind has by name. */
	readonly names: readonly string[];
	/** How many notes it takes; null for one a string, however many there are. */
	readonly courses: number | null;
	readonly stringsPerCourse: 1 | 2;
	/** What looks like the slip; null where nothing does. */
	readonly slip: TuningSlip | null;
};

export type TuningSlip =
	/** The file's own short for what is none. */
	| { readonly code: 'short-for'; readonly short: string; readonly meant: string }
	| {
			readonly code: 'note-count';
			readonly kind: InstrumentKind;
			readonly strings: number;
			readonly notes: number;
	  }
	| { readonly code: 'no-octaves' }
	| { readonly code: 'near'; readonly name: string };

/** More strings than this is a slip (common practice, no source). */
const MOST_STRINGS = 24;

/**
 * The tunings that this kind has by name, the usual one first; none for `other`.
 *
 * @example
 * namedTunings('ukulele-4')[0] // => { name: 'standard', notes: ['G4', 'C4', 'E4', 'A4'] }
 */
export function namedTunings(kind: InstrumentKind): readonly Tuning[] {
	return bookOf(kind).tunings;
}

/**
 * The tuning that this kind has by this name or by one of the trade's shorts, or null.
 *
 * @example
 * tuningCalled('½↓', 'upright-4').notes // => ['Eb1', 'Ab1', 'Db2', 'Gb2']
 * tuningCalled('open G', 'upright-4') // => null
 */
export function tuningCalled(name: string, kind: InstrumentKind): Tuning | null {
	return bookOf(kind).byKey.get(tuningKey(name)) ?? null;
}

/**
 * The notes, one a string, as a tuning: the known one of this kind that sounds the same, else one
 * named after the notes.
 *
 * @example
 * tuningOfNotes(['D#1', 'G#1', 'C#2', 'F#2'], 'bass-4').name // => 'half-step down'
 */
export function tuningOfNotes(notes: readonly string[], kind: InstrumentKind): Tuning {
	return bookOf(kind).bySound.get(soundKey(notes)) ?? { name: notes.join(' '), notes };
}

/** One note a string, the lower octave first: octaves added where courses have one, else unisons. */
function fillCourses(courses: readonly string[], kind: InstrumentKind): readonly string[] {
	const { stringsPerCourse, octaveCourses } = KINDS[kind];
	if (stringsPerCourse === 1) return courses;
	return courses.flatMap((note, index) =>
		octaveCourses.includes(courses.length - index) ? [note, octaveUp(note)] : [note, note],
	);
}

/**
 * The tuning that a text means on this kind of instrument, under its canonical name, or what could have
 * been meant. Notes stand highest-numbered string first, one a
 * string, or one a course where strings are paired. The file's abbreviations go before the trade's
 * shorts, but never before a tuning's own name or `standard`.
 *
 * @example
 * readTuning('drop d', 'bass-4', {}).tuning // => { name: 'drop D', notes: ['D1', 'A1', 'D2', 'G2'] }
 * readTuning('E2 A2 D3 G3 B3 E4', 'nylon-6', {}).tuning.name // => 'E standard'
 * readTuning('OG', 'acoustic-6', { OG: 'open G' }).tuning.name // => 'open G'
 * readTuning('drop D', 'mandolin-8', {}).ok // => false
 */
export function readTuning(
	text: string,
	kind: InstrumentKind,
	abbreviations: Abbreviations,
): TuningReading {
	const meant = longForm(text, kind, abbreviations);
	const tuning = (meant === null ? null : asWritten(meant, kind)) ?? asWritten(text, kind);
	if (tuning) return { ok: true, tuning };
	const names = namedTunings(kind).map(({ name }) => name);
	const { courses, stringsPerCourse } = KINDS[kind];
	const slip: TuningSlip | null =
		meant === null
			? (noteSlip(text, kind) ?? nearest(text, [...names, ...Object.keys(abbreviations)]))
			: { code: 'short-for', short: text.trim(), meant };
	return { ok: false, unread: { names, courses, stringsPerCourse, slip } };
}

/** What the file's abbreviations make of the text; null when it is none of them. */
function longForm(text: string, kind: InstrumentKind, abbreviations: Abbreviations): string | null {
	const key = plainKey(text);
	const fixed = ['standard', ...namedTunings(kind).map(({ name }) => name)];
	if (fixed.some((name) => plainKey(name) === key)) return null;
	return Object.entries(abbreviations).find(([short]) => plainKey(short) === key)?.[1] ?? null;
}

function asWritten(text: string, kind: InstrumentKind): Tuning | null {
	return tuningCalled(text, kind) ?? tuningFromNotes(text, kind);
}

function tuningFromNotes(text: string, kind: InstrumentKind): Tuning | null {
	const pitches = wordsOf(text).map(parsePitch);
	const notes = pitches.flatMap((pitch) => (pitch === null ? [] : [pitch.name]));
	if (notes.length < pitches.length || notes.length === 0 || notes.length > MOST_STRINGS)
		return null;
	const { courses, stringsPerCourse } = KINDS[kind];
	if (courses === null || notes.length === courses * stringsPerCourse) {
		return tuningOfNotes(lowerFirst(notes, stringsPerCourse), kind);
	}
	if (notes.length !== courses) return null;
	const filled = fillCourses(notes, kind);
	// An octave above MIDI's last note is none.
	return filled.every((note) => parsePitch(note) !== null) ? tuningOfNotes(filled, kind) : null;
}

function wordsOf(text: string): readonly string[] {
	return text.split(/[\s,]+/).filter((word) => word !== '');
}

function lowerFirst(notes: readonly string[], stringsPerCourse: 1 | 2): readonly string[] {
	if (stringsPerCourse === 1) return notes;
	return notes.flatMap((note, index) => {
		const other = notes[index + 1];
		if (index % 2 === 1 || other === undefined) return [];
		return midiOf(note) <= midiOf(other) ? [note, other] : [other, note];
	});
}

function noteSlip(text: string, kind: InstrumentKind): TuningSlip | null {
	const words = wordsOf(text);
	const strings = stringCount(kind);
	if (words.length < 2) return null;
	if (strings !== null && words.every((word) => parsePitch(word) !== null)) {
		return { code: 'note-count', kind, strings, notes: words.length };
	}
	const isBare = words.every((word) => /^[A-G](?:#|b|♯|♭)?$/i.test(word));
	return isBare ? { code: 'no-octaves' } : null;
}

function nearest(text: string, names: readonly string[]): TuningSlip | null {
	const name = nearestName(text.trim(), names);
	return name === null ? null : { code: 'near', name };
}

function octaveUp(note: string): string {
	return note.replace(/-?\d+$/, (octave) => String(Number(octave) + 1));
}

type Book = {
	readonly tunings: readonly Tuning[];
	readonly byKey: ReadonlyMap<string, Tuning>;
	readonly bySound: ReadonlyMap<string, Tuning>;
};

const books = new Map<InstrumentKind, Book>();

function bookOf(kind: InstrumentKind): Book {
	const known = books.get(kind);
	if (known) return known;
	const book = makeBook(kind);
	books.set(kind, book);
	return book;
}

function makeBook(kind: InstrumentKind): Book {
	const tunings: Tuning[] = [];
	const byKey = new Map<string, Tuning>();
	const bySound = new Map<string, Tuning>();
	for (const { name, courses, shorts } of namedTuningsOf(kind)) {
		const notes = courses.split(' ');
		const tuning = { name, notes: fillCourses(notes, kind) };
		tunings.push(tuning);
		bySound.set(soundKey(tuning.notes), tuning);
		const letters = notes.map((note) => note.replace(/\d$/, '')).join('');
		const usual = name === KINDS[kind].usual ? ['standard'] : [];
		for (const key of [name, ...usual, ...shorts, letters].map(tuningKey)) {
			if (!byKey.has(key)) byKey.set(key, tuning);
		}
	}
	return { tunings, byKey, bySound };
}

function soundKey(notes: readonly string[]): string {
	return notes.map(midiOf).join(' ');
}
