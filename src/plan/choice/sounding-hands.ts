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

/**
 * For each section, then each hand, 1 where the hand sounds as what is asked, as far as anybody goes by that.
 *
 * @example
 * soundingHands(outlook, { ...seating.seats[2], broken: -1 }).length // => 6
 */
export function soundingHands(outlook: Outlook, { slots, hands, broken }: Sounding): Uint8Array {
	const sounding = new Uint8Array(slots.length * hands.length);
	const isOn = outlook.sections[0]?.hasBegun === true;
	const absent = new Set(
		outlook.show.instruments.flatMap((one) => {
			const state = outlook.instruments[one.id];
			return state !== undefined && whyAbsent(one, state) !== null ? [one.id] : [];
		}),
	);
	const meets = (asked: Sounding['slots'][number], hand: Hand, number: number): boolean => {
		const { demand, meeting, player } = asked;
		if (demand.kind === 'named') return soundsAsNamed(outlook, demand, hand);
		if (meeting.has(number)) return true;
		if (demand.kind !== 'needs' || !absent.has(hand.instrument)) return false;
		return meetsNeed(outlook, { part: demand.part, player, hand });
	};
	slots.forEach((asked, place) => {
		const { isNamed, isSettled } = asked;
		// Whom a song to come names has what it names, or what stands in for it, whatever else sounds so.
		const isPlayed = place === 0 && isOn;
		if (isNamed && !isSettled && !isPlayed) return;
		hands.forEach((hand, number) => {
			if (hand === null || number === broken) return;
			// What is faulty and in hands all the same is played to the end of the song, and no further.
			if (!isPlayed && absent.has(hand.instrument)) return;
			if (meets(asked, hand, number)) sounding[place * hands.length + number] = 1;
		});
	});
	return sounding;
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
