// What an instrument sounds like with a capo on it, and which open tunings with which capo give a
// wanted sound.

import type { InstrumentKind } from './kind.ts';
import { KINDS } from './kind.ts';
import { midiOf, transposeName } from './pitch.ts';
import type { Tuning } from './tuning.ts';
import { tuningOfNotes } from './tuning.ts';

/** The highest fret for a capo: above it a guitar runs out of neck (common practice, no source). */
export const CAPO_HIGHEST = 7;

/**
 * MIDI notes heard with the capo on this fret (0 is none), one a string in the tuning's order.
 *
 * @example
 * soundingMidis({ name: 'GDAE', notes: ['G3', 'D4'] }, 2) // => [57, 64]
 */
export function soundingMidis(tuning: Tuning, capo: number): readonly number[] {
	return tuning.notes.map((note) => midiOf(note) + capo);
}

/**
 * Whether the open tuning with the capo on sounds as wanted, string by string.
 *
 * @example
 * soundsLike({ name: 'a', notes: ['D2', 'A2'] }, 2, { name: 'b', notes: ['E2', 'B2'] }) // => true
 */
export function soundsLike(openTuning: Tuning, capo: number, wanted: Tuning): boolean {
	return (
		openTuning.notes.length === wanted.notes.length &&
		openTuning.notes.every(
			(note, index) => midiOf(note) + capo === midiOf(wanted.notes[index] ?? ''),
		)
	);
}

/**
 * Every open tuning with its capo that sounds as wanted on this kind, lowest fret first: frets 0
 * to `CAPO_HIGHEST`, only 0 where none is planned, as on basses. Whether an instrument can be brought to
 * one of them is `isReachable`'s to say.
 *
 * @example
 * openTuningsFor({ name: 'E standard', notes: ['E1', 'A1', 'D2', 'G2'] }, 'bass-4').length // => 1
 */
export function openTuningsFor(
	sounds: Tuning,
	kind: InstrumentKind,
): readonly { readonly tuning: Tuning; readonly capo: number }[] {
	const lowest = Math.min(...sounds.notes.map(midiOf));
	const highest = KINDS[kind].isCapoPlanned ? Math.min(CAPO_HIGHEST, lowest) : 0;
	return Array.from({ length: highest + 1 }, (_, capo) => {
		if (capo === 0) return { tuning: sounds, capo };
		const notes = sounds.notes.map((note) => transposeName(note, -capo));
		return { tuning: tuningOfNotes(notes, kind), capo };
	});
}
