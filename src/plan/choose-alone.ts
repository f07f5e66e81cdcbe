// The best for one player, were there nobody else and no clock, from wherever they may come to: what they
// would choose, and for searching on with others what their rest costs at least.

import type { Board, Budget } from './board.ts';
import type { Weights } from './criteria.ts';
import { OVER_GAP, RETUNINGS } from './criteria.ts';
import type { LabelPool } from './label-pool.ts';
import { labelPool } from './label-pool.ts';
import type { Seat } from './seats.ts';
import { EMPTY } from './seats.ts';
import type { Steps } from './steps.ts';
import { BEGINS } from './steps.ts';

export type AloneAsked = {
	readonly board: Board;
	readonly seat: number;
	readonly weights: Weights;
	/** What each step costs by itself, packed. */
	readonly stepCosts: Float64Array;
	/** Whether nobody else can change an instrument's tuning. */
	readonly isFollowed: (instrument: number) => boolean;
	readonly budget: Budget;
};

/** Ways that are gone on from in each section at the most; in a show made by people there are a few. */
const WIDTH = 4000;

/**
 * The choosing of one seat, all of it done; null where there is no way through.
 *
 * @example
 * chooseAlone(aloneAsked).cost // => 0
 */
export function chooseAlone(asked: AloneAsked): Alone | null {
	const alone = new OneSeat(asked);
	return alone.cost === Number.POSITIVE_INFINITY ? null : alone;
}

export type Alone = OneSeat;

class OneSeat {
	/** The least packed cost; infinite where there is no way through. */
	readonly cost: number;
	/** The least that could be, where too many ways had to be left. */
	readonly bound: number;
	/** For each instrument its number among those that are this player's alone and change their tuning, or -1. */
	readonly followed: Int16Array;
	readonly #board: Board;
	readonly #seat: Seat;
	readonly #steps: Steps;
	readonly #possible: Uint8Array;
	readonly #stepCosts: Float64Array;
	readonly #overGap: number;
	readonly #retuning: number;
	readonly #lastUse: Int32Array;
	readonly #pool: LabelPool;
	readonly #hand = new Int16Array(1);
	readonly #tunings: Uint8Array;
	readonly #frontiers: number[][] = [];
	/** Labels of one section and hand, chained. */
	readonly #first: Int32Array;
	#next = new Int32Array(0);
	#rest = new Float64Array(0);

	constructor({ board, seat, weights, stepCosts, isFollowed, budget }: AloneAsked) {
		const { seating } = board;
		this.#board = board;
		this.#seat = seating.seats[seat] as Seat;
		this.#steps = board.steps[seat] as Steps;
		this.#possible = board.possible[seat] ?? new Uint8Array();
		this.#stepCosts = stepCosts;
		this.#overGap = weights.of[OVER_GAP] ?? 0;
		this.#retuning = weights.of[RETUNINGS] ?? 0;
		let count = 0;
		const mine = new Uint8Array(seating.instrumentCount);
		for (const instrument of this.#seat.instrumentOf) if (instrument >= 0) mine[instrument] = 1;
		this.followed = Int16Array.from(mine, (is, instrument) => {
			const isAlone = is === 1 && isFollowed(instrument);
			if (!isAlone || (seating.tuningCounts[instrument] ?? 0) < 2) return -1;
			count += 1;
			return count - 1;
		});
		this.#tunings = new Uint8Array(count);
		this.#lastUse = this.#lastUses(count);
		this.#pool = labelPool(1, count, 8);
		this.#first = new Int32Array(seating.sectionCount * this.#seat.size).fill(-1);
		const leftOut = this.#goForward(budget);
		const ends = this.#frontiers.at(-1) ?? [];
		this.cost = ends.reduce(
			(least, label) => Math.min(least, this.#pool.cost[label] ?? 0),
			Number.POSITIVE_INFINITY,
		);
		this.bound = Math.min(this.cost, leftOut);
	}

	/** Whether the tunings that were followed are those that this says may be. */
	isFollowedBy(isFollowed: (instrument: number) => boolean): boolean {
		const { tuningCounts } = this.#board.seating;
		return this.#seat.instrumentOf.every((instrument) => {
			const mayBe = instrument >= 0 && (tuningCounts[instrument] ?? 0) > 1;
			return !mayBe || isFollowed(instrument) === (this.followed[instrument] ?? -1) >= 0;
		});
	}

