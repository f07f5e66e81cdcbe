// Whether a hand sounds as what is asked: what does is kept where nothing names the player, and in a song that is on.

import type { Demand } from '../demand/demand.ts';
import type { Hand } from '../demand/hand.ts';
import { instrumentById } from '../demand/instrument-by-id.ts';
import { meetsNeed } from '../demand/options.ts';
import type { Asked, Outlook } from '../demand/outlook.ts';
import { pitchKey, soundsSame } from '../demand/same-pitches.ts';
import { whyAbsent } from '../demand/why-unplayable.ts';

/**
 * Whether the hand sounds as the section at this place asks of the player, as far as anybody goes by that.
 *
 * @example
 * soundsAsAsked(outlook, { asked: seating.seats[1].slots[1], place: 1, hand: handA1 }) // => true
 */
export function soundsAsAsked(
	outlook: Outlook,
	{ asked, place, hand }: { readonly asked: Asked; readonly place: number; readonly hand: Hand },
): boolean {
	const { demand, player, isNamed, isSettled } = asked;
	const isOn = place === 0 && outlook.sections[0]?.hasBegun === true;
	// Whom a song to come names has what it names, or what stands in for it, whatever else sounds so.
	if (isNamed && !isSettled && !isOn) return false;
	const instrument = instrumentById(outlook.show).get(hand.instrument);
	const state = outlook.instruments[hand.instrument];
	const isAbsent = instrument && state && whyAbsent(instrument, state) !== null;
	// What is faulty and in hands all the same is played to the end of the song, and no further.
	if (isAbsent && !isOn) return false;
	if (demand.kind === 'named') return soundsAsNamed(outlook, demand, hand);
	return demand.kind === 'needs' && meetsNeed(outlook, { part: demand.part, player, hand });
}

/**
 * Whether the hand sounds as what is named: the same pitches with the capo, and of the same kind or among what
 * is played instead; what the list says of a tuning is believed.
 */
function soundsAsNamed(
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
