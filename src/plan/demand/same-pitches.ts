// How an open tuning with a capo sounds, whether two sound the same, and in what ways an instrument comes to a
// wanted sound. What notes come to is asked thousands of times for one plan, so it is remembered for each tuning.

import { onceFor } from '../../base/once.ts';
import type { Instrument } from '../../showfile/show.ts';
import { openTuningsFor } from '../../tuning/capo.ts';
import type { InstrumentKind } from '../../tuning/kind.ts';
import { KINDS } from '../../tuning/kind.ts';
import { midiOf, transposeName } from '../../tuning/pitch.ts';
import { isReachable } from '../../tuning/retune.ts';
import type { Tuning } from '../../tuning/tuning.ts';
import { tuningOfNotes } from '../../tuning/tuning.ts';

/** An open tuning with a capo on this fret; 0 is none. */
export type OpenWithCapo = { readonly tuning: Tuning; readonly capo: number };

/** MIDI notes of the open strings, highest-numbered string first. */
const openMidis = onceFor(({ notes }: Tuning): readonly number[] => notes.map(midiOf));

const keyOf = onceFor((tuning: Tuning) => openMidis(tuning).join(' '));

/**
 * An open tuning as a key: the same for the same pitches, however the notes are spelled; MIDI notes in a row.
 *
 * @example
 * pitchKey({ tuning: eStandard }) // => '40 45 50 55 59 64'
 */
export function pitchKey({ tuning }: { readonly tuning: Tuning }): string {
	return keyOf(tuning);
}

/**
 * Whether every open string has the same pitch, however the notes are spelled.
 *
 * @example
 * samePitches({ name: 'a', notes: ['D#1', 'G#1'] }, { name: 'b', notes: ['Eb1', 'Ab1'] }) // => true
 */
export function samePitches(one: Tuning, other: Tuning): boolean {
	return one === other || keyOf(one) === keyOf(other);
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

/**
 * A bass with more strings does for one with fewer: whether the wanted strings are among those of a bass that has more, side by side.
 *
 * @example
 * hasStringsOf('bass-5', instruments.C2.tuning, instruments.C1.tuning) // => true
 * hasStringsOf('electric-12', instruments.B2.tuning, eStandard) // => false
 */
export function hasStringsOf(kind: InstrumentKind, tuning: Tuning, wanted: Tuning): boolean {
	if (KINDS[kind].family !== 'bass' || tuning.notes.length <= wanted.notes.length) return false;
	return ` ${keyOf(tuning)} `.includes(` ${keyOf(wanted)} `);
}

/**
 * The pitches heard, under the name that they have on this kind of instrument where they have one.
 *
 * @example
 * soundingTuning({ tuning: instruments.A2.tuning, capo: 1 }, 'electric-6').name // => 'E standard'
 */
export function soundingTuning({ tuning, capo }: OpenWithCapo, kind: InstrumentKind): Tuning {
	if (capo === 0) return tuning;
	const known = withCapos(tuning);
	const notes = () => tuning.notes.map((note) => transposeName(note, capo));
	const sounding = known.get(capo) ?? tuningOfNotes(notes(), kind);
	known.set(capo, sounding);
	return sounding;
}

const withCapos = onceFor((_: Tuning) => new Map<number, Tuning>());

/**
 * Every open tuning with its capo in which this instrument sounds as wanted (a tuning with a capo on it),
 * lowest fret first: those that its strings can be brought to from the tuning that the file gives. `current`
 * is what it is in: a floating bridge is not re-pitched during a show, so it has at most this one.
 *
 * @example
 * waysToSound(instruments.A2, { tuning: eStandard, capo: 0 }, instruments.A2.tuning).map(({ capo }) => capo) // => [0, 1, 2, 3]
 */
export function waysToSound(
	instrument: Instrument,
	wanted: OpenWithCapo,
	current: Tuning,
): readonly OpenWithCapo[] {
	const ways = waysOf(instrument)(soundingTuning(wanted, instrument.kind));
	if (instrument.bridge === 'fixed') return ways;
	return ways.filter(({ tuning }) => samePitches(tuning, current));
}

const waysOf = onceFor(({ kind, bridge, tuning: own }: Instrument) =>
	onceFor((sounds: Tuning): readonly OpenWithCapo[] => {
		if (sounds.notes.length !== own.notes.length) return [];
		const open = openTuningsFor(sounds, kind);
		if (bridge === 'floating') return open;
		return open.filter(({ tuning }) => isReachable(own.notes, tuning.notes, kind));
	}),
);
