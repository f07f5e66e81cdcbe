// Which instruments do for a player who needs one of a kind, and which is taken first.

import type { InstrumentState } from '../../machines/instrument.ts';
import type { Instrument } from '../showfile/show.ts';
import type { NeedsPart } from './demand.ts';
import type { Hand } from './hand.ts';
import type { OpenWithCapo } from './same-pitches.ts';
import { samePitches } from './same-pitches.ts';
import { waysToSound } from './ways-to-sound.ts';
import { whyAbsent } from './why-unplayable.ts';

/** An instrument as it is when the choice is made: what it was left in by whoever had it last. */
export type Standing = {
	readonly instrument: Instrument;
	readonly state: InstrumentState;
	readonly now: OpenWithCapo;
	/** Only just coming out of somebody else's hands. */
	readonly isComingBack: boolean;
};

/** What is wanted, by whom. */
export type Wanted = { readonly player: string; readonly part: NeedsPart };

/**
 * Points against an instrument that would do: 10 where another was preferred, 5 for a spare, 1 for a
 * capo. Common practice, no source.
 *
 * @example
 * preferenceCost(instruments.S1, 1, { prefer: 'A1' }) // => 16
 */
export function preferenceCost(
	instrument: Instrument,
	capo: number,
	{ prefer }: { readonly prefer: string | null },
): number {
	const isOther = prefer !== null && prefer !== instrument.id;
	return (isOther ? 10 : 0) + (instrument.spare ? 5 : 0) + (capo > 0 ? 1 : 0);
}

/**
 * Whether this player may have the instrument for this: right kind, for them or for anybody, with all
 * the features, neither out nor faulty nor in its case.
 */
function isFit(
	{ instrument, state }: Pick<Standing, 'instrument' | 'state'>,
	{ player, part }: Wanted,
): boolean {
	return (
		instrument.kind === part.instrumentKind &&
		(instrument.for === null || instrument.for.includes(player)) &&
		part.features.every((feature) => instrument.features.includes(feature)) &&
		whyAbsent(instrument, state) === null
	);
}

/**
 * The first choice among the instruments at hand, with its open tuning and capo, or null when none
 * does. One that is whole and on the rack comes before one that is not, one that keeps its tuning
 * before one that is re-tuned, then what was preferred, then no spare, then no capo, then the order of
 * the file.
 *
 * @example
 * firstChoice([standing(instruments.A2), standing(instruments.A1)], { player: 'ash', part: needsElectric }).instrument // => 'A1'
 */
export function firstChoice(standings: readonly Standing[], wanted: Wanted): Hand | null {
	let best: { readonly hand: Hand; readonly cost: number } | null = null;
	for (const standing of standings) {
		if (!isFit(standing, wanted)) continue;
		const { instrument, state, now } = standing;
		const isAwkward = standing.isComingBack || state.context.stringsDown.length > 0;
		for (const way of waysToSound(instrument, wanted.part.sounds, now.tuning)) {
			const isRetuned = !samePitches(way.tuning, now.tuning);
			const cost =
				(isAwkward ? 1000 : 0) +
				(isRetuned ? 100 : 0) +
				preferenceCost(instrument, way.capo, wanted.part);
			if (best === null || cost < best.cost) {
				best = { hand: { instrument: instrument.id, ...way }, cost };
			}
		}
	}
	return best?.hand ?? null;
}

/**
 * What a player goes on with when the instrument in their hands does, its capo moved if need be, or
 * null when it does not: a string down, another tuning, not theirs.
 *
 * @example
 * whatGoesOn({ instrument: 'A1', tuning: eStandard, capo: 0 }, standing(instruments.A1), { player: 'ash', part: needsElectric }).capo // => 0
 */
export function whatGoesOn(held: Hand, standing: Standing, wanted: Wanted): Hand | null {
	if (!isFit(standing, wanted) || standing.state.context.stringsDown.length > 0) return null;
	const way = waysToSound(standing.instrument, wanted.part.sounds, held.tuning).find(({ tuning }) =>
		samePitches(tuning, held.tuning),
	);
	return way === undefined ? null : { ...held, capo: way.capo };
}
