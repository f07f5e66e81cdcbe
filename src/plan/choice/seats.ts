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
import type { Options } from './slot-options.ts';
import { optionsAhead } from './slot-options.ts';
import { type SoundsSo, soundingHands } from './sounding-hands.ts';

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
	/** The hands of what else would do, and the points against each. */
	readonly others: Int16Array;
	readonly options: readonly Option[];
	/** Every hand that meets what is needed, what is named for somebody else among them. */
	readonly meeting: ReadonlySet<number>;
	/** The hand that the plan before gave. */
	readonly told: number;
};

/** One player's side of the choosing. */
export type Seat = {
	readonly player: string;
	/** Every hand by its number; the first two are empty. */
	readonly hands: readonly (Hand | null)[];
	/** For each hand, its instrument's place in the show, its tuning's among that instrument's; -1 for empty. */
	readonly instrumentOf: Int16Array;
	readonly tuningOf: Int16Array;
	/** In hands now. */
	readonly start: number;
	/** What is in hands has a string down: it sounds like nothing, and only stays where nothing else can be had. */
	readonly isStartBroken: boolean;
	/** What they had before the interval under way; EMPTY for nothing. */
	readonly putDown: number;
	readonly slots: readonly Slot[];
	readonly soundsSo: SoundsSo;
};

/** Everything that the search knows. */
export type Seating = {
	readonly outlook: Outlook;
	readonly seats: readonly Seat[];
	readonly sectionCount: number;
	readonly instrumentCount: number;
	/** How many tunings of each instrument come up, the one it is in now first. */
	readonly tuningCounts: Int16Array;
	readonly handOverSeconds: Float64Array;
	/** For each section, the gap before it; infinite where there is room for all. */
	readonly gapSeconds: Float64Array;
	/** For each section, whether an interval that is still ahead ends every stint before it. */
	readonly endsStints: Uint8Array;
	readonly hasTimeForCapo: Uint8Array;
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
	const places = new Map(show.instruments.map(({ id }, place) => [id, place]));
	const tunings = show.instruments.map(({ id }) => {
		const state = outlook.instruments[id];
		return new Map(state === undefined ? [] : [[pitchKey(state.context), 0]]);
	});
	const options = optionsAhead(outlook);
	const seats = show.players.map((_, seat) =>
		seatOf(outlook, { seat, told, options }, { places, tunings }),
	);
	return {
		outlook,
		seats,
		sectionCount: sections.length,
		instrumentCount: show.instruments.length,
		tuningCounts: Int16Array.from(tunings, ({ size }) => size),
		handOverSeconds: Float64Array.from(show.instruments, ({ times }) => times.handOver),
		gapSeconds: Float64Array.from(sections, ({ hasBegun, gapSeconds }) =>
			hasBegun || gapSeconds === null ? Number.POSITIVE_INFINITY : gapSeconds,
		),
		endsStints: Uint8Array.from(sections, ({ isAfterInterval }, place) =>
			isAfterInterval && place > 0 ? 1 : 0,
		),
		hasTimeForCapo: Uint8Array.from(sections, (section) => (hasTimeForCapo(section) ? 1 : 0)),
		isOn: sections[0]?.hasBegun === true,
	};
}

type Numbering = {
	readonly places: ReadonlyMap<string, number>;
	/** For each instrument, its tunings by their pitches. */
	readonly tunings: readonly Map<string, number>[];
};

type SeatAsked = {
	readonly seat: number;
	readonly told: Told | null;
	readonly options: readonly (readonly Options[])[];
};

function seatOf(
	outlook: Outlook,
	{ seat, told, options: would }: SeatAsked,
	{ places, tunings }: Numbering,
): Seat {
	const player = outlook.show.players[seat]?.id ?? '';
	const numbers = new Map<string, number>();
	const hands: (Hand | null)[] = [null, null];
	const rows = [
		{ instrument: -1, tuning: -1 },
		{ instrument: -1, tuning: -1 },
	];
	const add = (hand: Hand, instrument: number, tuning: number): number => {
		hands.push(hand);
		return rows.push({ instrument, tuning }) - 1;
	};
	const tuningNumber = (hand: Hand, instrument: number): number => {
		const all = tunings[instrument] as Map<string, number>;
		const pitches = pitchKey(hand);
		const number = all.get(pitches) ?? all.size;
		all.set(pitches, number);
		return number;
	};
	const keyOf = (hand: Hand): string =>
		`${places.get(hand.instrument)} ${pitchKey(hand)} ${hand.capo}`;
	const numberOf = (hand: Hand): number => {
		const key = keyOf(hand);
		const found = numbers.get(key);
		if (found !== undefined) return found;
		const instrument = places.get(hand.instrument) ?? -1;
		const number = add(hand, instrument, tuningNumber(hand, instrument));
		numbers.set(key, number);
		return number;
	};
	const numbersOf = (options: readonly Option[]): Int16Array =>
		Int16Array.from(options, ({ hand }) => numberOf(hand));
	const held = outlook.hands.get(player) ?? null;
	const isStartBroken = held !== null && !isStrung(outlook, held.instrument, -1);
	const startOf = (hand: Hand): number => {
		if (!isStartBroken) return numberOf(hand);
		const instrument = places.get(hand.instrument) ?? -1;
		return add(hand, instrument, tuningNumber(hand, instrument));
	};
	const nothing = outlook.firstStints.has(player) ? FRESH : EMPTY;
	const start = held === null ? nothing : startOf(held);
	const before = outlook.heldBefore.get(player);
	const putDown = before !== undefined && isInUse(outlook, before) ? numberOf(before) : EMPTY;
	const slots = outlook.sections.map((section, place): Slot => {
		const asked = outlook.asked[place]?.[seat] as Asked;
		const { primary, options, all } = (would[place] as readonly Options[])[seat] as Options;
		const hand = told?.handAt(section, player);
		return {
			...asked,
			primary: primary === null ? -1 : numberOf(primary),
			options,
			others: numbersOf(options),
			meeting: new Set(numbersOf(all)),
			told:
				hand === undefined ? UNTOLD : hand === null ? EMPTY : (numbers.get(keyOf(hand)) ?? OTHER),
		};
	});
	return {
		player,
		hands,
		instrumentOf: Int16Array.from(rows, ({ instrument }) => instrument),
		tuningOf: Int16Array.from(rows, ({ tuning }) => tuning),
		start,
		isStartBroken,
		putDown,
		slots,
		soundsSo: soundingHands(outlook, { slots, hands, broken: isStartBroken ? start : -1 }),
	};
}

function isInUse(outlook: Outlook, { instrument: id }: Hand): boolean {
	const instrument = instrumentById(outlook.show).get(id);
	const state = outlook.instruments[id];
	if (instrument === undefined || state === undefined) return false;
	return whyAbsent(instrument, state) === null && isStrung(outlook, id, 0);
}
