// The choosing as numbers: players are seats, and all that one may have in hands, an instrument in an
// open tuning with a capo, is numbered for each. Searching compares such numbers by the hundred thousand.

import type { Hand } from '../demand/hand.ts';
import { hasTimeForCapo } from '../demand/hand.ts';
import { instrumentById } from '../demand/instrument-by-id.ts';
import type { Option } from '../demand/options.ts';
import type { Asked, Outlook } from '../demand/outlook.ts';
import { isStrung } from '../demand/outlook.ts';
import { pitchKey } from '../demand/same-pitches.ts';
import type { Told } from '../demand/told.ts';
import { whyAbsent } from '../demand/why-unplayable.ts';
import { type Options, optionsAhead } from './slot-options.ts';
import { soundsAsAsked } from './sounding-hands.ts';

/** Empty hands of who has had nothing yet, or nothing since an interval: their next costs no hand-over. */
export const FRESH = 0;
/** Empty hands otherwise. */
export const EMPTY = 1;
/** Told of a slot: nothing is known, or something that cannot be had now. */
export const UNTOLD = -1;
const OTHER = -2;

/** What one section asks of one player, with all that would do. */
export type Slot = Asked & {
	/** The hand of what is named, where it can be had; -1 else. */
	readonly primary: number;
	/** What is named can be had, whatever the others have. */
	readonly isSure: boolean;
	/** The hands of what else would do, and the points against each. */
	readonly others: Int16Array;
	readonly options: readonly Option[];
	/** The hand that the plan before gave. */
	readonly told: number;
};

/** One player's side of the choosing. */
export type Seat = {
	readonly player: string;
	/** Every hand by its number; the first two are empty. */
	readonly hands: readonly (Hand | null)[];
	/** For each hand, its instrument's place in the show, its tuning's among that instrument's; -1 for empty. */
	readonly instrumentOf: readonly number[];
	readonly tuningOf: readonly number[];
	/** In hands now. */
	readonly start: number;
	/** What is in hands has a string down: it sounds like nothing, and only stays where nothing else can be had. */
	readonly isStartBroken: boolean;
	/** What they had before the interval under way; EMPTY for nothing. */
	readonly putDown: number;
	readonly slots: readonly Slot[];
	/** Whether a hand sounds as what a section asks. */
	readonly soundsSo: (section: number, hand: number) => boolean;
};

/** Everything that the search knows. */
export type Seating = {
	readonly outlook: Outlook;
	readonly seats: readonly Seat[];
	readonly sectionCount: number;
	readonly instrumentCount: number;
	/** For each instrument that comes up in several tunings, the seat alone that its re-tunings are counted for where one looks at a single player: never more than for all; -1 for others. */
	readonly countedFor: readonly number[];
	readonly handOverSeconds: readonly number[];
	/** For each section, the gap before it; infinite where there is room for all. */
	readonly gapSeconds: readonly number[];
	/** For each section, whether an interval that is still ahead ends every stint before it. */
	readonly endsStints: readonly boolean[];
	readonly hasTimeForCapo: readonly boolean[];
	/** The first section is on now. */
	readonly isOn: boolean;
};

/**
 * The outlook as numbers. `told` is what the plan before gave; null when there is none.
 *
 * @example
 * seatingOf(outlook, null).seats.map(({ hands }) => hands.length) // => [23, 8, 2]
 */
export function seatingOf(outlook: Outlook, told: Told | null): Seating {
	const { show, sections } = outlook;
	const numbering: Numbering = {
		places: new Map(show.instruments.map(({ id }, place) => [id, place])),
		tunings: show.instruments.map(({ id }) => {
			const state = outlook.instruments[id];
			return new Map(state === undefined ? [] : [[pitchKey(state.context), 0]]);
		}),
	};
	const options = optionsAhead(outlook);
	const seats = show.players.map((_, seat) =>
		seatOf(outlook, { seat, told, options: options.map((all) => all[seat] as Options) }, numbering),
	);
	return {
		outlook,
		seats,
		sectionCount: sections.length,
		instrumentCount: show.instruments.length,
		countedFor: numbering.tunings.map(({ size }, instrument) =>
			size > 1 ? seats.findIndex(({ instrumentOf }) => instrumentOf.includes(instrument)) : -1,
		),
		handOverSeconds: show.instruments.map(({ times }) => times.handOver),
		gapSeconds: sections.map(({ hasBegun, gapSeconds }) =>
			hasBegun || gapSeconds === null ? Number.POSITIVE_INFINITY : gapSeconds,
		),
		endsStints: sections.map(({ isAfterInterval }, place) => isAfterInterval && place > 0),
		hasTimeForCapo: sections.map(hasTimeForCapo),
		isOn: sections[0]?.hasBegun === true,
	};
}

