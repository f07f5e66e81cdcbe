// Every step that one player's hands can take from one section to the next, listed once so that the
// search only walks the list.

import type { MayHold } from './may-hold.ts';
import type { Seat, Seating } from './seats.ts';
import { EMPTY, FRESH, UNTOLD } from './seats.ts';

/** Nothing playable. */
export const IS_MISSING = 1;
/** A stint begins: somebody has to hand it over. */
export const BEGINS = 2;
/** And it counts: not the player's first, nor the first after an interval. */
export const COUNTS = 4;
/** Other than the plan before said. */
export const IS_CHANGED = 8;

/**
 * The steps of one seat. Those from hand `h` into section `s` are numbered from `first[s * size + h]`
 * up to the next such number.
 */
export type Steps = {
	readonly first: Int32Array;
	readonly to: Int16Array;
	readonly flags: Uint8Array;
	readonly preference: Uint8Array;
	readonly tie: Uint8Array;
};

/**
 * The steps of a seat from every hand that can come about.
 *
 * @example
 * stepsOf(seating, mayHold(seating), 0).to.length // => 3
 */
export function stepsOf(seating: Seating, may: MayHold, place: number): Steps {
	const seat = seating.seats[place] as Seat;
	const { sectionCount } = seating;
	const list = new StepList(seating, seat, may.players);
	const first = new Int32Array(sectionCount * seat.size + 1);
	let reached = new Uint8Array(seat.size);
	reached[seat.start] = 1;
	for (let section = 0; section < sectionCount; section += 1) {
		const canMiss = isMissable(seating, may, { place, section });
		const next = new Uint8Array(seat.size);
		for (let hand = 0; hand < seat.size; hand += 1) {
			const from = list.length;
			first[section * seat.size + hand] = from;
			if (reached[hand] !== 1) continue;
			list.addFrom(section, hand, canMiss);
			for (let step = from; step < list.length; step += 1) next[list.to[step] ?? 0] = 1;
		}
		reached = next;
	}
	first[sectionCount * seat.size] = list.length;
	return {
		first,
		to: Int16Array.from(list.to),
		flags: Uint8Array.from(list.flags),
		preference: Uint8Array.from(list.preference),
		tie: Uint8Array.from(list.tie),
	};
}

/** Whether everything that would do can be in other hands there; true where nothing would do. */
function isMissable(
	{ seats, instrumentCount }: Seating,
	{ bySeat, count }: MayHold,
	{ place, section }: { readonly place: number; readonly section: number },
): boolean {
	const seat = seats[place] as Seat;
	const broken = seat.wholeOf[seat.start] === seat.start ? -1 : seat.instrumentOf[seat.start];
	return (seat.optionHands[section] ?? new Int16Array()).every((hand) => {
		const instrument = seat.instrumentOf[hand] ?? -1;
		const at = section * instrumentCount + instrument;
		return (count[at] ?? 0) > (bySeat[place]?.[at] ?? 0) || instrument === broken;
	});
}

type NewStep = {
	readonly to: number;
	readonly flags?: number;
	readonly preference?: number;
	readonly tie?: number;
};

class StepList {
	readonly to: number[] = [];
	readonly flags: number[] = [];
	readonly preference: number[] = [];
	readonly tie: number[] = [];
	readonly #seating: Seating;
	readonly #seat: Seat;
	readonly #players: Uint8Array;

	constructor(seating: Seating, seat: Seat, players: Uint8Array) {
		this.#seating = seating;
		this.#seat = seat;
		this.#players = players;
	}

	get length(): number {
		return this.to.length;
	}

