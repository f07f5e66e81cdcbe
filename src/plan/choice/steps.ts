// The search graph of one player: every step that the hands can take from one section to the next, listed
// once so that the searches only walk the list. A layer for each section, a node for each hand.

import type { Seat, Seating, Slot } from './seats.ts';
import { EMPTY, FRESH, UNTOLD } from './seats.ts';

/** Nothing playable. */
export const IS_MISSING = 1;
/** A stint begins: somebody has to hand it over. */
export const BEGINS = 2;
/** And it counts: not the player's first, nor the first after an interval. */
export const COUNTS = 4;
/** Other than the plan before said. */
export const IS_CHANGED = 8;
/** Stands in for what is named. */
export const IS_SUBSTITUTED = 16;
/** Named, kept or left alone: whoever else is named it does without. */
export const IS_FIRM = 32;
/** Given up to somebody else, who may have it for any reason: no need that they have it firmly. */
export const IS_GIVEN_UP = 64;

/** The steps of one seat. Those from hand `h` into section `s` are numbered from `first[s * size + h]` up to the next such number. */
export type Steps = {
	readonly size: number;
	readonly first: Int32Array;
	readonly to: Int16Array;
	readonly flags: Uint8Array;
	readonly backup: Uint16Array;
	readonly preference: Uint8Array;
	/** The instrument that must be in other hands for this step, firmly unless it is given up; -1 where none. */
	readonly takenBy: Int16Array;
};

/**
 * The steps of a seat from every hand that can come about.
 *
 * @example
 * stepsOf(seating, 2).to.length // => 3
 */
export function stepsOf(seating: Seating, place: number): Steps {
	const seat = seating.seats[place] as Seat;
	const size = seat.hands.length;
	const { sectionCount } = seating;
	const list = new StepList(seating, place);
	const first = new Int32Array(sectionCount * size + 1);
	let reached = new Uint8Array(size);
	reached[seat.start] = 1;
	for (let section = 0; section < sectionCount; section += 1) {
		list.begin(section);
		const next = new Uint8Array(size);
		for (let hand = 0; hand < size; hand += 1) {
			const from = list.to.length;
			first[section * size + hand] = from;
			if (reached[hand] !== 1) continue;
			list.addFrom(hand);
			for (let step = from; step < list.to.length; step += 1) next[list.to[step] as number] = 1;
		}
		reached = next;
	}
	first[sectionCount * size] = list.to.length;
	return {
		size,
		first,
		to: Int16Array.from(list.to),
		flags: Uint8Array.from(list.flags),
		backup: Uint16Array.from(list.backup),
		preference: Uint8Array.from(list.preference),
		takenBy: Int16Array.from(list.takenBy),
	};
}

type NewStep = {
	readonly to: number;
	readonly flags?: number;
	readonly backup?: number;
	readonly preference?: number;
	readonly takenBy?: number;
};

/** From where a step goes. */
type From = {
	/** In hands before. */
	readonly hand: number;
	/** The same, fresh where an interval has ended every stint. */
	readonly from: number;
	/** What they have now, or had before the interval. */
	readonly had: number;
	readonly isOver: boolean;
};

class StepList {
	readonly to: number[] = [];
	readonly flags: number[] = [];
	readonly backup: number[] = [];
	readonly preference: number[] = [];
	readonly takenBy: number[] = [];
	readonly #seating: Seating;
	readonly #seat: Seat;
	readonly #place: number;
	#section = 0;
	#slot: Slot;
	#canMiss = false;
	readonly #elsewhere = new Map<number, boolean>();

	constructor(seating: Seating, place: number) {
		this.#seating = seating;
		this.#seat = seating.seats[place] as Seat;
		this.#place = place;
		this.#slot = this.#seat.slots[0] as Slot;
	}

	/** The steps from here on lead into this section. */
	begin(section: number): void {
		this.#section = section;
		this.#slot = this.#seat.slots[section] as Slot;
		this.#elsewhere.clear();
		const { primary, others } = this.#slot;
		const all = primary < 0 ? others : [primary, ...others];
		this.#canMiss = all.every((hand) => this.#mayBeElsewhere(this.#instrument(hand)));
	}

	/** All steps from this hand into the section. */
	addFrom(hand: number): void {
		const seat = this.#seat;
		const slot = this.#slot;
		const { demand, isNamed, isSettled, goesOnWithin } = slot;
		const isEmpty = hand === FRESH || hand === EMPTY;
		const { isInterval } = this.#seating.outlook;
		const isBack = this.#section === 0 && isInterval && isEmpty && seat.putDown !== EMPTY;
		const isOver = this.#seating.endsStints[this.#section] === 1 || isBack;
		const from = isOver ? FRESH : hand;
		const had = isBack ? seat.putDown : hand;
		const at = { hand, from, had, isOver };
		if (isSettled) this.#add({ to: isBack ? hand : from, flags: IS_FIRM });
		else if (demand.kind === 'none') this.#add({ to: this.#emptied(at) });
		else if (demand.kind === 'keeps') this.#keep(at);
		else if (goesOnWithin && !isEmpty) this.#add({ to: hand, flags: IS_FIRM });
		else if (this.#staysAsItIs(at, isNamed)) this.#add({ to: hand, flags: IS_FIRM });
		else this.#ask(at);
	}

	/** What sounds so stays where the song does not name the player, and in a song that is on. */
	#staysAsItIs({ hand, isOver }: From, isNamed: boolean): boolean {
		const isOn = this.#section === 0 && this.#seating.isOn;
		return !isOver && (!isNamed || isOn) && this.#soundsSo(hand);
	}

