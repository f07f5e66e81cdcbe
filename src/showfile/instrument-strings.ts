// An instrument of a show as a set of strings that bears: its gauges with what they weigh, its targets
// with everybody's offsets, and what is near to breaking.

import { summedOffsets } from '../tuning/offsets.ts';
import { hertz, midiOf } from '../tuning/pitch.ts';
import type { StringMake } from '../tuning/string-material.ts';
import type { BearingString } from '../tuning/string-set.ts';
import { bearingStrings } from '../tuning/string-set.ts';
import type { Tuning } from '../tuning/tuning.ts';
import type { Instrument, Show, StringGauge, UnitMass } from './show.ts';
import { parseGauge } from './string-measure.ts';

/** An instrument in a tuning, for somebody. */
export type Tuned = {
	readonly instrument: Instrument;
	readonly tuning: Tuning;
	/** A player's id; null for nobody in particular. */
	readonly player: string | null;
	/** Hz of A4; the show's when left out. */
	readonly referenceHertz?: number;
};

/** The only player who may have this instrument; null when several may. */
export function onlyPlayer({ for: players }: Instrument): string | null {
	return players?.length === 1 ? (players[0] ?? null) : null;
}

/** Cents that are added to each open string's target, highest-numbered string first. */
export function offsetCents(show: Show, { instrument, tuning, player }: Tuned): readonly number[] {
	const asked = { player, instrument: instrument.id, tuning: tuning.name };
	return summedOffsets(show.offsets ?? [], asked, tuning.notes.length);
}

/** Which strings stand off equal temperament, as `string 3 -3 c` or `strings 6 -2, 3 -3 c`; empty where none does. */
export function offsetWords(show: Show, tuned: Tuned): string {
	const cents = offsetCents(show, tuned);
	const off = cents.flatMap((one, index) =>
		one === 0 ? [] : [`${cents.length - index} ${one > 0 ? '+' : ''}${one}`],
	);
	return off.length === 0 ? '' : `${off.length === 1 ? 'string' : 'strings'} ${off.join(', ')} c`;
}

/** Hertz to tune each open string to, offsets included, highest-numbered string first. */
export function targetHertz(show: Show, tuned: Tuned): readonly number[] {
	const reference = tuned.referenceHertz ?? show.referenceHertz;
	const cents = offsetCents(show, tuned);
	return tuned.tuning.notes.map(
		(note, index) => hertz(midiOf(note), reference) * 2 ** ((cents[index] ?? 0) / 1200),
	);
}

/** The strings of an instrument as they bear in a tuning, string 1 first; none where its gauges or its scale are not known. */
export function stringsOf(show: Show, tuned: Tuned): readonly BearingString[] {
	const { kind, scaleMillimetres, strings } = tuned.instrument;
	if (scaleMillimetres === null) return [];
	const makes = strings.map((gauge) => weighed(gauge, show, tuned.instrument));
	return bearingStrings({ kind, scaleMillimetres, makes, hertz: targetHertz(show, tuned) });
}

function weighed(gauge: StringGauge, show: Show, instrument: Instrument): StringMake {
	const gramsPerMetre = massOf(gauge, instrument.unitMass) ?? massOf(gauge, show.unitMass);
	return gramsPerMetre === null ? gauge : { ...gauge, gramsPerMetre };
}

function massOf(gauge: StringGauge, given: UnitMass | undefined): number | null {
	for (const [label, grams] of Object.entries(given ?? {})) {
		const one = parseGauge(label);
		if (one?.millimetres === gauge.millimetres && one.isWound === gauge.isWound) return grams;
	}
	return null;
}

/** Every gauge at hand, with what it weighs: those in stock that are not used up, and those that can be had. */
export function makesAtHand(show: Show, instrument: Instrument): readonly StringMake[] {
	const inStock = show.stock.filter(({ count }) => count > 0).map(({ gauge }) => gauge);
	return [...new Set([...inStock, ...(show.gauges ?? [])])].flatMap((label) => {
		const gauge = parseGauge(label);
		return gauge === null ? [] : [weighed(gauge, show, instrument)];
	});
}
