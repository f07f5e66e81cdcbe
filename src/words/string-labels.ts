// What a string is called: its number, and where strings are paired the course with which of the two it is.

import { type InstrumentKind, KINDS } from '../tuning/kind.ts';
import { midiOf } from '../tuning/pitch.ts';

/** The notes of an instrument, highest-numbered string first. */
export type Strung = { readonly kind: InstrumentKind; readonly notes: readonly string[] };

/**
 * `3`; of a pair `6 octave` and `6 low`, or `2` for both where they are in unison.
 *
 * @example
 * stringLabel({ kind: 'bass-4', notes: ['E1', 'A1', 'D2', 'G2'] }, 4) // => '4'
 * stringLabel({ kind: 'mandolin-8', notes: ['G4', 'G3', 'D4', 'D4', 'A4', 'A4', 'E5', 'E5'] }, 8) // => '4 octave'
 */
export function stringLabel({ kind, notes }: Strung, string: number): string {
	if (KINDS[kind].stringsPerCourse === 1) return String(string);
	const course = Math.ceil(string / 2);
	const own = notes.at(-string);
	const other = notes.at(-(string % 2 === 0 ? string - 1 : string + 1));
	if (own === undefined || other === undefined) return String(course);
	const above = midiOf(own) - midiOf(other);
	return above === 0 ? String(course) : `${course} ${above > 0 ? 'octave' : 'low'}`;
}

/** The same where there is room for four letters: `6oct`, `6low`, `2`. */
export function shortStringLabel(strung: Strung, string: number): string {
	return stringLabel(strung, string).replace(' octave', 'oct').replace(' low', 'low');
}
