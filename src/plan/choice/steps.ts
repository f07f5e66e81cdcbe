// The search graph of one player: a layer for each section, a node for each hand, and every step that the hands
// can take from one layer to the next. What does not depend on where a step comes from is made once a section.

import {
	BACKUP,
	CHANGED,
	type Counts,
	HAND_OVERS,
	MISSING,
	noCounts,
	OVER_GAP,
	PREFERENCE,
	SUBSTITUTED,
} from './criteria.ts';
import { remembered } from './remembered.ts';
import { EMPTY, FRESH, type Seat, type Seating, type Slot, UNTOLD } from './seats.ts';

/** An instrument that has to be in other hands; firmly: named, kept or left alone there. */
export type Elsewhere = { readonly instrument: number; readonly isFirm: boolean };

export type Step = {
	/** The hand that it leads to. */
	readonly to: number;
	/** What is in hands from there on; -1 for nothing. */
	readonly instrument: number;
	readonly tuning: number;
	/** Its re-tuning, if there is one, counts for this player. */
	readonly isTuned: boolean;
	/** A stint begins: somebody has to hand it over, in so many seconds. */
	readonly begins: boolean;
	readonly seconds: number;
	/** Whoever else is named what is in hands does without. */
	readonly isFirm: boolean;
	/** Taken only where all of these are in other hands. */
	readonly elsewhere: readonly Elsewhere[];
	/** And this instrument, which is given up; -1 for none. */
	readonly givenUp: number;
	/** What it counts, re-tunings left out, and hand-overs over the gap but by its own length. */
	readonly counts: Counts;
	/** The same, weighed. */
	cost: number;
};

/** The steps of one player into one section. */
export type StepsInto = {
	/** For each hand before, those from there in lists, of which many hands have the same; none from a hand that cannot come about. */
	readonly from: readonly StepLists[];
	/** All of them once. */
	readonly all: readonly Step[];
};

export type StepLists = readonly (readonly Step[])[];

/** For each section. */
export type Steps = readonly StepsInto[];

/** How a stint comes about. */
type Beginning = 'kept' | 'first' | 'given';

type NewStep = {
	readonly to: number;
	readonly beginning?: Beginning;
	readonly isFirm?: boolean;
	readonly isMissing?: boolean;
	readonly isSubstituted?: boolean;
	readonly backup?: number;
	readonly preference?: number;
	readonly elsewhere?: readonly Elsewhere[];
	readonly givenUp?: number;
};

const NOWHERE: StepLists = [];

/**
 * The steps of a seat from every hand that can come about.
 *
 * @example
 * stepsOf(seating, 2).map(({ all }) => all.length) // => [1, 1, 1]
 */
export function stepsOf(seating: Seating, index: number): Steps {
	const { start, slots, hands } = seating.seats[index] as Seat;
	let reached = new Set([start]);
	return slots.map((_, section) => {
		const into = new Into(seating, index, section);
		const from = hands.map((_, hand) => (reached.has(hand) ? into.from(hand) : NOWHERE));
		reached = new Set(into.all.map(({ to }) => to));
		return { from, all: into.all };
	});
}

/** From where a step goes. */
type From = {
	/** In hands before; FRESH where an interval has ended every stint. */
	readonly from: number;
	/** What they have now, or had before the interval. */
	readonly had: number;
	readonly isOver: boolean;
};

/** The steps of one seat into one section. */
class Into {
	/** All that were made. */
	readonly all: Step[] = [];
	readonly #seating: Seating;
	readonly #index: number;
	readonly #seat: Seat;
	readonly #section: number;
	readonly #slot: Slot;
	/** What is asked for and what would do, by how the stint comes about. */
	readonly #optionsBy: (beginning: Beginning) => readonly Step[];
	/** What has to be in other hands for anything else than what is named to be played. */
	readonly #named: readonly Elsewhere[];
	/** What has to be in other hands for nothing to be playable; null where it cannot be. */
	readonly #all: readonly Elsewhere[] | null;

	constructor(seating: Seating, index: number, section: number) {
		this.#seating = seating;
		this.#index = index;
		this.#seat = seating.seats[index] as Seat;
		this.#section = section;
		this.#slot = this.#seat.slots[section] as Slot;
		const { primary, others, options, demand, isSure } = this.#slot;
		const instrument = (hand: number) => this.#seat.instrumentOf[hand] as number;
		const named = primary < 0 ? [] : [{ instrument: instrument(primary), isFirm: true }];
		const all: NewStep[] = primary < 0 ? [] : [{ to: primary, isFirm: true }];
		others.forEach((to, at) => {
			const { backup, preference } = options[at] as Slot['options'][number];
			const isSubstituted = demand.kind === 'named';
			all.push({ to, isSubstituted, backup, preference, elsewhere: named });
		});
		this.#optionsBy = remembered((beginning) =>
			all.map((one) => this.#step({ ...one, beginning })),
		);
		this.#named = named;
		const rest = Array.from(others, (hand) => ({ instrument: instrument(hand), isFirm: false }));
		this.#all = isSure ? null : [...named, ...rest];
	}

