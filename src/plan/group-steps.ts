// From one way to all those that some players together may take through the next section: who takes what,
// what that costs them together, and what their rests cost at the least.

import type { Board, Budget } from './board.ts';
import type { Alone } from './choose-alone.ts';
import { isRetuned } from './choose-alone.ts';
import { OVER_GAP, RETUNINGS } from './criteria.ts';
import type { CutOff } from './cut-off.ts';
import { cutOff } from './cut-off.ts';
import { countOverGap } from './fit.ts';
import type { GroupSetting } from './group-setting.ts';
import type { LabelPool } from './label-pool.ts';
import type { Seat } from './seats.ts';
import { BEGINS, IS_MISSING } from './steps.ts';
import { surelyLater } from './surely-together.ts';

export type GroupAsked = {
	readonly members: readonly number[];
	readonly setting: GroupSetting;
	/** Each of them taken alone. */
	readonly alone: readonly Alone[];
	readonly budget: Budget;
};

export type GroupSteps = Steps;

/**
 * The steps of these members on this board; `goOnFrom` puts what it finds in the setting's pool.
 *
 * @example
 * groupSteps(board, { members: [], setting: groupSetting(board, []), alone: [], budget: { left: 9 } }).section // => 0
 */
export function groupSteps(board: Board, asked: GroupAsked): GroupSteps {
	return new Steps(board, asked);
}

class Steps {
	/** The section that is gone into. */
	section = 0;
	readonly #board: Board;
	readonly #members: readonly number[];
	readonly #setting: GroupSetting;
	readonly #alone: readonly Alone[];
	readonly #budget: Budget;
	readonly #pool: LabelPool;
	readonly #overGap: number;
	readonly #retuning: number;
	readonly #later: Float64Array;
	readonly #lastUse: Int32Array;
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
	#limits: CutOff = cutOff(Number.POSITIVE_INFINITY);

	constructor(board: Board, { members, setting, alone, budget }: GroupAsked) {
		this.#board = board;
		this.#members = members;
		this.#setting = setting;
		this.#alone = alone;
		this.#budget = budget;
		this.#pool = setting.pool;
		this.#overGap = setting.weights.of[OVER_GAP] ?? 0;
		this.#retuning = setting.weights.of[RETUNINGS] ?? 0;
		this.#later = surelyLater(board, members, setting.weights);
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

	/** The first way: all have what they have now. */
	begin(): void {
		this.section = 0;
		this.#members.forEach((member, index) => {
			this.#hands[index] = this.#board.seating.seats[member]?.start ?? 0;
		});
		this.#tunings.fill(0);
		const nothing = { cost: 0, reach: 0, parent: -1, retuningWeight: 0 };
		this.#pool.add(this.#hands, this.#tunings, nothing);
	}

	/** Every way through the section from this one that the cut-off lets pass. */
	goOnFrom(label: number, limits: CutOff): void {
		this.#limits = limits;
		const count = this.#members.length;
		const followedCount = this.#tunings.length;
		this.#label = label;
		for (let one = 0; one < followedCount; one += 1) {
			this.#tunings[one] = this.#pool.tuningOf[label * followedCount + one] ?? 0;
		}
		for (let index = count - 1; index > 0; index -= 1) {
			const hand = this.#pool.hands[label * count + index] ?? 0;
			this.#othersLeast[index - 1] =
				(this.#othersLeast[index] ?? 0) + this.#restOf(index, this.section - 1, hand);
		}
		const cost = this.#pool.cost[label] ?? 0;
		this.#extend(0, cost, this.#later[this.section + 1] ?? 0);
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
		const row = this.section * seat.size;
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
			if ((flags & BEGINS) !== 0 && this.#begins(seat, before, hand)) sum += this.#retuning;
			const restNow = rest + this.#restOf(index, this.section, hand);
			if (this.#limits.letsPass(sum + restNow + (this.#othersLeast[index] ?? 0))) {
				this.#hands[index] = hand;
				this.#chosenFlags[index] = flags;
				if (instrument >= 0) this.#isTaken[instrument] = 1;
				this.#extend(index + 1, sum, restNow);
				if (instrument >= 0) this.#isTaken[instrument] = 0;
			}
			if (followed >= 0) this.#tunings[followed] = tuningBefore;
		}
	}

	/** Notes the tuning that a stint begins in; whether the instrument was in another before. */
	#begins(seat: Seat, before: number, hand: number): boolean {
		const { seating, isSure } = this.#board;
		const instrument = seat.instrumentOf[hand] ?? 0;
		const tuning = seat.tuningOf[hand] ?? 0;
		const followed = this.#setting.followed[instrument] ?? -1;
		if (followed < 0) {
			if ((seating.tuningCounts[instrument] ?? 0) < 2) return false;
			return isRetuned(seat, { before, hand }, () => isSure(this.section, instrument, tuning));
		}
		const isOther = this.#tunings[followed] !== tuning;
		this.#tunings[followed] = tuning;
		return isOther;
	}

	/** All have chosen for this section: what that costs together. */
	#close(cost: number, rest: number): void {
		const { seating } = this.#board;
		const gap = seating.gapSeconds[this.section] ?? 0;
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
		const sum = cost + over * this.#overGap;
		if (!this.#limits.letsPass(sum + rest)) return;
		this.#limits.note(sum + rest);
		for (let one = 0; one < this.#tunings.length; one += 1) {
			const isOver = (this.#lastUse[one] ?? 0) <= this.section;
			this.#keptTunings[one] = isOver ? 0 : (this.#tunings[one] ?? 0);
		}
		this.#pool.add(this.#hands, this.#keptTunings, {
			cost: sum,
			reach: sum + rest,
			parent: this.#label,
			retuningWeight: this.#retuning,
		});
	}

	/** Whether everything that would do is in other hands, or may be in those of somebody not here. */
	#isRightlyMissing(index: number): boolean {
		const { seating } = this.#board;
		const seat = seating.seats[this.#members[index] ?? 0];
		if (seat === undefined) return true;
		const before = this.#pool.hands[this.#label * this.#members.length + index] ?? 0;
		const broken = seat.wholeOf[before] === before ? -1 : (seat.instrumentOf[before] ?? -1);
		const row = this.section * seating.instrumentCount;
		const held = seat.instrumentOf[this.#hands[index] ?? 0] ?? -1;
		for (const option of seat.optionHands[this.section] ?? []) {
			const instrument = seat.instrumentOf[option] ?? -1;
			const isTheirs = this.#isTaken[instrument] === 1 && instrument !== held;
			if (isTheirs || instrument === broken) continue;
			if ((this.#setting.outsiders[row + instrument] ?? 0) === 0) return false;
		}
		return true;
	}
}
