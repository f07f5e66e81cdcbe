// Whether two tunings sound the same. Asked thousands of times for one plan, so what notes come to is
// remembered for each tuning.

import type { InstrumentKind } from '../../tuning/kind.ts';
import { KINDS } from '../../tuning/kind.ts';
import { midiOf } from '../../tuning/pitch.ts';
import type { Tuning } from '../../tuning/tuning.ts';

const midisOf = new WeakMap<Tuning, readonly number[]>();

/**
 * MIDI notes of the open strings, highest-numbered string first.
 *
 * @example
 * openMidis({ name: 'E standard', notes: ['E1', 'A1', 'D2', 'G2'] }) // => [28, 33, 38, 43]
 */
export function openMidis(tuning: Tuning): readonly number[] {
	const known = midisOf.get(tuning);
	if (known !== undefined) return known;
	const midis = tuning.notes.map(midiOf);
	midisOf.set(tuning, midis);
	return midis;
}

/**
 * Whether every open string has the same pitch, however the notes are spelled.
 *
 * @example
 * samePitches({ name: 'a', notes: ['D#1', 'G#1'] }, { name: 'b', notes: ['Eb1', 'Ab1'] }) // => true
 */
export function samePitches(one: Tuning, other: Tuning): boolean {
	if (one === other) return true;
	const [first, second] = [openMidis(one), openMidis(other)];
	return first.length === second.length && first.every((midi, index) => midi === second[index]);
}

/**
 * Whether two tunings, each with its capo, are heard as the same pitches, string by string.
 *
 * @example
 * soundsSame({ tuning: { name: 'a', notes: ['D2', 'A2'] }, capo: 2 }, { tuning: { name: 'b', notes: ['E2', 'B2'] }, capo: 0 }) // => true
 */
export function soundsSame(one: OpenWithCapo, other: OpenWithCapo): boolean {
	const [first, second] = [openMidis(one.tuning), openMidis(other.tuning)];
	return (
		first.length === second.length &&
		first.every((midi, index) => midi + one.capo === (second[index] ?? 0) + other.capo)
	);
}

/** An open tuning with a capo on this fret; 0 is none. */
export type OpenWithCapo = { readonly tuning: Tuning; readonly capo: number };

const keyOf = new WeakMap<Tuning, string>();

/**
 * An open tuning as a key: the same for the same pitches, however the notes are spelled; MIDI notes in a row.
 *
 * @example
 * pitchKey({ tuning: eStandard }) // => '40 45 50 55 59 64'
 */
export function pitchKey({ tuning }: { readonly tuning: Tuning }): string {
	const found = keyOf.get(tuning);
	if (found !== undefined) return found;
	const key = openMidis(tuning).join(' ');
	keyOf.set(tuning, key);
	return key;
}

/**
 * A bass with more strings does for one with fewer: whether the wanted strings are among those of a bass that has more, side by side.
 *
 * @example
 * hasStringsOf('bass-5', instruments.C2.tuning, instruments.C1.tuning) // => true
 * hasStringsOf('electric-12', instruments.B2.tuning, eStandard) // => false
 */
export function hasStringsOf(kind: InstrumentKind, tuning: Tuning, wanted: Tuning): boolean {
	if (KINDS[kind].family !== 'bass' || tuning.notes.length <= wanted.notes.length) return false;
	return ` ${openMidis(tuning).join(' ')} `.includes(` ${openMidis(wanted).join(' ')} `);
}
