// Prices of what several players share, raised where more than one want it and lowered where nobody does,
// over and over. Each round says what all of them come to at least, and which ways are still worth going.

import type { Board } from './board.ts';
import type { Alone } from './choose-alone.ts';
import { chooseAlone } from './choose-alone.ts';
import { MISSING, RETUNINGS } from './criteria.ts';
import type { GroupAsked } from './group-steps.ts';
import type { HubWays } from './hub-ways.ts';
import { hubWays } from './hub-ways.ts';
import { narrowedWays } from './narrowed-ways.ts';
import type { Prices } from './prices.ts';
import { cellsOf, noPrices } from './prices.ts';
import type { SeatWays } from './seat-ways.ts';
import type { Seat } from './seats.ts';
import type { Paying, SharedRests } from './shared-rests.ts';
import { sharedRests } from './shared-rests.ts';

/** Players taken alone, at what prices, and what they come to at least together. */
export type Taken = {
	readonly alone: readonly Alone[];
	/** What the instruments' own ways cost at these prices; null without prices. */
	readonly shared: SharedRests | null;
	readonly bound: number;
};

export type Pricing = Rounds;

type PricingAsked = Omit<GroupAsked, 'alone' | 'shared'> & { readonly ways: readonly SeatWays[] };

/**
 * The pricing of what these players share; null where one instrument is named for two at once, as then
 * no price is high enough.
 *
 * @example
 * pricing(board, { members: [], setting: groupSetting(board, []), later: new Float64Array(4), ways: [], budget: { left: 9 } }).turn(1).bound // => 0
 */
export function pricing(board: Board, asked: PricingAsked): Pricing | null {
	const [sure = 0] = asked.later;
	const isNamedTwice = sure > 0 && sure >= (asked.setting.weights.of[MISSING] ?? 0);
	return isNamedTwice ? null : new Rounds(board, asked, sure);
}

/** Rounds in one turn; after so many of them ways are left out, after so many without a gain smaller steps taken. */
const ROUNDS = 8;
const NARROWED_AFTER = 4;
const PATIENCE = 5;
/** What a round takes beside its choosing, in ways looked at. */
const ROUND = 1000;
/** How much of the way that prices went before they go on. */
const GOING_ON = 0.5;

/** One player's ways in a round. */
type Member = {
	readonly hub: HubWays;
	/** For each place where among the prices its own stands. */
	readonly cells: Int32Array;
	/** Ways that come to as much were not worth telling apart in the round before. */
	readonly limit: number;
};

class Rounds {
	/** Nobody wants what somebody else has: more rounds say no more. */
	isSettled = false;
	readonly #asked: PricingAsked;
	readonly #seats: readonly Seat[];
	readonly #retuning: number;
	/** What all come to beyond what each does alone, whatever the prices. */
	readonly #sure: number;
	#members: readonly Member[];
	#prices: Prices;
	readonly #direction: Float64Array;
	#best: Taken | null = null;
	#step = 1;
	#rounds = 0;
	#withoutGain = 0;

	constructor(board: Board, asked: PricingAsked, sure: number) {
		const { members, setting, ways } = asked;
		this.#asked = asked;
		this.#seats = members.map((seat) => board.seating.seats[seat] as Seat);
		this.#retuning = setting.weights.of[RETUNINGS] ?? 0;
		this.#sure = sure;
		this.#prices = noPrices(board, members, setting);
		this.#direction = new Float64Array(this.#prices.of.length);
		this.#members = ways.map((one, index) => this.#member(index, hubWays(one, one.cost)));
	}

