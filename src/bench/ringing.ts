// An instrument that rings, in a few sentences: what it may be, polarity first, the notch, the band of the desk.

import type { Instrument } from '../showfile/show.ts';
import { thirdOctaveAt } from '../tuning/equaliser.ts';
import { bodyRegion, nearestNote, ringingStrings } from '../tuning/ringing.ts';
import type { Tuning } from '../tuning/tuning.ts';
import { filterWords, POLARITY_FIRST, ringingWords, whatRings } from '../words/feedback.ts';
import { Q } from './feedback.ts';

export type Ringing = {
	readonly hertz: number;
	readonly instrument: Pick<Instrument, 'kind'>;
	/** What it is in. */
	readonly tuning: Tuning;
	readonly referenceHertz: number;
};

/** The frequency with its note. */
export function ringsAt({ hertz, referenceHertz }: Omit<Ringing, 'instrument' | 'tuning'>): string {
	return ringingWords(hertz, nearestNote(hertz, referenceHertz));
}

/** The filter alone. */
export function filterAt(hertz: number): string {
	return filterWords({ hertz, q: Q, band: thirdOctaveAt(hertz)?.nominal ?? null });
}

/** A sentence each, in the order in which it is done. */
export function ringingLines(ringing: Ringing): readonly string[] {
	const { hertz, instrument, tuning, referenceHertz } = ringing;
	const strings = ringingStrings(hertz, { notes: tuning.notes, referenceHertz });
	return [
		`${ringsAt(ringing)}. ${whatRings(strings, bodyRegion(hertz, instrument.kind))}`,
		POLARITY_FIRST,
		filterAt(hertz),
	];
}

/** The same as data, the filters beside it. */
export function ringingJson({ hertz, instrument, tuning, referenceHertz }: Ringing) {
	return {
		note: nearestNote(hertz, referenceHertz),
		strings: ringingStrings(hertz, { notes: tuning.notes, referenceHertz }),
		region: bodyRegion(hertz, instrument.kind),
		polarityFirst: true,
		widthHz: hertz / Q,
	};
}
