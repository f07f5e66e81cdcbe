// A body that rings: which band of the desk's equaliser holds the frequency, and the filters that take it
// down, for whoever stands at the desk.

import { notchBand, peakingBand, thirdOctaveAt } from '../tuning/equaliser.ts';
import { SETUP } from '../words/bench-pages.ts';
import { to4 } from './figures.ts';

/** What desks work at as a rule, and a notch narrow enough to leave the sound alone (common practice, no source). */
const SAMPLE_RATE = 48_000;
export const Q = 8;
/** A first cut where a notch is too much (common practice, no source). */
const CUT_DECIBELS = -6;

/** The frequency's band and filters as data; null where no equaliser reaches. */
export function feedbackJson(hertz: number) {
	const band = thirdOctaveAt(hertz);
	if (band === null) return null;
	const at = { hertz, q: Q, sampleRate: SAMPLE_RATE };
	return {
		hz: hertz,
		band: band.nominal,
		lowHz: to4(band.low),
		highHz: to4(band.high),
		...{ q: Q, sampleRate: SAMPLE_RATE },
		notch: notchBand(at),
		cut: { decibels: CUT_DECIBELS, ...peakingBand(at, CUT_DECIBELS) },
	};
}

/** The same in a sentence. */
export function feedbackWords(hertz: number): string {
	const band = thirdOctaveAt(hertz);
	return SETUP.feedback(Math.round(hertz * 10) / 10, String(band?.nominal ?? SETUP.nearest), Q);
}
