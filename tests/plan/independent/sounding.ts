// Which open tunings and capos make an instrument sound a certain way, by the rule of `needs`.

import type { Instrument } from '../../../src/showfile/show.ts';
import { midiOf } from '../../../src/tuning/pitch.ts';
import type { Tuning } from '../../../src/tuning/tuning.ts';

/** MIDI notes, one a string, highest-numbered string first. */
export type Pitches = readonly number[];

/** An open tuning and the fret of the capo on it. */
export type Way = { readonly open: Pitches; readonly capo: number };

type Kind = Instrument['kind'];

/** Kinds whose strings stand in pairs, each pair one course. */
const PAIRED: readonly Kind[] = ['electric-12', 'acoustic-12', 'mandolin-8'];
const WITHOUT_CAPO: readonly Kind[] = ['bass-4', 'bass-5', 'bass-6', 'upright-4'];
const HIGHEST_CAPO = 7;
const FURTHEST_SEMITONES = 2;
const MOST_UP_BY_TWO = 2;

/** The MIDI notes of a tuning. */
export function pitchesOf({ notes }: Tuning): Pitches {
	return notes.map(midiOf);
}

/** What is heard of an open tuning with a capo. */
export function heard({ open, capo }: Way): Pitches {
	return open.map((note) => note + capo);
}

/** Whether two lists of notes are the same. */
export function isSame(one: Pitches, other: Pitches): boolean {
	return one.length === other.length && one.every((note, i) => note === other[i]);
}

/** How far each course moves: the semitones of its strings, one list a course. */
export function courseMoves(kind: Kind, from: Pitches, to: Pitches): readonly Pitches[] {
	const moves = to.map((note, i) => note - from[i]!);
	if (!PAIRED.includes(kind)) return moves.map((move) => [move]);
	return moves.flatMap((move, i) => (i % 2 === 0 ? [[move, moves[i + 1] ?? move]] : []));
}

/**
 * Whether a fixed bridge can be brought from the tuning that the file gives to this one: every string
 * within two semitones of it, and no more than two strings (courses) up by two.
 */
function isReachable(kind: Kind, own: Pitches, open: Pitches): boolean {
	if (own.length !== open.length) return false;
	const courses = courseMoves(kind, own, open);
	const isNear = courses.every((course) =>
		course.every((move) => Math.abs(move) <= FURTHEST_SEMITONES),
	);
	const upByTwo = courses.filter((course) => course.some((move) => move === FURTHEST_SEMITONES));
	return isNear && upByTwo.length <= MOST_UP_BY_TWO;
}

/**
 * Every way in which an instrument sounds so, lowest capo first. A floating bridge stays in what it is in.
 */
export function waysToSound(
	instrument: Instrument,
	isIn: Pitches,
	sounds: Pitches,
): readonly Way[] {
	const highest = WITHOUT_CAPO.includes(instrument.kind) ? 0 : HIGHEST_CAPO;
	const own = pitchesOf(instrument.tuning);
	const ways: Way[] = [];
	for (let capo = 0; capo <= highest; capo += 1) {
		const open = sounds.map((note) => note - capo);
		const canBe =
			instrument.bridge === 'floating'
				? isSame(open, isIn)
				: isReachable(instrument.kind, own, open);
		if (canBe) ways.push({ open, capo });
	}
	return ways;
}
