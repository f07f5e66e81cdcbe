// What is typed for a set-up: cents at the 12th fret, a fret's place.

import { cleanText } from '../../base/clean-text.ts';
import { FRETS, type LaidFret, laidFret } from '../../bench/laid-fret.ts';
import type { Instrument } from '../../showfile/show.ts';
import { parseLength } from '../../tuning/length-unit.ts';
import { readRinging } from '../../tuning/ringing.ts';
import {
	BAD_CENTS,
	BAD_FRET,
	BAD_RINGING,
	centsExpected,
	fretExpected,
	HERTZ_OR_NOTE,
} from '../../words/requests.ts';
import type { Asked } from '../asked-number.ts';
import { optionText, type Request } from '../command.ts';

/** A reading further out is a slip, or the next fret. */
const MOST_CENTS = 50;

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

/** A fret as it was laid, and how far it is out; null when not given. */
export function askedFret(request: Request, scale: number | null): Asked<LaidFret | null> {
	const text = optionText(request, 'fret');
	if (text === null) return { ok: true, value: null };
	const [, fret = '', length = ''] = /^\s*(\d{1,2})\s+(.+)$/.exec(text) ?? [];
	const fromNut = /^\d+(?:\.\d+)?$/.test(length.trim()) ? Number(length) : parseLength(length);
	const isFret = Number(fret) >= 1 && Number(fret) <= FRETS;
	if (fromNut !== null && scale !== null && isFret && fromNut > 0 && fromNut < scale) {
		return { ok: true, value: laidFret({ scale, fret: Number(fret), fromNut }) };
	}
	const expected = fretExpected(FRETS);
	const what = BAD_FRET;
	return { ok: false, problems: [{ code: 'bad-fret', what, found: cleanText(text), expected }] };
}

/** What rings, in hertz, by hertz or by a note; 0 when not given. */
export function askedRinging(request: Request, referenceHertz: number): Asked<number> {
	const text = optionText(request, 'feedback');
	if (text === null) return { ok: true, value: 0 };
	const value = readRinging(text, referenceHertz);
	if (value !== null) return { ok: true, value };
	const what = BAD_RINGING;
	const expected = HERTZ_OR_NOTE;
	return { ok: false, problems: [{ code: 'bad-number', what, found: cleanText(text), expected }] };
}
