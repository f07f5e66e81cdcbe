// Which instruments a change of the stage's temperature can have moved, the furthest first: a ceiling, as
// if only the strings had warmed.

import type { Tuning } from '../tuning/tuning.ts';
import { furthest, warmedStrings } from '../tuning/warmth.ts';
import { onlyPlayer, stringsOf } from './instrument-strings.ts';
import type { Instrument, Show } from './show.ts';

export type Drifted = {
	readonly instrument: Instrument;
	/** The string that can have gone furthest. */
	readonly string: number;
	/** How far at most; negative is flat. */
	readonly cents: number;
};

/** Instruments in the tunings they are in, the furthest first; those of which nothing can be said are left out. */
export function driftOrder(
	show: Show,
	kelvins: number,
	tuningOf: (instrument: Instrument) => Tuning,
): readonly Drifted[] {
	return show.instruments
		.flatMap((instrument) => {
			const tuned = { instrument, tuning: tuningOf(instrument), player: onlyPlayer(instrument) };
			const worst = furthest(warmedStrings(stringsOf(show, tuned), kelvins));
			return worst === null ? [] : [{ instrument, ...worst }];
		})
		.toSorted((one, other) => Math.abs(other.cents) - Math.abs(one.cents));
}

/** Which to touch first and how far they can be out at most, in one sentence; null when nothing can be said. */
export function driftWords(drifted: readonly Drifted[], kelvins: number): string | null {
	if (drifted.length === 0 || kelvins === 0) return null;
	const first = drifted.slice(0, MOST_NAMED).map(({ instrument, string, cents }, index) => {
		const { slot, name } = instrument;
		const far = Math.abs(cents).toFixed(0);
		const out = index === 0 ? `at most ${far} c ${cents < 0 ? 'flat' : 'sharp'}` : `${far} c`;
		return `${slot === null ? name : `slot ${slot.toUpperCase()}`} (string ${string}, ${out})`;
	});
	return `${changeWords(kelvins)}: touch first ${first.join(', ')}.`;
}

/** `8 °C warmer`. */
export function changeWords(kelvins: number): string {
	return `${Math.abs(kelvins)} °C ${kelvins > 0 ? 'warmer' : 'colder'}`;
}

/** More names than these are not read in the dark. */
const MOST_NAMED = 3;
