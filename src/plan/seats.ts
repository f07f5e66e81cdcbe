// The choosing as numbers: players are seats, and all that one may have in hands, an instrument in an
// open tuning with a capo, is numbered for each. Searching compares such numbers by the hundred thousand.

import type { Ask } from './asks.ts';
import { asksAhead } from './asks.ts';
import type { Hand } from './hand.ts';
import { goesOn } from './hand.ts';
import type { Outlook } from './outlook.ts';
import type { OpenWithCapo } from './same-pitches.ts';
import { openMidis } from './same-pitches.ts';
import type { Told } from './told.ts';
import { whyAbsent } from './why-unplayable.ts';

/** Empty hands of who has had nothing yet, or nothing since an interval: their next costs no hand-over. */
export const FRESH = 0;
/** Empty hands otherwise. */
export const EMPTY = 1;
/** Told of a slot: nothing is known, or something that cannot be had now. */
export const UNTOLD = -1;
const OTHER = -2;

/** One player's side of the choosing. */
export type Seat = {
	readonly player: string;
	/** How many hands are numbered; the first two are empty ones. */
	readonly size: number;
	/** For each hand, its instrument's place in the show, its tuning's among that instrument's, its capo; -1 for empty. */
	readonly instrumentOf: Int16Array;
	readonly tuningOf: Int16Array;
	readonly capoOf: Int16Array;
	/** For each hand, the place of its tuning with its capo among the settings of its instrument; -1 for empty. */
	readonly settingOf: Int16Array;
	/** For each hand that has a string down, the same one restrung; else itself. */
	readonly wholeOf: Int16Array;
	/** For each hand, the same one with the string down that it has now; -1 where it has none. */
	readonly brokenOf: Int16Array;
	readonly start: number;
	/** Taken again by who keeps after the interval under way; EMPTY for nothing. */
	readonly putDown: number;
	readonly asks: readonly Ask[];
	/** For each section, the hand of each option. */
	readonly optionHands: readonly Int16Array[];
	/** For each section, the hand that the plan before gave: UNTOLD, or another negative for none of these. */
	readonly told: Int16Array;
};