	/** All steps from this hand into this section. */
	addFrom(section: number, hand: number, canMiss: boolean): void {
		const seat = this.#seat;
		const start = this.length;
		const ask = seat.asks[section];
		const isOver = this.#seating.endsStints[section] === 1;
		const from = isOver ? FRESH : hand;
		const emptied = from === FRESH ? FRESH : EMPTY;
		if (ask === undefined || ask.isSettled) {
			this.#add(section, { to: from });
			return;
		}
		if (ask.demand.kind === 'none') {
			this.#add(section, { to: emptied });
			return;
		}
		const isHeld = hand !== FRESH && hand !== EMPTY;
		if (ask.demand.kind === 'keeps' || (ask.isOfEmptyHands && isHeld)) {
			this.#keep(section, hand, { from, emptied });
			return;
		}
		const isNeeded = ask.demand.kind === 'needs';
		const isBroken = seat.wholeOf[from] !== from;
		const options = seat.optionHands[section] ?? new Int16Array();
		const isOn = section === 0 && this.#seating.isOn;
		for (let index = 0; index < options.length; index += 1) {
			const option = options[index] ?? EMPTY;
			const isSame = seat.instrumentOf[option] === seat.instrumentOf[from];
			if (isNeeded && isBroken && isSame) continue;
			const goesOn = this.#goesOn(from, option, section);
			const to = goesOn && isBroken ? (seat.brokenOf[option] ?? option) : option;
			const flags = goesOn ? 0 : from === FRESH ? BEGINS : BEGINS | COUNTS;
			const { preference = 0 } = ask.options[index] ?? {};
			const step = { to, flags, preference, tie: isNeeded ? this.#tieOf(to) : 0 };
			if (goesOn && isOn) {
				// In the song that is on nobody exchanges what does.
				this.#restart(start);
				this.#add(section, step);
				return;
			}
			this.#add(section, step);
		}
		if (!canMiss) return;
		const isLeft = section === 0 && this.#seating.isOn && !this.#isAskedFor(hand);
		this.#add(section, { to: isLeft ? hand : emptied, flags: IS_MISSING });
	}

	#keep(
		section: number,
		hand: number,
		{ from, emptied }: { readonly from: number; readonly emptied: number },
	): void {
		const seat = this.#seat;
		const isEmpty = hand === FRESH || hand === EMPTY;
		const held = isEmpty ? (section === 0 ? seat.putDown : EMPTY) : hand;
		const instrument = seat.instrumentOf[held] ?? -1;
		if (instrument < 0 || this.#seating.isAbsent[instrument] === 1) {
			this.#add(section, { to: emptied });
		} else if (from === held) this.#add(section, { to: held });
		else {
			const flags = from === FRESH ? BEGINS : BEGINS | COUNTS;
			this.#add(section, { to: seat.wholeOf[held] ?? held, flags });
		}
	}

	/** In the song on: whether somebody else is named for what is in these hands. */
	#isAskedFor(hand: number): boolean {
		const instrument = this.#seat.instrumentOf[hand] ?? -1;
		return (
			instrument >= 0 &&
			this.#seating.seats.some(
				(other) =>
					other !== this.#seat &&
					other.asks[0]?.demand.kind === 'named' &&
					other.optionHands[0]?.some((option) => other.instrumentOf[option] === instrument),
			)
		);
	}

	/** Forgets the steps from this one on. */
	#restart(from: number): void {
		for (const list of [this.to, this.flags, this.preference, this.tie]) list.length = from;
	}

	#goesOn(from: number, to: number, section: number): boolean {
		const { instrumentOf, tuningOf, capoOf } = this.#seat;
		return (
			instrumentOf[from] === instrumentOf[to] &&
			tuningOf[from] === tuningOf[to] &&
			(capoOf[from] === capoOf[to] || this.#seating.hasTimeForCapo[section] === 1)
		);
	}

	#tieOf(hand: number): number {
		const instrument = this.#seat.instrumentOf[hand] ?? -1;
		const isShared = (this.#players[instrument] ?? 0) > 1;
		return (isShared ? 1 : 0) + (this.#seating.hasStringsDown[instrument] === 1 ? 2 : 0);
	}

	#add(section: number, step: NewStep): void {
		const { to, flags = 0, preference = 0, tie = 0 } = step;
		const told = this.#seat.told[section] ?? UNTOLD;
		const now = to === FRESH ? EMPTY : (this.#seat.wholeOf[to] ?? to);
		const isMoved = told !== UNTOLD && told !== ((flags & IS_MISSING) !== 0 ? EMPTY : now);
		this.to.push(to);
		this.flags.push(flags | (isMoved ? IS_CHANGED : 0));
		this.preference.push(preference);
		this.tie.push(tie);
	}
}
