// Offsets from equal temperament that a player, an instrument or a tuning wants, in cents a string, and
// whether they spoil the octaves.

import { midiOf } from './pitch.ts';

/** Offsets for whatever it names; what it leaves out is any. */
export type Offsets = {
	readonly player?: string;
	readonly instrument?: string;
	/** A tuning's canonical name. */
	readonly tuning?: string;
	/** Cents by string number; strings left out have none. */
	readonly cents: Readonly<Record<string, number>>;
};

/** Whose hands, which instrument, which tuning. */
export type OffsetFor = {
	readonly player: string | null;
	readonly instrument: string;
	readonly tuning: string;
};

/**
 * Cents for each string, highest-numbered first: the sum of all offsets that apply.
 *
 * @example
 * summedOffsets([{ player: 'ash', cents: { 3: -3 } }], { player: 'ash', instrument: 'A1', tuning: 'drop D' }, 4) // => [0, -3, 0, 0]
 */
export function summedOffsets(
	all: readonly Offsets[],
	{ player, instrument, tuning }: OffsetFor,
	strings: number,
): readonly number[] {
	const mine = all.filter(
		(one) =>
			(one.player === undefined || one.player === player) &&
			(one.instrument === undefined || one.instrument === instrument) &&
			(one.tuning === undefined || one.tuning === tuning),
	);
	return Array.from({ length: strings }, (_, index) =>
		mine.reduce((sum, { cents }) => sum + (cents[String(strings - index)] ?? 0), 0),
	);
}

/** An octave that is further out than this is heard as wrong (common practice, no source). */
export const WORST_OCTAVE_CENTS = 5;
/** Octaves are stopped within so many frets (common practice, no source). */
const OCTAVE_REACH = 4;

export type SpoiltOctave = {
	readonly strings: readonly [number, number];
	/** How far the octave is from pure; positive is wide. */
	readonly cents: number;
};

/**
 * Pairs of strings on which an octave or two octaves lie within four frets and come out worse than 5 cents.
 *
 * @example
 * spoiltOctaves(['D3', 'G3', 'B3', 'E4'], [0, -6, 0, 0]) // => [{ strings: [3, 1], cents: 6 }]
 */
export function spoiltOctaves(
	notes: readonly string[],
	cents: readonly number[],
): readonly SpoiltOctave[] {
	const found: SpoiltOctave[] = [];
	for (const [low, lowNote] of notes.entries()) {
		for (const [high, highNote] of notes.entries()) {
			const semitones = midiOf(highNote) - midiOf(lowNote);
			const fromOctave = Math.abs(semitones - 12 * Math.max(1, Math.round(semitones / 12)));
			const off = (cents[high] ?? 0) - (cents[low] ?? 0);
			if (high === low || semitones <= 0 || fromOctave > OCTAVE_REACH) continue;
			if (Math.abs(off) > WORST_OCTAVE_CENTS)
				found.push({ strings: [notes.length - low, notes.length - high], cents: off });
		}
	}
	return found;
}
