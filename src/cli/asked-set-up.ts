// What is typed for a set-up: cents at the 12th fret, a fret's place.

import { cleanText } from '../base/clean-text.ts';
import type { Instrument } from '../showfile/show.ts';
import { fretError, scaleFor } from '../tuning/fret-places.ts';
import { parseLength } from '../tuning/length-unit.ts';
import { BAD_CENTS, BAD_FRET, centsExpected, fretExpected } from '../words/requests.ts';
import type { Asked } from './asked-instrument.ts';
import { optionText, type Request } from './command.ts';
import { to4 } from './figures.ts';

/** A reading further out is a slip, or the next fret. */
const MOST_CENTS = 50;
/** Frets of a long neck. */
export const FRETS = 24;

/** What each 12th fret reads, highest-numbered string first; null when not given. */
export function askedCents(
	request: Request,
	instrument: Instrument,
): Asked<readonly number[] | null> {
	const text = optionText(request, 'at12');
	if (text === null) return { ok: true, value: null };
	const words = text.trim().split(/[\s,;]+/);
	const cents = words.map((word) =>
		/^[+-]?\d+(?:\.\d+)?$/.test(word) ? Number(word) : Number.NaN,
	);
	const count = instrument.tuning.notes.length;
	if (cents.length === count && cents.every((one) => Math.abs(one) <= MOST_CENTS)) {
		return { ok: true, value: cents };
	}
	const expected = centsExpected(count, MOST_CENTS);
	const what = BAD_CENTS;
	return { ok: false, problems: [{ code: 'bad-cents', what, found: cleanText(text), expected }] };
}

export type LaidFret = {
	readonly fret: number;
	readonly fromNutMm: number;
	/** Sharp of its place; negative: flat. */
	readonly cents: number;
	/** The scale for which it would be right. */
	readonly scaleMm: number;
};

/** A fret as it was laid, and how far it is out; null when not given. */
export function askedFret(request: Request, scale: number | null): Asked<LaidFret | null> {
	const text = optionText(request, 'fret');
	if (text === null) return { ok: true, value: null };
	const [, fret = '', length = ''] = /^\s*(\d{1,2})\s+(.+)$/.exec(text) ?? [];
	const fromNut = /^\d+(?:\.\d+)?$/.test(length.trim()) ? Number(length) : parseLength(length);
	const isFret = Number(fret) >= 1 && Number(fret) <= FRETS;
	if (fromNut !== null && scale !== null && isFret && fromNut > 0 && fromNut < scale) {
		const laid = { scale, fret: Number(fret), fromNut };
		return {
			ok: true,
			value: {
				fret: laid.fret,
				fromNutMm: to4(fromNut),
				cents: to4(fretError(laid)),
				scaleMm: to4(scaleFor(laid.fret, fromNut)),
			},
		};
	}
	const expected = fretExpected(FRETS);
	const what = BAD_FRET;
	return { ok: false, problems: [{ code: 'bad-fret', what, found: cleanText(text), expected }] };
}
