// What instruments rang at before, for whoever stands at the desk: on the run sheet beside what is said of the night.

import { filterAt, ringsAt } from '../bench/ringing.ts';
import type { Instrument, Show } from '../showfile/show.ts';
import { shownInstrument } from '../showfile/shown-names.ts';
import { sheetRings } from '../words/feedback.ts';

/** No more of one instrument than these: what rang long ago rings no more. */
const MOST_RINGS = 3;

/** A sentence for each; `ringsOn`: Hz that an instrument rang at, the newest first. */
export function ringWords(
	show: Show,
	ringsOn: (instrument: Instrument) => readonly number[],
): readonly string[] {
	const { referenceHertz } = show;
	return show.instruments.flatMap((one) =>
		ringsOn(one)
			.slice(0, MOST_RINGS)
			.map((hertz) =>
				sheetRings(
					shownInstrument(show, one.id),
					ringsAt({ hertz, referenceHertz }),
					filterAt(hertz),
				),
			),
	);
}
