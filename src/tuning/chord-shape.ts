// A chord shape as fingers make it, one fret a string from the highest-numbered, and what a tuning
// makes of it to the ear.

import { type ByEar, byEar, type Sounding } from './interval.ts';
import { midiOf, transposeName } from './pitch.ts';

/** One a string, highest-numbered first; null for a string that is not played. */
export type ChordShape = readonly (number | null)[];

/** A neck has no more frets (common practice, no source). */
const MOST_FRETS = 24;

/**
 * The shape of a text, or null: `022100`, or with spaces where a fret has two digits; `x` is not played.
 *
 * @example
 * parseShape('x32010') // => [null, 3, 2, 0, 1, 0]
 * parseShape('10 12 12 11 10 10') // => [10, 12, 12, 11, 10, 10]
 * parseShape('E major') // => null
 */
export function parseShape(text: string): ChordShape | null {
	const trimmed = text.trim();
	const words = /\s/.test(trimmed) ? trimmed.split(/\s+/) : [...trimmed];
	const frets = words.map((word) =>
		/^x$/i.test(word) ? null : Number(/^\d{1,2}$/.exec(word)?.[0]),
	);
	const isShape = frets.every((fret) => fret === null || (fret >= 0 && fret <= MOST_FRETS));
	return isShape && frets.some((fret) => fret !== null) ? frets : null;
}

/**
 * The shape as it is typed, with spaces where a fret has two digits.
 *
 * @example
 * shapeWords([null, 3, 2, 0, 1, 0]) // => 'x32010'
 * shapeWords([10, 12, 12, 11, 10, 10]) // => '10 12 12 11 10 10'
 */
export function shapeWords(shape: ChordShape): string {
	const frets = shape.map((fret) => (fret === null ? 'x' : String(fret)));
	return frets.join(frets.some((fret) => fret.length > 1) ? ' ' : '');
}

/**
 * The shape string by string: it may say a fret a string, or one a course, which both strings of it have;
 * null when it does neither.
 *
 * @example
 * shapeOnStrings([0, 2], { strings: 4, perCourse: 2 }) // => [0, 0, 2, 2]
 * shapeOnStrings([0, 2, 2], { strings: 4, perCourse: 2 }) // => null
 */
export function shapeOnStrings(
	shape: ChordShape,
	{ strings, perCourse }: { readonly strings: number; readonly perCourse: 1 | 2 },
): ChordShape | null {
	if (shape.length === strings) return shape;
	const isByCourse = perCourse === 2 && shape.length * 2 === strings;
	return isByCourse ? shape.flatMap((fret) => [fret, fret]) : null;
}

// Fingers know these by their names wherever the strings lie in the intervals of E standard: common
// practice, no source.
const OPEN_SHAPES: Readonly<Record<string, string>> = {
	'022100': 'E',
	'022000': 'Em',
	x02220: 'A',
	x02210: 'Am',
	xx0232: 'D',
	xx0231: 'Dm',
	'320003': 'G',
	x32010: 'C',
};
const E_STANDARD_STEPS = '5 5 5 4 5';

/**
 * What fingers call an open shape, one fret a course, on courses with these notes, lowest first; null where
 * it has no name, or would be another chord. A capo or another pitch for all strings changes nothing.
 *
 * @example
 * openShapeName([0, 2, 2, 1, 0, 0], ['Eb2', 'Ab2', 'Db3', 'Gb3', 'Bb3', 'Eb4']) // => 'E'
 * openShapeName([0, 2, 2, 1, 0, 0], ['D2', 'A2', 'D3', 'G3', 'B3', 'E4']) // => null
 */
export function openShapeName(shape: ChordShape, notes: readonly string[]): string | null {
	const midis = notes.map(midiOf);
	const steps = midis.slice(1).map((midi, index) => midi - (midis[index] ?? midi));
	if (steps.join(' ') !== E_STANDARD_STEPS) return null;
	return OPEN_SHAPES[shapeWords(shape)] ?? null;
}

export type HeardPair = ByEar & { readonly strings: readonly [number, number] };

/**
 * Every neighbouring pair of the strings that sound in a shape, to the ear; the open strings when the
 * shape is all zeros. Strings of the shape beyond those there are do not sound.
 *
 * @example
 * shapeByEar([{ note: 'G3', hertz: 196 }, { note: 'B3', hertz: 245 }], [0, 0])[0].beatsHz // => 0
 */
export function shapeByEar(strings: readonly Sounding[], shape: ChordShape): readonly HeardPair[] {
	const heard = strings.flatMap(({ note, hertz }, index) => {
		const fret = shape[index] ?? null;
		if (fret === null || midiOf(note) + fret > 127) return [];
		const stopped = fret === 0 ? { note, hertz } : stop({ note, hertz }, fret);
		return [{ ...stopped, string: strings.length - index }];
	});
	return heard.slice(1).flatMap((one, index) => {
		const before = heard[index];
		return before ? [{ strings: [before.string, one.string] as const, ...byEar(before, one) }] : [];
	});
}

function stop({ note, hertz }: Sounding, fret: number): Sounding {
	return { note: transposeName(note, fret), hertz: hertz * 2 ** (fret / 12) };
}