	/** The hand in each section, of the first among the best ways. */
	path(): Int16Array {
		const { sectionCount } = this.#board.seating;
		const hands = new Int16Array(sectionCount);
		let label =
			(this.#frontiers.at(-1) ?? []).find((one) => this.#pool.cost[one] === this.cost) ?? 0;
		for (let section = sectionCount - 1; section >= 0; section -= 1) {
			hands[section] = this.#pool.hands[label] ?? 0;
			label = this.#pool.parent[label] ?? 0;
		}
		return hands;
	}

	/**
	 * The least that all after this section costs from this hand, `tunings` being those of the followed
	 * instruments. Two ways with equal hands differ by one re-tuning for each tuning at the most.
	 */
	restAfter(section: number, hand: number, tunings: Uint8Array): number {
		if (this.#rest.length === 0) this.#goBack();
		if (section < 0) return this.#rest[0] ?? 0;
		let rest = 0;
		let label = this.#first[section * this.#seat.size + hand] ?? -1;
		for (; label >= 0; label = this.#next[label] ?? -1) {
			let apart = 0;
			const from = label * tunings.length;
			for (let one = 0; one < tunings.length; one += 1) {
				const now = (this.#lastUse[one] ?? 0) <= section ? 0 : tunings[one];
				if (this.#pool.tuningOf[from + one] !== now) apart += this.#retuning;
			}
			rest = Math.max(rest, (this.#rest[label] ?? 0) - apart);
		}
		return rest;
	}

	#lastUses(count: number): Int32Array {
		const { size, instrumentOf } = this.#seat;
		const last = new Int32Array(count).fill(-1);
		this.#possible.forEach((is, at) => {
			const followed = this.followed[instrumentOf[at % size] ?? -1] ?? -1;
			if (is === 1 && followed >= 0) last[followed] = Math.floor(at / size);
		});
		return last;
	}

	#goForward(budget: Budget): number {
		const pool = this.#pool;
		const { sectionCount } = this.#board.seating;
		let leftOut = Number.POSITIVE_INFINITY;
		this.#hand[0] = this.#seat.start;
		pool.clear();
		pool.add(this.#hand, this.#tunings, { cost: 0, reach: 0, parent: -1, retuningWeight: 0 });
		let frontier = pool.alive();
		this.#frontiers.push(frontier);
		for (let section = 0; section < sectionCount; section += 1) {
			pool.beginSection();
			for (const label of frontier) {
				this.#eachStep(section, label, (hand, cost) => {
					budget.left -= 1;
					this.#hand[0] = hand;
					pool.add(this.#hand, this.#tunings, {
						cost: (pool.cost[label] ?? 0) + cost,
						reach: 0,
						parent: label,
						retuningWeight: this.#retuning,
					});
				});
			}
			frontier = pool.alive();
			if (frontier.length > WIDTH) {
				const cost = (label: number): number => pool.cost[label] ?? 0;
				frontier.sort((one, other) => cost(one) - cost(other) || one - other);
				leftOut = Math.min(leftOut, cost(frontier[WIDTH] ?? 0));
				frontier.length = WIDTH;
			}
			this.#frontiers.push(frontier);
		}
		return leftOut;
	}

	/** Calls with each next hand and what coming to it costs; the tunings then stand in `#tunings`. */
	#eachStep(section: number, label: number, visit: (hand: number, cost: number) => void): void {
		const { seating, isSure } = this.#board;
		const { size, instrumentOf, tuningOf } = this.#seat;
		const row = section * size;
		const before = this.#pool.hands[label] ?? EMPTY;
		const gap = seating.gapSeconds[section] ?? 0;
		const count = this.#tunings.length;
		const end = this.#steps.first[row + before + 1] ?? 0;
		for (let step = this.#steps.first[row + before] ?? 0; step < end; step += 1) {
			const hand: number = this.#steps.to[step] ?? EMPTY;
			if (this.#possible[row + hand] === 0) continue;
			let cost = this.#stepCosts[step] ?? 0;
			for (let one = 0; one < count; one += 1) {
				this.#tunings[one] = this.#pool.tuningOf[label * count + one] ?? 0;
			}
			if (((this.#steps.flags[step] ?? 0) & BEGINS) !== 0) {
				const instrument = instrumentOf[hand] ?? 0;
				const tuning = tuningOf[hand] ?? 0;
				if ((seating.handOverSeconds[instrument] ?? 0) > gap) cost += this.#overGap;
				const followed = this.followed[instrument] ?? -1;
				if (followed >= 0) {
					if (this.#tunings[followed] !== tuning) cost += this.#retuning;
					this.#tunings[followed] = tuning;
				} else if (
					isRetuned(this.#seat, { before, hand }, () => isSure(section, instrument, tuning))
				) {
					cost += this.#retuning;
				}
			}
			for (let one = 0; one < count; one += 1) {
				if ((this.#lastUse[one] ?? 0) <= section) this.#tunings[one] = 0;
			}
			visit(hand, cost);
		}
	}

	/** From the end back: what each label's rest costs at least. */
	#goBack(): void {
		const { size } = this.#seat;
		this.#rest = new Float64Array(this.#pool.count);
		this.#next = new Int32Array(this.#pool.count).fill(-1);
		for (let section = this.#frontiers.length - 2; section >= -1; section -= 1) {
			for (const label of this.#frontiers[section + 1] ?? []) {
				let least = section + 1 === this.#frontiers.length - 1 ? 0 : Number.POSITIVE_INFINITY;
				if (least > 0) {
					this.#eachStep(section + 1, label, (hand, cost) => {
						least = Math.min(least, cost + this.restAfter(section + 1, hand, this.#tunings));
					});
				}
				this.#rest[label] = least;
				if (section < 0) continue;
				const at = section * size + (this.#pool.hands[label] ?? 0);
				this.#next[label] = this.#first[at] ?? -1;
				this.#first[at] = label;
			}
		}
	}
}

/**
 * Whether a stint begins in another tuning than the instrument was in, where its tuning is not followed:
 * it was in the same hands in another, or `isSure`.
 *
 * @example
 * isRetuned(seating.seats[0], { before: 0, hand: 2 }, () => false) // => false
 */
export function isRetuned(
	{ instrumentOf, tuningOf }: Seat,
	{ before, hand }: { readonly before: number; readonly hand: number },
	isSure: () => boolean,
): boolean {
	return instrumentOf[before] === instrumentOf[hand]
		? tuningOf[before] !== tuningOf[hand]
		: isSure();
}
