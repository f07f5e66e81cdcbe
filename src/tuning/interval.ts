// Intervals as musicians name and hear them: the name by its size, the pure ratio it stands for, how far
// two strings are from that, and the beats to listen for.

import { centsBetween, midiOf } from './pitch.ts';

/** Pure ratios within the octave by semitones, of five-limit just intonation: a tuning dictionary and an interval wiki; the second, tritone and seventh from memory. */
const PURE: readonly (readonly [number, number])[] = [
	[1, 1],
	[16, 15],
	[9, 8],
	[6, 5],
	[5, 4],
	[4, 3],
	[45, 32],
	[3, 2],
	[8, 5],
	[5, 3],
	[9, 5],
	[15, 8],
];

/**
 * The pure ratio of an interval of so many semitones, in lowest terms, octaves included.
 *
 * @example
 * pureRatio(16) // => [5, 2]
 */
export function pureRatio(semitones: number): readonly [number, number] {
	const [high, low] = PURE[semitones % 12] ?? [1, 1];
	let [p, q] = [high, low];
	for (let octave = 0; octave < Math.floor(semitones / 12); octave += 1) {
		if (q % 2 === 0) q /= 2;
		else p *= 2;
	}
	return [p, q];
}

/** Of each number of semitones within the octave, as fingers and ears know it. */
const NAMES_BY_SIZE = [
	'P1',
	'm2',
	'M2',
	'm3',
	'M3',
	'P4',
	'A4',
	'P5',
	'm6',
	'M6',
	'm7',
	'M7',
] as const;

/**
 * The interval of so many semitones whatever its notes are called: a fret has no spelling of its own.
 *
 * @example
 * intervalOfSize(5) // => 'P4'
 * intervalOfSize(16) // => 'M10'
 */
export function intervalOfSize(semitones: number): string {
	const name = NAMES_BY_SIZE[semitones % 12] ?? 'P1';
	return `${name.charAt(0)}${Number(name.slice(1)) + 7 * Math.floor(semitones / 12)}`;
}

export type ByEar = {
	readonly interval: string;
	/** Positive: wider than pure. */
	readonly centsFromPure: number;
	/** Beats a second between the partials that should meet. */
	readonly beatsHz: number;
};

/** A note with what it really sounds at. */
export type Sounding = { readonly note: string; readonly hertz: number };

/**
 * What two strings do to the ear: their interval, how far it is from pure, how fast it beats,
 * |q × higher − p × lower|.
 *
 * @example
 * byEar({ note: 'A2', hertz: 110 }, { note: 'E3', hertz: 165 }) // => { interval: 'P5', centsFromPure: 0, beatsHz: 0 }
 */
export function byEar(one: Sounding, other: Sounding): ByEar {
	const size = midiOf(other.note) - midiOf(one.note);
	const [low, high] = size >= 0 ? [one, other] : [other, one];
	const [p, q] = pureRatio(Math.abs(size));
	return {
		interval: intervalOfSize(Math.abs(size)),
		centsFromPure: centsBetween(p / q, high.hertz / low.hertz),
		beatsHz: Math.abs(q * high.hertz - p * low.hertz),
	};
}

/** Nearer than this nobody hears. */
const PURE_WITHIN_CENTS = 0.05;

/**
 * Whether an interval is as near to pure as makes no difference.
 *
 * @example
 * isPure({ centsFromPure: 0.01 }) // => true
 */
export function isPure({ centsFromPure }: Pick<ByEar, 'centsFromPure'>): boolean {
	return Math.abs(centsFromPure) < PURE_WITHIN_CENTS;
}

/**
 * How far an interval is from pure, in words.
 *
 * @example
 * fromPureWords({ centsFromPure: -1.955 }) // => '2.0 c narrow'
 * fromPureWords({ centsFromPure: 0.01 }) // => 'pure'
 */
export function fromPureWords(heard: Pick<ByEar, 'centsFromPure'>): string {
	if (isPure(heard)) return 'pure';
	return `${Math.abs(heard.centsFromPure).toFixed(1)} c ${heard.centsFromPure > 0 ? 'wide' : 'narrow'}`;
}
