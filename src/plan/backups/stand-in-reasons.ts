// Why a stand-in is where it is in its list, where its own words do not say it: for whom it is, what it
// lacks, who is to get it. Read beside the others, so said only where it decides.

import { playerName } from '../../showfile/shown-names.ts';
import type { Rack, Ranked } from './stand-in-ranks.ts';
import { decider, differences, neededSoonBy } from './stand-in-ranks.ts';

/** More of them are not read in a hurry. */
const MOST_WORDS = 3;

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
	const { words } = one.found;
	const reason = reasonOf(one, among);
	if (reason === null || words.includes(reason)) return words;
	const [first = '', ...more] = [...words, reason];
	if (more.length < MOST_WORDS) return [first, ...more];
	// That it sounds the same is heard anyway; what there is to do is not.
	return words.includes('ready') ? more : [first, ...more.slice(1)];
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
	return null;
}
