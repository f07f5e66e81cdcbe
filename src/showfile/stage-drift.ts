// Which instruments a change of the stage's temperature can have moved, the furthest first: a ceiling, as
// if only the strings had warmed.

import type { Tuning } from '../tuning/tuning.ts';
import { furthest, warmedStrings } from '../tuning/warmth.ts';
import { onlyPlayer, stringsOf } from './instrument-strings.ts';
import type { Instrument, Show } from './show.ts';

export type Drifted = {
	readonly instrument: Instrument;
	/** How much warmer the stage is than when it was tuned; negative is colder. */
	readonly kelvins: number;
	/** The string that can have gone furthest. */
	readonly string: number;
	/** How far at most; negative is flat. */
	readonly cents: number;
};

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
			return worst === null ? [] : [{ instrument, kelvins, ...worst }];
		})
		.toSorted((one, other) => Math.abs(other.cents) - Math.abs(one.cents));
}

/** Which to touch first and how far they can be out at most, in one sentence; null when nothing can be said. */
export function driftWords(drifted: readonly Drifted[]): string | null {
	const named = drifted.slice(0, MOST_NAMED);
	const [first] = named;
	if (first === undefined) return null;
	const isAlike = named.every(({ kelvins }) => kelvins === first.kelvins);
	const words = named.map((one, index) => {
		const { slot, name } = one.instrument;
		const change = isAlike ? '' : `${one.kelvins > 0 ? '+' : ''}${one.kelvins} °C, `;
		const far = `${index === 0 ? 'at most ' : ''}${centsWords(one.cents)}`;
		const out = isAlike && index > 0 ? `${Math.abs(one.cents).toFixed(0)} c` : far;
		return `${slot === null ? name : `slot ${slot.toUpperCase()}`} (${change}string ${one.string}, ${out})`;
	});
	const since = isAlike ? changeWords(first.kelvins) : 'since each was ready';
	return `${since}: touch first ${words.join(', ')}.`;
}

/** `34 c flat`. */
export function centsWords(cents: number): string {
	return `${Math.abs(cents).toFixed(0)} c ${cents < 0 ? 'flat' : 'sharp'}`;
}

/** `8 °C warmer`. */
export function changeWords(kelvins: number): string {
	return `${Math.abs(kelvins)} °C ${kelvins > 0 ? 'warmer' : 'colder'}`;
}

/** More names than these are not read in the dark. */
const MOST_NAMED = 3;
