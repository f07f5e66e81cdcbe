// The best choice for some of the players together, were there no others and no clock: each is looked at
// alone first, roughly, then closely, then at prices for what they share; what each look says of their
// rests keeps the ways few that have to be gone together.

import { aloneIn } from './alone-in.ts';
import type { Board, Budget } from './board.ts';
import type { Alone } from './choose-alone.ts';
import { chooseAlone } from './choose-alone.ts';
import type { Counts } from './criteria.ts';
import { packed, RETUNINGS, unpacked } from './criteria.ts';
import { searchGroup } from './group-search.ts';
import { groupSetting } from './group-setting.ts';
import type { GroupAsked } from './group-steps.ts';
import type { HubWays } from './hub-ways.ts';
import { hubWays } from './hub-ways.ts';
import { narrowedWays } from './narrowed-ways.ts';
import type { Taken } from './pricing.ts';
import { pricing } from './pricing.ts';
import { surelyLater } from './surely-together.ts';

/** The choice for some seats. */
export type Together = {
	/** For each of these seats, the hand in each section. */
	readonly hands: readonly Int16Array[];
	readonly counts: Counts;
	/** Nothing better than this is possible for them; the counts themselves where nothing was left out. */
	readonly bound: Counts;
	/** Whether every count was compared; in a show beyond all measure the last ones are not. */
	readonly isWhole: boolean;
};

export type ChooseHow = {
	readonly budget: Budget;
	/** What it is known to come to at least; found, it is not looked for anything better. */
	readonly floor?: Counts;
};

/** How many ways are gone on from in each section: few first, whose result rules most others out. Roughly, until there is one. */
const ROUGHLY = [3, 30, 400, 6000];
const CLOSELY = [3, 30];
const AT_PRICES = [30];
const AT_LAST = [400, 6000];
/** With no more steps than these, one player is looked at closely at once. */
const FEW_STEPS = 800;
/** So often prices are bettered before many ways are gone. */
const TURNS = 5;

/**
 * The best choice for these seats, or the best found with what may be looked at; null where there is
 * none. What somebody else would do with an instrument does not count, nor do hand-overs to them.
 *
 * @example
 * chooseTogether(board, [0], { budget: { left: 10000 } }).counts // => [0, 0, 0, 2, 0, 0, 0]
 */
export function chooseTogether(
	board: Board,
	seats: readonly number[],
	{ budget, floor }: ChooseHow,
): Together | null {
	const setting = groupSetting(board, seats);
	const { weights } = setting;
	const alone = aloneIn(board, seats, { setting, budget });
	if (alone === null) return null;
	const later = surelyLater(board, seats, weights);
	const looking = new Looking(board, { members: seats, setting, later, budget });
	if (floor !== undefined) looking.bound = packed(floor, weights);
	looking.lookThrough(alone);
	const { hands, cost, bound } = looking;
	if (hands === null) return null;
	return {
		hands,
		counts: unpacked(cost, weights),
		bound: unpacked(Math.min(bound, cost), weights),
		isWhole: weights.isWhole,
	};
}

type LookingAsked = Omit<GroupAsked, 'alone' | 'shared'>;

/** What is known of the best choice, more with each look. */
class Looking {
	/** The best found, and what it comes to. */
	hands: readonly Int16Array[] | null = null;
	cost = Number.POSITIVE_INFINITY;
	/** Nothing comes to less. */
	bound = 0;
	readonly #board: Board;
	readonly #asked: LookingAsked;

	constructor(board: Board, asked: LookingAsked) {
		this.#board = board;
		this.#asked = asked;
	}

	/** One look after the other until the best is found or nothing more may be looked at. */
	lookThrough(alone: readonly Alone[]): void {
		const [only] = alone;
		if (alone.length === 1 && only !== undefined && only.hubWays.costs.length <= FEW_STEPS) {
			const one = this.#withTunings(only.hubWays, Number.POSITIVE_INFINITY);
			if (one !== null) this.#take(one);
			return;
		}
		const [sure = 0] = this.#asked.later;
		const roughly = alone.reduce((sum, one) => sum + one.bound, sure);
		for (const width of ROUGHLY) {
			if (this.hands === null) this.#goTogether({ alone, shared: null, bound: roughly }, [width]);
		}
		if (this.hands === null || this.#isOver()) return;
		const closely = this.#closely(alone, roughly);
		this.#goTogether(closely, CLOSELY);
		if (closely === null || this.#isOver()) return;
		const atPrices = this.#atPrices(closely);
		if (!this.#isOver()) this.#goTogether(atPrices, AT_LAST);
	}

	#isOver(): boolean {
		return this.bound >= this.cost || this.#asked.budget.left <= 0;
	}

	/** Each alone with all tunings, on ways that may come to less than the best known; null where somebody has none. */
	#closely(roughly: readonly Alone[], bound: number): Taken | null {
		const alone: Alone[] = [];
		for (const rough of roughly) {
			const limit = rough.bound + this.cost - bound;
			const narrowed = narrowedWays(rough, limit, this.#asked.budget);
			if (narrowed === null) return null;
			const one = this.#withTunings(hubWays(narrowed.ways, narrowed.ways.aloneCost), limit);
			if (one === null) return null;
			alone.push(one);
		}
		return { alone, shared: null, bound };
	}

	#withTunings(hub: HubWays, limit: number): Alone | null {
		const { setting, budget } = this.#asked;
		const retuning = setting.weights.of[RETUNINGS] ?? 0;
		const prices = new Float64Array(hub.order.length);
		return chooseAlone({ hubWays: hub, prices, retuning, limit, isRough: false, budget });
	}

	/** What one player takes alone is the best for them. */
	#take(one: Alone): void {
		const { handOf } = one.hubWays.ways;
		this.hands = [Int16Array.from(one.path(), (place) => handOf[place] ?? 0)];
		this.cost = one.cost;
		this.bound = one.bound;
	}

	/** All at the best prices that some turns find; null where nothing comes to less than the best known. */
	#atPrices(closely: Taken): Taken | null {
		const ways = closely.alone.map(({ hubWays: hub }) => hub.ways);
		const rounds = pricing(this.#board, { ...this.#asked, ways });
		let taken: Taken | null = closely;
		for (let turn = 0; rounds !== null && turn < TURNS && !this.#isOver(); turn += 1) {
			taken = rounds.turn(this.cost);
			this.#goTogether(taken, AT_PRICES);
			if (rounds.isSettled) break;
		}
		return taken;
	}

	/** Goes together what they may go at the least that each alone comes to; with nobody taken there is nothing better. */
	#goTogether(taken: Taken | null, widths: readonly number[]): void {
		if (taken === null) {
			this.bound = this.cost;
			return;
		}
		const { alone, shared, bound } = taken;
		const least = Math.max(this.bound, Math.min(this.cost, bound));
		const aim = { upper: this.cost, least, widths };
		const found = searchGroup(this.#board, { ...this.#asked, alone, shared }, aim);
		this.bound = Math.max(this.bound, found.bound);
		if (found.hands === null) return;
		this.hands = found.hands;
		this.cost = found.cost;
	}
}
