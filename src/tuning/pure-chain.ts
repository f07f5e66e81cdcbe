// What becomes of strings that are tuned pure one from the next, by harmonics or by stilling the beats: each
// interval is right, and the error of all of them stands at the end of the chain.

import { pureRatio, type Sounding } from './interval.ts';
import { centsBetween, midiOf } from './pitch.ts';

/**
 * The ratio of pure intervals stacked one on another, in semitones, down where negative; in lowest terms.
 *
 * @example
 * stackedRatio([7, 7, -12, 7, 7, -12]) // => [81, 64]
 * stackedRatio([5, 5, 5, 4, 5]) // => [320, 81]
 */
export function stackedRatio(semitones: readonly number[]): readonly [number, number] {
	let [high, low] = [1, 1];
	for (const step of semitones) {
		const [p, q] = pureRatio(Math.abs(step));
		[high, low] = inLowestTerms(step < 0 ? [high * q, low * p] : [high * p, low * q]);
	}
	return [high, low];
}

function inLowestTerms([high, low]: readonly [number, number]): [number, number] {
	let [one, other] = [high, low];
	while (other > 0) [one, other] = [other, one % other];
	return [high / one, low / one];
}

/**
 * Cents by which each string misses its target when every string is tuned pure from the one before, the
 * highest-numbered first being right.
 *
 * @example
 * pureChainCents([{ note: 'A2', hertz: 110 }, { note: 'E3', hertz: 165 }]) // => [0, 0]
 */
export function pureChainCents(strings: readonly Sounding[]): readonly number[] {
	const [first] = strings;
	if (first === undefined) return [];
	const midis = strings.map(({ note }) => midiOf(note));
	const steps = midis.slice(1).map((midi, index) => midi - (midis[index] ?? midi));
	return strings.map(({ hertz }, index) => {
		const [high, low] = stackedRatio(steps.slice(0, index));
		return centsBetween(hertz, (first.hertz * high) / low);
	});
}
