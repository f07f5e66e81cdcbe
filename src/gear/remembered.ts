// What is remembered of an instrument: what was measured on it under whichever identity it had, what may be of
// it and nobody has said yet, and what cannot be.

import type { Instrument } from '../showfile/show.ts';
import type { GearBody, GearCompared, GearEntry, Measured, Rang } from './gear-entry.ts';
import { type GearId, idIn } from './gear-id.ts';

/** Two rulers read one scale no further apart than this: common practice, no source. */
const SCALE_MILLIMETRES = 2;

export type Remembered = {
	/** The newest first. */
	readonly past: readonly Measured[];
	/** Identities under which an instrument with the same id was measured, and of which nobody has said whether it is this one. */
	readonly doubts: readonly GearId[];
	/** Measured as this instrument, and yet of another kind, scale or number of strings; the newest. */
	readonly otherBody: Measured | null;
	/** Hertz that it rang at, each once, the newest first. */
	readonly rings: readonly number[];
};

/**
 * What these entries, oldest first, say of the instrument with this identity.
 *
 * @example
 * remembered([], { gear: 'file A1 /shows', instrument }).past // => []
 */
export function remembered(
	entries: readonly GearEntry[],
	{ gear, instrument }: { readonly gear: GearId; readonly instrument: Instrument },
): Remembered {
	const measured = entries.filter((entry): entry is Measured => entry.k === 'set-up-measured');
	const answers = new Map(
		entries
			.filter((entry): entry is GearCompared => entry.k === 'gear-compared' && entry.gear === gear)
			.map(({ other, isSame }) => [other, isSame]),
	);
	const isMine = (one: Measured | Rang): boolean =>
		one.gear === gear || answers.get(one.gear) === true;
	const past = measured.filter(isMine).toReversed();
	const others = measured.filter((one) => !isMine(one) && !answers.has(one.gear));
	const alike = others.filter(
		(one) => idIn(one.gear) === instrument.id && isSameBody(one, instrument),
	);
	return {
		past,
		doubts: [...new Set(alike.map((one) => one.gear))],
		otherBody: past.find((one) => !isSameBody(one, instrument)) ?? null,
		rings: [
			...new Set(
				ringsIn(entries)
					.filter(isMine)
					.toReversed()
					.map((one) => one.hertz),
			),
		],
	};
}

/** What was noted and not withdrawn since. */
function ringsIn(entries: readonly GearEntry[]): readonly Rang[] {
	return entries.flatMap((entry, at): readonly Rang[] => {
		if (entry.k !== 'feedback-noted') return [];
		const isWithdrawn = entries
			.slice(at + 1)
			.some((later) => later.k === 'feedback-withdrawn' && later.note === entry.note);
		return isWithdrawn ? [] : [entry];
	});
}

/** What tells this instrument from others. */
export function bodyOf({ kind, scaleMillimetres, tuning }: Instrument): GearBody {
	return { kind, scaleMillimetres, strings: tuning.notes.length };
}

/** Whether it can be the same: what nobody wrote down speaks against nothing. */
function isSameBody({ body, gauges }: Measured, instrument: Instrument): boolean {
	const now = bodyOf(instrument);
	if (body === undefined) return gauges.length === 0 || gauges.length === now.strings;
	const isScale =
		body.scaleMillimetres === null ||
		now.scaleMillimetres === null ||
		Math.abs(body.scaleMillimetres - now.scaleMillimetres) <= SCALE_MILLIMETRES;
	return body.kind === now.kind && body.strings === now.strings && isScale;
}