	/** All steps from this hand. */
	from(hand: number): StepLists {
		const seat = this.#seat;
		const { isInterval } = this.#seating.outlook;
		const { demand, isNamed, isSettled, goesOnWithin } = this.#slot;
		const isEmpty = isEmptied(hand);
		const isBack = this.#section === 0 && isInterval && isEmpty && seat.putDown !== EMPTY;
		const isOver = this.#seating.endsStints[this.#section] || isBack;
		const at = { from: isOver ? FRESH : hand, had: isBack ? seat.putDown : hand, isOver };
		const isOn = this.#section === 0 && this.#seating.isOn;
		const staysAsItIs = !isOver && (!isNamed || isOn) && this.#seat.soundsSo(this.#section, hand);
		const isLeft = isSettled || (demand.kind === 'keeps' && !isOver);
		const only = (one: NewStep): StepLists => [[this.#step(one)]];
		if (isSettled) return only({ to: isBack ? hand : at.from, isFirm: true });
		if (demand.kind === 'none') return only({ to: emptied(at) });
		if (demand.kind === 'keeps' && isEmptied(at.had)) return only({ to: at.from });
		if (demand.kind === 'keeps' && isOver) return [this.#takeAgain(at)];
		if (isLeft || (goesOnWithin && !isEmpty) || staysAsItIs) {
			return only({ to: hand, isFirm: true });
		}
		return this.#ask(at);
	}

	/** After an interval the same again, where it can be had. */
	#takeAgain(at: From, elsewhere: readonly Elsewhere[] = []): readonly Step[] {
		const isBroken = this.#seat.isStartBroken && at.had === this.#seat.start;
		if (isBroken) return [this.#step({ to: emptied(at) })];
		return [this.#step({ to: at.had, beginning: 'first', isFirm: true, elsewhere })];
	}

	/** What is asked for, or what would do for it, or nothing. */
	#ask(at: From): StepLists {
		const { primary, isNamed } = this.#slot;
		const { instrumentOf } = this.#seat;
		const begun = this.#optionsBy(at.from === FRESH ? 'first' : 'given');
		if (!isNamed && at.isOver && this.#seat.soundsSo(this.#section, at.had)) {
			const isSameOne = primary < 0 || instrumentOf[at.had] === instrumentOf[primary];
			if (isSameOne) return [this.#takeAgain(at)];
			return [begun.slice(0, 1), this.#takeAgain(at, this.#named)];
		}
		// What goes on is cheaper than the same begun anew.
		const kept = begun.flatMap(({ to }, place) =>
			this.#goesOn(at.from, to) ? (this.#optionsBy('kept')[place] ?? []) : [],
		);
		return [kept, begun, this.#all === null ? [] : this.#miss(at, this.#all)];
	}

	/** Under way, nothing is taken out of hands for a slot that stays empty, unless somebody else is to have it. */
	#miss(at: From, elsewhere: readonly Elsewhere[]): readonly Step[] {
		const { had: hand, isOver } = at;
		const nothing = { to: emptied(at), isMissing: true, elsewhere };
		const isLeft = !isEmptied(hand) && !isOver && this.#seating.outlook.isLive;
		if (!isLeft) return [this.#step(nothing)];
		return [
			this.#step({ ...nothing, givenUp: this.#seat.instrumentOf[hand] as number }),
			// Merely left in hands, it is there for whoever is named it.
			this.#step({ ...nothing, to: hand }),
		];
	}

	#goesOn(from: number, to: number): boolean {
		const { instrumentOf, tuningOf, hands, isStartBroken, start } = this.#seat;
		return (
			instrumentOf[from] === instrumentOf[to] &&
			tuningOf[from] === tuningOf[to] &&
			!(isStartBroken && from === start) &&
			(hands[from]?.capo === hands[to]?.capo ||
				this.#seating.hasTimeForCapo[this.#section] === true)
		);
	}

	#step(one: NewStep): Step {
		const { to, beginning = 'kept', isFirm = false, isMissing = false, givenUp = -1 } = one;
		const { elsewhere = [] } = one;
		const { told } = this.#slot;
		const { gapSeconds, handOverSeconds } = this.#seating;
		const instrument = this.#seat.instrumentOf[to] as number;
		const begins = beginning !== 'kept';
		const seconds = begins ? (handOverSeconds[instrument] as number) : 0;
		const now = to === FRESH || isMissing ? EMPTY : to;
		const counts = noCounts();
		counts[MISSING] = isMissing ? 1 : 0;
		counts[SUBSTITUTED] = one.isSubstituted ? 1 : 0;
		counts[OVER_GAP] = seconds > (gapSeconds[this.#section] as number) ? 1 : 0;
		counts[CHANGED] = told !== UNTOLD && told !== now ? 1 : 0;
		counts[BACKUP] = begins ? (one.backup ?? 0) : 0;
		counts[HAND_OVERS] = beginning === 'given' ? 1 : 0;
		counts[PREFERENCE] = one.preference ?? 0;
		const tuning = this.#seat.tuningOf[to] as number;
		const isTuned = begins && this.#seating.countedFor[instrument] === this.#index;
		const step = {
			to,
			instrument,
			tuning,
			isTuned,
			begins,
			seconds,
			isFirm,
			elsewhere,
			givenUp,
			counts,
			cost: 0,
		};
		this.all.push(step);
		return step;
	}
}

function isEmptied(hand: number): boolean {
	return hand === FRESH || hand === EMPTY;
}

function emptied({ from }: From): number {
	return from === FRESH ? FRESH : EMPTY;
}
