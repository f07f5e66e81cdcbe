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
		const stopped = { note: transposeName(note, fret), hertz: hertz * 2 ** (fret / 12) };
		return [{ ...stopped, string: strings.length - index }];
	});
	return heard.slice(1).flatMap((one, index) => {
		const before = heard[index];
		if (!before) return [];
		// Named by its size: a fret has no spelling of its own.
		const note = transposeName(before.note, midiOf(one.note) - midiOf(before.note));
		const pair = byEar(before, { ...one, note });
		return [{ strings: [before.string, one.string] as const, ...pair }];
	});
}
