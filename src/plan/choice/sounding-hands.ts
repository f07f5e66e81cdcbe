// Which hands sound as what is asked: kept where nothing names the player, and in a song that is on.

import type { Demand } from '../demand/demand.ts';
import type { Hand } from '../demand/hand.ts';
import { instrumentById } from '../demand/instrument-by-id.ts';
import { meetsNeed } from '../demand/options.ts';
import type { Asked, Outlook } from '../demand/outlook.ts';
import { pitchKey, soundsSame } from '../demand/same-pitches.ts';
import { whyAbsent } from '../demand/why-unplayable.ts';

export type Sounding = {
	/** What each section asks, and the hands that meet what is needed. */
	readonly slots: readonly (Asked & { readonly meeting: ReadonlySet<number> })[];
	readonly hands: readonly (Hand | null)[];
	/** The hand with a string down; -1 for none. */
	readonly broken: number;
};

/** Whether a hand, by its number, sounds as what the section at this place asks, as far as anybody goes by that. */
export type SoundsSo = (place: number, hand: number) => boolean;

/**
 * Which hands sound as what is asked, worked out where it is asked for: of most hands nobody asks.
 *
 * @example
 * soundingHands(outlook, { ...seating.seats[2], broken: -1 })(1, 2) // => false
 */
export function soundingHands(outlook: Outlook, { slots, hands, broken }: Sounding): SoundsSo {
	const isOn = outlook.sections[0]?.hasBegun === true;
	const isAbsent = ({ instrument: id }: Hand): boolean => {
		const instrument = instrumentById(outlook.show).get(id);
		const state = outlook.instruments[id];
		return instrument !== undefined && state !== undefined && whyAbsent(instrument, state) !== null;
	};
	const meets = (asked: Sounding['slots'][number], hand: Hand, number: number): boolean => {
		const { demand, meeting, player } = asked;
		if (demand.kind === 'named') return soundsAsNamed(outlook, demand, hand);
		if (meeting.has(number)) return true;
		if (demand.kind !== 'needs' || !isAbsent(hand)) return false;
		return meetsNeed(outlook, { part: demand.part, player, hand });
	};
	return (place, number) => {
		const asked = slots[place] as Sounding['slots'][number];
		const hand = hands[number] ?? null;
		// Whom a song to come names has what it names, or what stands in for it, whatever else sounds so.
		const isPlayed = place === 0 && isOn;
		if (asked.isNamed && !asked.isSettled && !isPlayed) return false;
		if (hand === null || number === broken) return false;
		// What is faulty and in hands all the same is played to the end of the song, and no further.
		if (!isPlayed && isAbsent(hand)) return false;
		return meets(asked, hand, number);
	};
}

/**
 * Whether the hand sounds as what is named: the same pitches with the capo, and of the same kind or among what
 * is played instead; what the list says of a tuning is believed.
 *
 * @example
 * soundsAsNamed(outlook, namedA1, handA1) // => true
 */
export function soundsAsNamed(
	{ show }: Outlook,
	{ instrument, tuning, capo }: Extract<Demand, { kind: 'named' }>,
	hand: Hand,
): boolean {
	const listed = (instrument.instead ?? []).filter((one) => one.instrument === hand.instrument);
	const isBelieved = listed.some(
		(one) =>
			one.tuning !== null &&
			one.capo === hand.capo &&
			pitchKey({ tuning: one.tuning }) === pitchKey(hand),
	);
	if (isBelieved) return true;
	const isAlike =
		listed.length > 0 || instrumentById(show).get(hand.instrument)?.kind === instrument.kind;
	return isAlike && soundsSame(hand, { tuning, capo });
}
