// Why a stand-in is where it is in its list, where its own words do not say it: for whom it is, what it
// lacks, who is to get it, that it is kept as a spare. Read beside the others, so said only where it decides.

import { playerName } from '../showfile/shown-names.ts';
import type { Rack, Ranked } from './stand-in-ranks.ts';
import { decider, differences, neededSoonBy } from './stand-in-ranks.ts';

export type Among = {
	/** Best first. */
	readonly ranked: readonly Ranked[];
	readonly rack: Rack;
};

/**
 * Why it would do, in a few words each; the last one is what put it there, where that has to be said.
 *
 * @example
 * whyInOrder(rankedS1, { ranked: [rankedS1], rack }) // => ['same tuning', 'ready']
 */
export function whyInOrder(one: Ranked, among: Among): readonly string[] {
	const { words, otherKind } = one.found;
	const reason = reasonOf(one, among);
	if (reason === null || words.includes(reason)) return words;
	// How it stands, not what is heard anyway; that it is of another kind is never left out.
	const [state = ''] = words.includes('ready') ? ['ready'] : words;
	return otherKind === null ? [state, reason] : [state, otherKind, reason];
}

function reasonOf(one: Ranked, { ranked, rack }: Among): string | null {
	const { instrument } = one;
	if (one.ranks.owner > 0) {
		const names = (instrument.for ?? []).map((id) => playerName(rack.show, id));
		return `for ${names.join(' and ')}`;
	}
	const place = ranked.indexOf(one);
	const behind = ranked.slice(0, place).map((other) => decider(one.ranks, other.ranks));
	if (behind.includes('unlike')) {
		const isSaid = instrument.kind !== rack.sound.kind;
		return isSaid ? null : (differences(instrument, rack.sound)[0] ?? null);
	}
	if (behind.includes('neededSoon')) {
		const player = neededSoonBy(rack, instrument);
		return player === null ? null : `${playerName(rack.show, player)} needs it`;
	}
	if (!instrument.spare) return null;
	// Where only the best is asked for, nobody knows what the others leave missing.
	const known = { ...one.ranks, missing: 0 };
	return ranked
		.slice(place + 1)
		.some(({ ranks }) => decider(known, { ...ranks, missing: 0 }) === 'notKept')
		? 'spare'
		: null;
}
