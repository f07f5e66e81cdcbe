// The best choice for some of the players together, were there no others and no clock: section by
// section, every way that may still turn out best, with what each player's rest can cost at least.

import type { Board, Budget } from './board.ts';
import type { Alone } from './choose-alone.ts';
import { chooseAlone, isRetuned } from './choose-alone.ts';
import type { Counts, Weights } from './criteria.ts';
import { MISSING, OVER_GAP, packed, RETUNINGS, unpacked } from './criteria.ts';
import { countOverGap } from './fit.ts';
import type { GroupSetting } from './group-setting.ts';
import { groupSetting } from './group-setting.ts';
import type { LabelPool } from './label-pool.ts';
import type { Seat } from './seats.ts';
import { EMPTY } from './seats.ts';
import { BEGINS, IS_MISSING } from './steps.ts';
import { surelyTogether } from './surely-together.ts';

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

/** How many ways are gone on from in each section: few first, whose result rules most others out. */
const WIDTHS = [3, 30, 400, 6000];
/** Up to this width, ways beyond the best so many are not even noted. */
const FEW = 30;

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
	const alone: Alone[] = [];
	for (const [index, seat] of seats.entries()) {
		const stepCosts = setting.stepCosts[index] as Float64Array;
		const one = chooseAlone({ board, seat, weights, stepCosts, budget });
		if (one === null) return null;
		alone.push(one);
	}
	const [only] = alone;
	if (only !== undefined && alone.length === 1) {
		return {
			hands: [only.path()],
			counts: unpacked(only.cost, weights),
			bound: unpacked(only.bound, weights),
			isWhole: weights.isWhole,
		};
	}
	const least = floor === undefined ? 0 : packed(floor, weights);
	return new Search(board, { members: seats, setting, alone, budget }).best(least);
}

type Asked = {
	readonly members: readonly number[];
	readonly setting: GroupSetting;
	/** Each of them taken alone. */
	readonly alone: readonly Alone[];
	readonly budget: Budget;
};

class Search {
	readonly #board: Board;
	readonly #members: readonly number[];
	readonly #setting: GroupSetting;
	readonly #alone: readonly Alone[];
	readonly #budget: Budget;
	readonly #weights: Weights;
	readonly #later: Float64Array;
	readonly #lastUse: Int32Array;
	readonly #pool: LabelPool;
	readonly #isTaken: Uint8Array;
	readonly #hands: Int16Array;
	readonly #chosenFlags: Uint8Array;
	/** Of the followed instruments as the choosing of a section goes, and as they are kept after it. */
	readonly #tunings: Uint8Array;
	readonly #keptTunings: Uint8Array;
	/** For each member, the followed instruments that are theirs alone, in their own order. */
	readonly #ownNumbers: readonly (readonly number[])[];
	readonly #ownTunings: readonly Uint8Array[];
	/** For each member, what those after them must cost at least from where they are. */
	readonly #othersLeast: Float64Array;
	readonly #seconds: number[] = [];
	#label = 0;
	#section = 0;
	#upper = Number.POSITIVE_INFINITY;
	/** The best that the ways of this section come to so far, rising, where few are gone on from. */
	#near = new Float64Array();
	#leftOut = Number.POSITIVE_INFINITY;