	#keep(at: From): void {
		const { hand, had, isOver } = at;
		const isEmpty = had === FRESH || had === EMPTY;
		if (isEmpty) this.#add({ to: at.from });
		else if (isOver) this.#takeAgain(at, -1);
		else this.#add({ to: hand, flags: IS_FIRM });
	}

	/** After an interval the same again, where it can be had. */
	#takeAgain(at: From, takenBy: number): void {
		const { had } = at;
		const isBroken = this.#seat.isStartBroken && had === this.#seat.start;
		if (isBroken) this.#add({ to: this.#emptied(at) });
		else this.#add({ to: had, flags: BEGINS | IS_FIRM, takenBy });
	}

	/** What is asked for, or what would do for it, or nothing. */
	#ask(at: From): void {
		const { primary, others, options, isNamed, demand } = this.#slot;
		const isAgain = !isNamed && at.isOver && this.#soundsSo(at.had);
		const isSameOne =
			isAgain && (primary < 0 || this.#instrument(at.had) === this.#instrument(primary));
		if (isSameOne) {
			this.#takeAgain(at, -1);
			return;
		}
		if (primary >= 0) this.#addOption(at, { to: primary, flags: IS_FIRM });
		const takenBy = primary < 0 ? -1 : this.#instrument(primary);
		if (isAgain) {
			this.#takeAgain(at, takenBy);
			return;
		}
		const flags = demand.kind === 'named' ? IS_SUBSTITUTED : 0;
		for (let index = 0; index < others.length; index += 1) {
			const { backup, preference } = options[index] as Slot['options'][number];
			const to = others[index] as number;
			this.#addOption(at, { to, flags, backup, preference, takenBy });
		}
		if (this.#canMiss) this.#miss(at);
	}

	#addOption(at: From, step: NewStep): void {
		const { to, flags = 0, backup = 0, preference = 0, takenBy = -1 } = step;
		const isGoingOn = this.#goesOn(at.from, to);
		const begins = isGoingOn ? 0 : this.#beginning(at.from);
		this.#add({ to, flags: flags | begins, backup: isGoingOn ? 0 : backup, preference, takenBy });
	}

	/** Under way, nothing is taken out of hands for a slot that stays empty, unless somebody else is to have it. */
	#miss(at: From): void {
		const { hand, isOver } = at;
		const isHeld = hand !== FRESH && hand !== EMPTY;
		const isLeft = isHeld && !isOver && this.#seating.outlook.isLive;
		const emptied = { to: this.#emptied(at), flags: IS_MISSING };
		if (!isLeft) {
			this.#add(emptied);
			return;
		}
		const takenBy = this.#instrument(hand);
		this.#add({ ...emptied, flags: IS_MISSING | IS_GIVEN_UP, takenBy });
		// Merely left in hands, it is there for whoever is named it.
		this.#add({ to: hand, flags: IS_MISSING });
	}

	#emptied({ from }: From): number {
		return from === FRESH ? FRESH : EMPTY;
	}

	#beginning(from: number): number {
		return from === FRESH ? BEGINS : BEGINS | COUNTS;
	}

	#soundsSo(hand: number): boolean {
		return this.#seat.soundsSo(this.#section, hand);
	}

	#goesOn(from: number, to: number): boolean {
		const { instrumentOf, tuningOf, hands, isStartBroken, start } = this.#seat;
		return (
			!(isStartBroken && from === start) &&
			instrumentOf[from] === instrumentOf[to] &&
			tuningOf[from] === tuningOf[to] &&
			(hands[from]?.capo === hands[to]?.capo || this.#seating.hasTimeForCapo[this.#section] === 1)
		);
	}

	#instrument(hand: number): number {
		return this.#seat.instrumentOf[hand] ?? -1;
	}

	/** Whether somebody else may have this instrument in the section. */
	#mayBeElsewhere(instrument: number): boolean {
		const known = this.#elsewhere.get(instrument) ?? this.#isElsewhere(instrument);
		this.#elsewhere.set(instrument, known);
		return known;
	}

	#isElsewhere(instrument: number): boolean {
		return this.#seating.seats.some((seat, other) => {
			if (other === this.#place) return false;
			const { isNamed, isSettled, goesOnWithin, demand, primary, others } = seat.slots[
				this.#section
			] as Slot;
			const isKeeping = !isNamed || isSettled || goesOnWithin || this.#section === 0;
			// Who is left alone keeps it even where the song wants their hands empty.
			const mayHold = isSettled || (isKeeping && demand.kind !== 'none');
			if (mayHold) return seat.instrumentOf.includes(instrument);
			const isIt = (hand: number): boolean => seat.instrumentOf[hand] === instrument;
			return (primary >= 0 && isIt(primary)) || others.some(isIt);
		});
	}

	#add({ to, flags = 0, backup = 0, preference = 0, takenBy = -1 }: NewStep): void {
		// What nobody else may have is in no other hands.
		if (takenBy >= 0 && !this.#mayBeElsewhere(takenBy)) return;
		const { told } = this.#slot;
		const now = to === FRESH || (flags & IS_MISSING) !== 0 ? EMPTY : to;
		const isMoved = told !== UNTOLD && told !== now;
		this.to.push(to);
		this.flags.push(flags | (isMoved ? IS_CHANGED : 0));
		this.backup.push(backup);
		this.preference.push(preference);
		this.takenBy.push(takenBy);
	}
}
