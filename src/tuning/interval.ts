// Intervals as musicians name and hear them: the name by its spelling, the pure ratio it stands for,
// how far two strings are from that, and the beats to listen for.

import { centsBetween, midiOf } from './pitch.ts';

const LETTERS = 'CDEFGAB';
/** Semitones of the perfect and major intervals, from the unison to the seventh. */
const NATURAL = [0, 2, 4, 5, 7, 9, 11] as const;
const PERFECT = new Set([0, 3, 4]);

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
 * The interval from the lower of two notes to the higher, by their spelling: `P4`, `M3`, `m3`, `A4`, `d5`,
 * with octaves counted (`P15`).
 *
 * @example
 * intervalName('E2', 'A2') // => 'P4'
 * intervalName('E2', 'E4') // => 'P15'
 * intervalName('G3', 'B3') // => 'M3'
 */
export function intervalName(one: string, other: string): string {
	const isUp =
		staff(one) < staff(other) || (staff(one) === staff(other) && midiOf(one) <= midiOf(other));
	const [low, high] = isUp ? [one, other] : [other, one];
	const steps = staff(high) - staff(low);
	const within = steps % 7;
	const excess = midiOf(high) - midiOf(low) - Math.floor(steps / 7) * 12 - (NATURAL[within] ?? 0);
	return `${quality(excess, PERFECT.has(within))}${steps + 1}`;
}

function staff(note: string): number {
	const octave = Number(/-?\d+$/.exec(note)?.[0] ?? 0);
	return octave * 7 + LETTERS.indexOf(note.charAt(0).toUpperCase());
}

function quality(excess: number, isPerfect: boolean): string {
	if (isPerfect) return excess === 0 ? 'P' : excess > 0 ? 'A'.repeat(excess) : 'd'.repeat(-excess);
	if (excess === 0) return 'M';
	if (excess === -1) return 'm';
	return excess > 0 ? 'A'.repeat(excess) : 'd'.repeat(-excess - 1);
}

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
	const [low, high] = midiOf(one.note) <= midiOf(other.note) ? [one, other] : [other, one];
	const [p, q] = pureRatio(midiOf(high.note) - midiOf(low.note));
	return {
		interval: intervalName(low.note, high.note),
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