	/** Some rounds, as far as the budget goes; the best so far, or null where nothing comes to less than `upper`. */
	turn(upper: number): Taken | null {
		for (let round = 0; round < ROUNDS && !this.isSettled; round += 1) {
			if (this.#best !== null && this.#asked.budget.left <= 0) break;
			this.#asked.budget.left -= ROUND;
			const taken = this.#taken();
			if (taken === null || taken.bound >= upper) return null;
			this.#note(taken);
			this.#raise(taken, upper);
			if (!this.#narrow(taken, upper)) return null;
			this.#rounds += 1;
		}
		return this.#best;
	}

	#member(index: number, hub: HubWays, limit = Number.POSITIVE_INFINITY): Member {
		return { hub, cells: cellsOf(this.#seats[index] as Seat, hub.ways, this.#prices), limit };
	}

	/** All taken alone at the prices as they are; null where somebody has no way left. */
	#taken(): Taken | null {
		const alone: Alone[] = [];
		for (const { hub, cells, limit } of this.#members) {
			const prices = new Float64Array(hub.order.length);
			cells.forEach((cell, place) => {
				if (cell >= 0) prices[place] = this.#prices.of[cell] ?? 0;
			});
			const { budget } = this.#asked;
			const asked = { hubWays: hub, prices, retuning: this.#retuning, isRough: false, budget };
			// The limit is only as good as the prices before: where it leaves nothing, none is set.
			const one =
				chooseAlone({ ...asked, limit }) ??
				chooseAlone({ ...asked, limit: Number.POSITIVE_INFINITY });
			if (one === null) return null;
			alone.push(one);
		}
		const paying = this.#members.map(({ hub, cells }): Paying => ({ ways: hub.ways, cells }));
		const shared = sharedRests({ prices: this.#prices, paying, retuning: this.#retuning });
		const bound = alone.reduce((sum, one) => sum + one.bound, this.#sure + shared.cost);
		return { alone, shared, bound };
	}

	#note(taken: Taken): void {
		if (this.#best === null || taken.bound > this.#best.bound) {
			this.#best = taken;
			this.#withoutGain = 0;
			return;
		}
		this.#withoutGain += 1;
		if (this.#withoutGain < PATIENCE) return;
		this.#step /= 2;
		this.#withoutGain = 0;
	}

	/** The next prices, so far from these as the bound is from `upper`: by how many want each more or fewer than one. */
	#raise({ alone, shared, bound }: Taken, upper: number): void {
		const { of } = this.#prices;
		const wanted = new Float64Array(of.length);
		shared?.takeFrom(wanted);
		alone.forEach((one, index) => {
			for (const place of one.path()) {
				const cell = this.#members[index]?.cells[place] ?? -1;
				if (cell >= 0) wanted[cell] = (wanted[cell] ?? 0) + 1;
			}
		});
		let length = 0;
		for (let cell = 0; cell < of.length; cell += 1) {
			const to = (wanted[cell] ?? 0) + GOING_ON * (this.#direction[cell] ?? 0);
			this.#direction[cell] = to < 0 && of[cell] === 0 ? 0 : to;
			length += (this.#direction[cell] ?? 0) ** 2;
		}
		if (length === 0) {
			this.isSettled = true;
			return;
		}
		const step = (this.#step * (upper - bound)) / length;
		this.#prices = {
			...this.#prices,
			of: of.map((price, cell) =>
				Math.max(0, Math.round(price + step * (this.#direction[cell] ?? 0))),
			),
		};
	}

	/** Leaves out what leads to `upper` or more; false where nothing is left. */
	#narrow({ alone, bound }: Taken, upper: number): boolean {
		const isDue = this.#rounds % NARROWED_AFTER === 0;
		const members: Member[] = [];
		for (const [index, one] of alone.entries()) {
			const limit = one.bound + upper - bound;
			const rather = limit + this.#retuning;
			const narrowed = isDue ? narrowedWays(one, limit, this.#asked.budget) : null;
			if (isDue && narrowed === null) return false;
			const before = this.#members[index] as Member;
			members.push(
				narrowed === null
					? { ...before, limit: rather }
					: this.#member(index, hubWays(narrowed.ways, narrowed.ways.cost, narrowed.more), rather),
			);
		}
		this.#members = members;
		return true;
	}
}