	constructor(board: Board, { members, setting, alone, budget }: Asked) {
		this.#board = board;
		this.#members = members;
		this.#setting = setting;
		this.#alone = alone;
		this.#budget = budget;
		this.#weights = setting.weights;
		this.#pool = setting.pool;
		this.#later = this.#surelyLater();
		this.#lastUse = this.#lastUses(setting.followedCount);
		this.#isTaken = new Uint8Array(board.seating.instrumentCount);
		this.#hands = new Int16Array(members.length);
		this.#chosenFlags = new Uint8Array(members.length);
		this.#tunings = new Uint8Array(setting.followedCount);
		this.#keptTunings = new Uint8Array(setting.followedCount);
		this.#ownNumbers = alone.map(({ followed }) => {
			const numbers: number[] = [];
			followed.forEach((own, instrument) => {
				if (own >= 0) numbers[own] = setting.followed[instrument] ?? 0;
			});
			return numbers;
		});
		this.#ownTunings = this.#ownNumbers.map(({ length }) => new Uint8Array(length));
		this.#othersLeast = new Float64Array(members.length + 1);
	}

	/** For each section, what it and those after it surely cost beyond what each costs alone. */
	#surelyLater(): Float64Array {
		const { sectionCount } = this.#board.seating;
		const later = new Float64Array(sectionCount + 1);
		const { of } = this.#weights;
		const sure = surelyTogether(this.#board, this.#members);
		for (let section = sectionCount - 1; section >= 0; section -= 1) {
			later[section] =
				(later[section + 1] ?? 0) +
				(sure.overGap[section] ?? 0) * (of[OVER_GAP] ?? 0) +
				(sure.missing[section] ?? 0) * (of[MISSING] ?? 0);
		}
		return later;
	}

	best(least: number): Together | null {
		let hands: readonly Int16Array[] | null = null;
		let bound = least;
		for (const width of WIDTHS) {
			this.#leftOut = Number.POSITIVE_INFINITY;
			const label = this.#run(width);
			if (label >= 0) {
				this.#upper = this.#pool.cost[label] ?? 0;
				hands = this.#pathTo(label);
			}
			bound = Math.max(bound, Math.min(this.#leftOut, this.#upper));
			if (bound >= this.#upper || this.#budget.left <= 0) break;
		}
		if (hands === null) return null;
		return {
			hands,
			counts: unpacked(this.#upper, this.#weights),
			bound: unpacked(bound, this.#weights),
			isWhole: this.#weights.isWhole,
		};
	}

	#shared(): readonly [number, number] {
		const { of } = this.#weights;
		return [of[OVER_GAP] ?? 0, of[RETUNINGS] ?? 0];
	}

	#lastUses(count: number): Int32Array {
		const { seating, possible } = this.#board;
		const last = new Int32Array(count).fill(-1);
		for (const member of this.#members) {
			const seat = seating.seats[member];
			if (seat === undefined) continue;
			possible[member]?.forEach((is, at) => {
				const followed = this.#setting.followed[seat.instrumentOf[at % seat.size] ?? -1] ?? -1;
				if (is === 1 && followed >= 0) {
					last[followed] = Math.max(last[followed] ?? -1, Math.floor(at / seat.size));
				}
			});
		}
		return last;
	}

	/** Goes through all sections; the best label of the last one, or -1 where nothing gets there. */
	#run(width: number): number {
		const { seating } = this.#board;
		const pool = this.#pool;
		pool.clear();
		this.#members.forEach((member, index) => {
			this.#hands[index] = seating.seats[member]?.start ?? EMPTY;
		});
		this.#tunings.fill(0);
		pool.add(this.#hands, this.#tunings, { cost: 0, reach: 0, parent: -1, retuningWeight: 0 });
		let frontier = pool.alive();
		for (let section = 0; section < seating.sectionCount; section += 1) {
			this.#section = section;
			pool.beginSection();
			this.#near = new Float64Array(width <= FEW ? width : 0).fill(Number.POSITIVE_INFINITY);
			for (const [place, label] of frontier.entries()) {
				if (place > 0 && this.#budget.left <= 0) {
					this.#leaveOut(label);
					break;
				}
				this.#goOnFrom(label);
			}
			frontier = this.#mostPromising(pool.alive(), width);
			if (frontier.length === 0) return -1;
		}
		return frontier.reduce((best, label) =>
			(pool.cost[label] ?? 0) < (pool.cost[best] ?? 0) ? label : best,
		);
	}

	/** So many of the labels, the most promising first. */
	#mostPromising(labels: number[], width: number): number[] {
		const reach = (label: number): number => this.#pool.reach[label] ?? 0;
		labels.sort((one, other) => reach(one) - reach(other) || one - other);
		const next = labels[width];
		if (next === undefined) return labels;
		this.#leaveOut(next);
		labels.length = width;
		return labels;
	}

	/** This label is not gone on from, nor are less promising ones. */
	#leaveOut(label: number): void {
		this.#leftOut = Math.min(this.#leftOut, this.#pool.reach[label] ?? 0);
	}

	#goOnFrom(label: number): void {
		const count = this.#members.length;
		const followedCount = this.#tunings.length;
		this.#label = label;
		for (let one = 0; one < followedCount; one += 1) {
			this.#tunings[one] = this.#pool.tuningOf[label * followedCount + one] ?? 0;
		}
		for (let index = count - 1; index > 0; index -= 1) {
			const hand = this.#pool.hands[label * count + index] ?? 0;
			this.#othersLeast[index - 1] =
				(this.#othersLeast[index] ?? 0) + this.#restOf(index, this.#section - 1, hand);
		}
		const cost = this.#pool.cost[label] ?? 0;
		this.#extend(0, cost, this.#later[this.#section + 1] ?? 0);
	}

	/** What one member's rest costs at least after this section. */
	#restOf(index: number, section: number, hand: number): number {
		const own = this.#ownTunings[index] as Uint8Array;
		const numbers = this.#ownNumbers[index] as readonly number[];
		for (let one = 0; one < own.length; one += 1) {
			own[one] = this.#tunings[numbers[one] ?? 0] ?? 0;
		}
		return this.#alone[index]?.restAfter(section, hand, own) ?? 0;
	}

	/** Every step of this member and those after; `rest` is what the rests of those before cost at least. */
	#extend(index: number, cost: number, rest: number): void {
		if (index === this.#members.length) {
			this.#close(cost, rest);
			return;
		}
		const { seating, steps, possible } = this.#board;
		const member = this.#members[index] ?? 0;
		const seat = seating.seats[member];
		const mine = steps[member];
		const open = possible[member];
		const costs = this.#setting.stepCosts[index];
		if (seat === undefined || mine === undefined || open === undefined || costs === undefined)
			return;
		const [, retuningWeight] = this.#shared();
		const row = this.#section * seat.size;
		const before = this.#pool.hands[this.#label * this.#members.length + index] ?? 0;
		const end = mine.first[row + before + 1] ?? 0;
		for (let step = mine.first[row + before] ?? 0; step < end; step += 1) {
			const hand: number = mine.to[step] ?? 0;
			if (open[row + hand] === 0) continue;
			this.#budget.left -= 1;
			const instrument = seat.instrumentOf[hand] ?? -1;
			if (instrument >= 0 && this.#isTaken[instrument] === 1) continue;
			const flags = mine.flags[step] ?? 0;
			const followed = this.#setting.followed[instrument] ?? -1;
			const tuningBefore = this.#tunings[followed] ?? 0;
			let sum = cost + (costs[step] ?? 0);
			if ((flags & BEGINS) !== 0 && this.#begins(seat, before, hand)) sum += retuningWeight;
			const restNow = rest + this.#restOf(index, this.#section, hand);
			if (this.#isWorthwhile(sum + restNow + (this.#othersLeast[index] ?? 0))) {
				this.#hands[index] = hand;
				this.#chosenFlags[index] = flags;
				if (instrument >= 0) this.#isTaken[instrument] = 1;
				this.#extend(index + 1, sum, restNow);
				if (instrument >= 0) this.#isTaken[instrument] = 0;
			}
			if (followed >= 0) this.#tunings[followed] = tuningBefore;
		}
	}

	/** Whether a way that comes to so much at best may still be gone on from. */
	#isWorthwhile(reach: number): boolean {
		if (reach >= this.#upper) return false;
		if (reach <= (this.#near.at(-1) ?? Number.POSITIVE_INFINITY)) return true;
		this.#leftOut = Math.min(this.#leftOut, reach);
		return false;
	}

	#noteReach(reach: number): void {
		const near = this.#near;
		let place = near.length - 1;
		if (reach >= (near[place] ?? Number.NEGATIVE_INFINITY)) return;
		for (; place > 0 && (near[place - 1] ?? 0) > reach; place -= 1) {
			near[place] = near[place - 1] ?? 0;
		}
		near[place] = reach;
	}

	/** Notes the tuning that a stint begins in; whether the instrument was in another before. */
	#begins(seat: Seat, before: number, hand: number): boolean {
		const { seating, isSure } = this.#board;
		const instrument = seat.instrumentOf[hand] ?? 0;
		const tuning = seat.tuningOf[hand] ?? 0;
		const followed = this.#setting.followed[instrument] ?? -1;
		if (followed < 0) {
			if ((seating.tuningCounts[instrument] ?? 0) < 2) return false;
			return isRetuned(seat, { before, hand }, () => isSure(this.#section, instrument, tuning));
		}
		const isOther = this.#tunings[followed] !== tuning;
		this.#tunings[followed] = tuning;
		return isOther;
	}

	/** All have chosen for this section: what that costs together. */
	#close(cost: number, rest: number): void {
		const { seating } = this.#board;
		const [overGapWeight, retuningWeight] = this.#shared();
		const gap = seating.gapSeconds[this.#section] ?? 0;
		this.#seconds.length = 0;
		for (let index = 0; index < this.#members.length; index += 1) {
			const flags = this.#chosenFlags[index] ?? 0;
			if ((flags & IS_MISSING) !== 0 && !this.#isRightlyMissing(index)) return;
			if ((flags & BEGINS) === 0) continue;
			const seat = seating.seats[this.#members[index] ?? 0];
			const instrument = seat?.instrumentOf[this.#hands[index] ?? 0] ?? 0;
			this.#seconds.push(seating.handOverSeconds[instrument] ?? 0);
		}
		const over = gap === Number.POSITIVE_INFINITY ? 0 : countOverGap(this.#seconds, gap);
		const sum = cost + over * overGapWeight;
		if (!this.#isWorthwhile(sum + rest)) return;
		this.#noteReach(sum + rest);
		for (let one = 0; one < this.#tunings.length; one += 1) {
			const isOver = (this.#lastUse[one] ?? 0) <= this.#section;
			this.#keptTunings[one] = isOver ? 0 : (this.#tunings[one] ?? 0);
		}
		this.#pool.add(this.#hands, this.#keptTunings, {
			cost: sum,
			reach: sum + rest,
			parent: this.#label,
			retuningWeight,
		});
	}

	/** Whether everything that would do is in other hands, or may be in those of somebody not here. */
	#isRightlyMissing(index: number): boolean {
		const { seating } = this.#board;
		const seat = seating.seats[this.#members[index] ?? 0];
		if (seat === undefined) return true;
		const before = this.#pool.hands[this.#label * this.#members.length + index] ?? 0;
		const broken = seat.wholeOf[before] === before ? -1 : (seat.instrumentOf[before] ?? -1);
		const row = this.#section * seating.instrumentCount;
		const held = seat.instrumentOf[this.#hands[index] ?? 0] ?? -1;
		for (const option of seat.optionHands[this.#section] ?? []) {
			const instrument = seat.instrumentOf[option] ?? -1;
			const isTheirs = this.#isTaken[instrument] === 1 && instrument !== held;
			if (isTheirs || instrument === broken) continue;
			if ((this.#setting.outsiders[row + instrument] ?? 0) === 0) return false;
		}
		return true;
	}

	#pathTo(label: number): readonly Int16Array[] {
		const { sectionCount } = this.#board.seating;
		const hands = this.#members.map(() => new Int16Array(sectionCount));
		let at = label;
		for (let section = sectionCount - 1; section >= 0; section -= 1) {
			hands.forEach((mine, index) => {
				mine[section] = this.#pool.hands[at * this.#members.length + index] ?? 0;
			});
			at = this.#pool.parent[at] ?? 0;
		}
		return hands;
	}
}