/** Everything that the search knows. */
export type Seating = {
	readonly seats: readonly Seat[];
	readonly sectionCount: number;
	readonly instrumentCount: number;
	/** How many tunings of each instrument come up, the one it is in now first. */
	readonly tuningCounts: Int16Array;
	/** For each instrument, the tunings with their capos that come up, as it is now first. */
	readonly settings: readonly (readonly OpenWithCapo[])[];
	readonly isAbsent: Uint8Array;
	readonly hasStringsDown: Uint8Array;
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
 * seatingOf(outlook, null).seats.map(({ size }) => size) // => [4, 3, 2]
 */
export function seatingOf(outlook: Outlook, told: Told | null): Seating {
	const { show, sections, instruments } = outlook;
	const places = new Map(show.instruments.map(({ id }, place) => [id, place]));
	const tunings = show.instruments.map(({ id }) => {
		const state = instruments[id];
		return new Map(state === undefined ? [] : [[pitchKey(state.context), 0]]);
	});
	const settings = show.instruments.map(({ id }): Settings => {
		const state = instruments[id];
		const key = `0 ${state?.context.capo}`;
		return new Map(state === undefined ? [] : [[key, { number: 0, setting: state.context }]]);
	});
	const asks = asksAhead(outlook);
	const numbering = { places, tunings, settings };
	const seats = show.players.map(({ id }, seat) =>
		seatOf(outlook, { player: id, asks: asks.map((all) => all[seat] as Ask), told }, numbering),
	);
	const states = show.instruments.map(({ id }) => instruments[id]);
	return {
		seats,
		sectionCount: sections.length,
		instrumentCount: show.instruments.length,
		tuningCounts: Int16Array.from(tunings, ({ size }) => size),
		settings: settings.map((known) => Array.from(known.values(), ({ setting }) => setting)),
		isAbsent: Uint8Array.from(show.instruments, (one, place) => {
			const state = states[place];
			return state === undefined || whyAbsent(one, state) !== null ? 1 : 0;
		}),
		hasStringsDown: Uint8Array.from(states, (state) =>
			state !== undefined && state.context.stringsDown.length > 0 ? 1 : 0,
		),
		handOverSeconds: Float64Array.from(show.instruments, ({ times }) => times.handOver),
		gapSeconds: Float64Array.from(sections, ({ hasBegun, gapSeconds }) =>
			hasBegun || gapSeconds === null ? Number.POSITIVE_INFINITY : gapSeconds,
		),
		endsStints: Uint8Array.from(sections, ({ isAfterInterval }, place) =>
			isAfterInterval && place > 0 ? 1 : 0,
		),
		hasTimeForCapo: Uint8Array.from(sections, (section) =>
			goesOn(CAPO_OFF, CAPO_ON, section) ? 1 : 0,
		),
		isOn: sections[0]?.hasBegun === true,
	};
}

const CAPO_OFF: Hand = { instrument: '', tuning: { name: '', notes: [] }, capo: 0 };
const CAPO_ON: Hand = { ...CAPO_OFF, capo: 1 };

type Numbering = {
	readonly places: ReadonlyMap<string, number>;
	/** For each instrument, its tunings by their pitches. */
	readonly tunings: readonly Map<string, number>[];
	/** For each instrument, its settings by tuning and capo. */
	readonly settings: readonly Settings[];
};

type Settings = Map<string, { readonly number: number; readonly setting: OpenWithCapo }>;

type Seated = {
	readonly player: string;
	readonly asks: readonly Ask[];
	readonly told: Told | null;
};

function seatOf(outlook: Outlook, seated: Seated, { places, tunings, settings }: Numbering): Seat {
	const { player, asks, told } = seated;
	const numbers = new Map<string, number>();
	const empty = { instrument: -1, tuning: -1, capo: 0, setting: -1 };
	const rows = [
		{ ...empty, whole: FRESH },
		{ ...empty, whole: EMPTY },
	];
	const numberOf = (hand: Hand, isBroken = false): number => {
		const instrument = places.get(hand.instrument) ?? -1;
		const known = tunings[instrument];
		if (known === undefined) return EMPTY;
		const pitches = pitchKey(hand);
		const tuning = known.get(pitches) ?? known.size;
		known.set(pitches, tuning);
		const key = `${instrument} ${tuning} ${hand.capo} ${isBroken}`;
		const found = numbers.get(key);
		if (found !== undefined) return found;
		const whole = isBroken ? numberOf(hand) : rows.length;
		const number = rows.length;
		numbers.set(key, number);
		const setting = numberOfSetting(settings[instrument] as Settings, hand, tuning);
		rows.push({ instrument, tuning, capo: hand.capo, setting, whole });
		return number;
	};
	const optionHands = asks.map(({ options, isSettled }) =>
		Int16Array.from(isSettled ? [] : options, ({ hand }) => numberOf(hand)),
	);
	const held = outlook.hands.get(player) ?? null;
	const putDown = outlook.heldBefore.get(player) ?? null;
	const isBroken =
		held !== null && (outlook.instruments[held.instrument]?.context.stringsDown.length ?? 0) > 0;
	const nothing = outlook.firstStints.has(player) ? FRESH : EMPTY;
	const start = held === null ? nothing : numberOf(held, isBroken);
	const afterInterval = putDown === null ? EMPTY : numberOf(putDown);
	if (isBroken) {
		// The same one may be named again, its capo moved: it stays in hands as broken as it is.
		for (const { options } of asks) {
			for (const { hand } of options) {
				if (hand.instrument === held.instrument) numberOf(hand, true);
			}
		}
	}
	const brokenOf = new Int16Array(rows.length).fill(-1);
	rows.forEach(({ whole }, number) => {
		if (whole !== number) brokenOf[whole] = number;
	});
	return {
		player,
		size: rows.length,
		instrumentOf: Int16Array.from(rows, ({ instrument }) => instrument),
		tuningOf: Int16Array.from(rows, ({ tuning }) => tuning),
		capoOf: Int16Array.from(rows, ({ capo }) => capo),
		settingOf: Int16Array.from(rows, ({ setting }) => setting),
		wholeOf: Int16Array.from(rows, ({ whole }) => whole),
		brokenOf,
		start,
		putDown: afterInterval,
		asks,
		optionHands,
		told: Int16Array.from(outlook.sections, (section) => {
			const hand = told?.handAt(section, player);
			if (hand === undefined) return UNTOLD;
			if (hand === null) return EMPTY;
			const tuning = tunings[places.get(hand.instrument) ?? -1]?.get(pitchKey(hand));
			const key = `${places.get(hand.instrument)} ${tuning} ${hand.capo} false`;
			return numbers.get(key) ?? OTHER;
		}),
	};
}

function numberOfSetting(known: Settings, setting: OpenWithCapo, tuning: number): number {
	const key = `${tuning} ${setting.capo}`;
	const number = known.get(key)?.number ?? known.size;
	if (number === known.size) known.set(key, { number, setting });
	return number;
}

function pitchKey({ tuning }: { readonly tuning: Hand['tuning'] }): string {
	return openMidis(tuning).join(' ');
}