type Numbering = {
	readonly places: ReadonlyMap<string, number>;
	/** For each instrument, its tunings by their pitches, the one that it is in now first. */
	readonly tunings: readonly Map<string, number>[];
};

type SeatAsked = {
	readonly seat: number;
	readonly told: Told | null;
	readonly options: readonly Options[];
};

function seatOf(
	outlook: Outlook,
	{ seat, told, options: ahead }: SeatAsked,
	{ places, tunings }: Numbering,
): Seat {
	const player = outlook.show.players[seat]?.id ?? '';
	const hands: (Hand | null)[] = [null, null];
	const instrumentOf = [-1, -1];
	const tuningOf = [-1, -1];
	const numbers = new Map<string, number>();
	const add = (hand: Hand): number => {
		const instrument = places.get(hand.instrument) ?? -1;
		const all = tunings[instrument] as Map<string, number>;
		const tuning = all.get(pitchKey(hand)) ?? all.size;
		all.set(pitchKey(hand), tuning);
		instrumentOf.push(instrument);
		tuningOf.push(tuning);
		return hands.push(hand) - 1;
	};
	const keyOf = (hand: Hand): string => `${hand.instrument} ${pitchKey(hand)} ${hand.capo}`;
	const numberOf = (hand: Hand): number => {
		const key = keyOf(hand);
		const number = numbers.get(key) ?? add(hand);
		numbers.set(key, number);
		return number;
	};
	const listed = new Map<readonly Option[], Int16Array>();
	const numbersOf = (options: readonly Option[]): Int16Array => {
		const found = listed.get(options) ?? Int16Array.from(options, ({ hand }) => numberOf(hand));
		listed.set(options, found);
		return found;
	};
	const held = outlook.hands.get(player) ?? null;
	const isStartBroken = held !== null && !isStrung(outlook, held.instrument, -1);
	const nothing = outlook.firstStints.has(player) ? FRESH : EMPTY;
	// With a string down it is another hand than the same with new ones.
	const inHands = isStartBroken ? add : numberOf;
	const start = held === null ? nothing : inHands(held);
	const before = outlook.heldBefore.get(player);
	const putDown = before !== undefined && isInUse(outlook, before) ? numberOf(before) : EMPTY;
	const slots = outlook.sections.map((section, place): Slot => {
		const asked = outlook.asked[place]?.[seat] as Asked;
		const { primary, isSure, options } = ahead[place] as Options;
		const hand = told?.handAt(section, player);
		return {
			...asked,
			primary: primary === null ? -1 : numberOf(primary),
			isSure,
			options,
			others: numbersOf(options),
			told:
				hand === undefined ? UNTOLD : hand === null ? EMPTY : (numbers.get(keyOf(hand)) ?? OTHER),
		};
	});
	const soundsSo = (place: number, number: number): boolean => {
		const hand = hands[number] ?? null;
		const asked = slots[place] as Slot;
		if (hand === null || (isStartBroken && number === start)) return false;
		return soundsAsAsked(outlook, { asked, place, hand });
	};
	return {
		player,
		hands,
		instrumentOf,
		tuningOf,
		start,
		isStartBroken,
		putDown,
		slots,
		soundsSo,
	};
}

function isInUse(outlook: Outlook, { instrument: id }: Hand): boolean {
	const instrument = instrumentById(outlook.show).get(id);
	const state = outlook.instruments[id];
	if (instrument === undefined || state === undefined) return false;
	return whyAbsent(instrument, state) === null && isStrung(outlook, id, 0);
}
