// Where a stint re-tunes its instrument whatever is chosen before it. Counted for players who are taken
// apart, so that what they share is not forgotten.

import type { Possible } from './possible-hands.ts';
import type { Seating } from './seats.ts';

/** Whether an instrument that is given in this tuning is surely in another before. */
export type SureRetunings = (section: number, instrument: number, tuning: number) => boolean;

/** Tunings of one instrument are kept as bits; beyond these, nothing is sure. */
const MOST_TUNINGS = 31;

/**
 * What is sure, from all that is possible: an instrument can only be in a tuning that it is in now or
 * that a hand before this section leaves it in, and where somebody surely has it, in that one alone.
 *
 * @example
 * sureRetunings(seating, possible)(1, 3, 0) // => false
 */
export function sureRetunings(seating: Seating, possible: Possible): SureRetunings {
	const { seats, sectionCount, instrumentCount } = seating;
	const canBeIn = new Int32Array((sectionCount + 1) * instrumentCount).fill(1, 0, instrumentCount);
	for (let section = 0; section < sectionCount; section += 1) {
		const row = section * instrumentCount;
		canBeIn.copyWithin(row + instrumentCount, row, row + instrumentCount);
		seats.forEach((seat, place) => {
			const mine = possible[place];
			let count = 0;
			let last = -1;
			for (let hand = 0; hand < seat.size; hand += 1) {
				if (mine?.[section * seat.size + hand] !== 1) continue;
				count += 1;
				last = hand;
				const instrument = seat.instrumentOf[hand] ?? -1;
				const at = row + instrumentCount + instrument;
				if (instrument >= 0) canBeIn[at] = (canBeIn[at] ?? 0) | bitOf(seat.tuningOf[hand] ?? 0);
			}
			const instrument = seat.instrumentOf[last] ?? -1;
			if (count === 1 && instrument >= 0) {
				canBeIn[row + instrumentCount + instrument] = bitOf(seat.tuningOf[last] ?? 0);
			}
		});
	}
	return (section, instrument, tuning) => {
		const bits = canBeIn[section * instrumentCount + instrument] ?? 0;
		return bits >= 0 && (bits & bitOf(tuning)) === 0;
	};
}

/** The highest bit makes the whole number negative: nothing is sure then. */
function bitOf(tuning: number): number {
	return 1 << Math.min(tuning, MOST_TUNINGS);
}
