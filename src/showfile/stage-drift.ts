// Which instruments a change of the stage's temperature can have moved, the furthest first: a ceiling, as
// if only the strings had warmed.

import type { Tuning } from '../tuning/tuning.ts';
import { furthest, warmedStrings } from '../tuning/warmth.ts';
import type { Drifted } from './finding.ts';
import { onlyPlayer, stringsOf } from './instrument-strings.ts';
import type { Instrument, Show } from './show.ts';

/** Each instrument as it stands. */
export type Warmed = {
	readonly tuningOf: (instrument: Instrument) => Tuning;
	/** Since it was tuned; null where nobody knows. */
	readonly kelvinsOf: (instrument: Instrument) => number | null;
};

/** Instruments in the tunings they are in, the furthest first; those of which nothing can be said, or that cannot have moved, are left out. */
export function driftOrder(show: Show, { tuningOf, kelvinsOf }: Warmed): readonly Drifted[] {
	return show.instruments
		.flatMap((instrument) => {
			const kelvins = kelvinsOf(instrument);
			if (kelvins === null || kelvins === 0) return [];
			const tuned = { instrument, tuning: tuningOf(instrument), player: onlyPlayer(instrument) };
			const worst = furthest(warmedStrings(stringsOf(show, tuned), kelvins));
			return worst === null ? [] : [{ instrument: instrument.id, kelvins, ...worst }];
		})
		.toSorted((one, other) => Math.abs(other.cents) - Math.abs(one.cents));
}
