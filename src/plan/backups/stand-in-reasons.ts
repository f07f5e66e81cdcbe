// Why a stand-in is where it is in its list, where its own reasons do not say it: for whom it is, what it
// lacks, who is to get it. Read beside the others, so said only where it decides.

import type { StandInReason } from '../plan.ts';
import type { Rack, Ranked } from './stand-in-ranks.ts';
import { decider, differences, neededSoonBy } from './stand-in-ranks.ts';

/** More of them are not read in a hurry. */
const MOST_REASONS = 3;

export type Among = {
	/** Best first. */
	readonly ranked: readonly Ranked[];
	readonly rack: Rack;
};

/**
 * Why it would do; the last one is what put it there, where that has to be said.
 *
 * @example
 * whyInOrder(rankedS1, { ranked: [rankedS1], rack }) // => [{ code: 'same-tuning' }, { code: 'ready' }]
 */
export function whyInOrder(one: Ranked, among: Among): readonly StandInReason[] {
	const { why } = one.found;
	const says = (code: StandInReason['code']) => why.some((found) => found.code === code);
	const reason = reasonOf(one, among);
	if (reason === null || says(reason.code)) return why;
	const all = [...why, reason];
	if (all.length <= MOST_REASONS) return all;
	// That it sounds the same is heard anyway; what there is to do is not.
	return says('ready') ? all.slice(1) : [...all.slice(0, 1), ...all.slice(2)];
}

function reasonOf(one: Ranked, { ranked, rack }: Among): StandInReason | null {
	const { instrument } = one;
	if (one.ranks.owner > 0) return { code: 'meant-for', players: instrument.for ?? [] };
	const place = ranked.indexOf(one);
	const behind = ranked.slice(0, place).map((other) => decider(one.ranks, other.ranks));
	if (behind.includes('unlike')) {
		const isSaid = instrument.kind !== rack.sound.kind;
		return isSaid ? null : (differences(instrument, rack.sound)[0] ?? null);
	}
	if (behind.includes('neededSoon')) {
		const player = neededSoonBy(rack, instrument);
		return player === null ? null : { code: 'needed-by', player };
	}
	return null;
}
