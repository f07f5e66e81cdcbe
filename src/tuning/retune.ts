// What it takes to bring an instrument from one open tuning to another, and whether its strings
// can be asked to go there at all. A course of paired strings counts as one string throughout.

import type { InstrumentKind } from './kind.ts';

import { KINDS } from './kind.ts';
import { midiOf } from './pitch.ts';

export type RetuneKind = 'none' | 'one-string' | 'two-strings' | 'all-same-interval' | 'other';

/** A string goes no further than this from the tuning it was chosen for (common practice, no source). */
const FURTHEST_SEMITONES = 2;
/** No more strings than this go up that far: the neck bears it (common practice, no source). */
const MOST_RAISED = 2;

/**
 * What kind of work lies between two tunings of one instrument, notes one a string in the same
 * order. Different numbers of strings are `other`.
 *
 * @example
 * retuneKind(['E1', 'A1', 'D2', 'G2'], ['D1', 'A1', 'D2', 'G2'], 'bass-4') // => 'one-string'
 * retuneKind(['E1', 'A1', 'D2', 'G2'], ['Eb1', 'Ab1', 'Db2', 'Gb2'], 'bass-4') // => 'all-same-interval'
 */
export function retuneKind(
	fromNotes: readonly string[],
	toNotes: readonly string[],
	kind: InstrumentKind,
): RetuneKind {
	const courses = courseMoves(fromNotes, toNotes, kind);
	if (courses === null) return 'other';
	const changed = courses.filter((moves) => moves.some((semitones) => semitones !== 0)).length;
	if (changed === 0) return 'none';
	if (changed === 1) return 'one-string';
	if (changed === 2) return 'two-strings';
	return new Set(courses.flat()).size === 1 ? 'all-same-interval' : 'other';
}

/**
 * Whether an instrument strung for the tuning that its file gives can be brought to this open
 * tuning: every string within two semitones of it, and no more than two going up by two.
 *
 * @example
 * isReachable(['E1', 'A1', 'D2', 'G2'], ['D1', 'A1', 'D2', 'G2'], 'bass-4') // => true
 * isReachable(['E1', 'A1', 'D2', 'G2'], ['C1', 'G1', 'C2', 'F2'], 'bass-4') // => false
 */
export function isReachable(
	fileNotes: readonly string[],
	openNotes: readonly string[],
	kind: InstrumentKind,
): boolean {
	const courses = courseMoves(fileNotes, openNotes, kind);
	if (courses === null) return false;
	const raised = courses.filter((moves) => moves.includes(FURTHEST_SEMITONES)).length;
	return (
		raised <= MOST_RAISED && courses.flat().every((move) => Math.abs(move) <= FURTHEST_SEMITONES)
	);
}

/**
 * Seconds from one tuning to another, touch-up included, for an instrument whose touch-up alone
 * takes `touchUpSeconds`. The figures are common practice, no source.
 *
 * @example
 * retuneSeconds('one-string', 45) // => 60
 * retuneSeconds('all-same-interval', 45) // => 90
 */
export function retuneSeconds(change: RetuneKind, touchUpSeconds: number): number {
	switch (change) {
		case 'none':
			return touchUpSeconds;
		case 'one-string':
			return touchUpSeconds + 15;
		case 'two-strings':
			return touchUpSeconds + 30;
		case 'all-same-interval':
			return touchUpSeconds * 2;
		case 'other':
			return touchUpSeconds + 75;
	}
}

/** Semitones that each string of each course goes up; null when the strings do not pair off. */
function courseMoves(
	fromNotes: readonly string[],
	toNotes: readonly string[],
	kind: InstrumentKind,
): readonly (readonly number[])[] | null {
	if (fromNotes.length !== toNotes.length) return null;
	const moves = toNotes.map((note, index) => midiOf(note) - midiOf(fromNotes[index] ?? ''));
	const size = KINDS[kind].stringsPerCourse;
	return Array.from({ length: Math.ceil(moves.length / size) }, (_, course) =>
		moves.slice(course * size, (course + 1) * size),
	);
}
