// From one way to all those that some players together may take through the next section: who takes what,
// what that costs them together, and what their rests cost at the least.

import type { Board, Budget } from './board.ts';
import type { Alone } from './choose-alone.ts';
import { OVER_GAP, RETUNINGS } from './criteria.ts';
import type { CutOff } from './cut-off.ts';
import { cutOff } from './cut-off.ts';
import { countOverGap } from './fit.ts';
import type { GroupSetting } from './group-setting.ts';
import type { LabelPool } from './label-pool.ts';
import { IS_OVER } from './seat-ways.ts';
import type { Seat } from './seats.ts';
import type { SharedRests } from './shared-rests.ts';
import type { StepOptions } from './step-options.ts';
import { stepOptions } from './step-options.ts';
import { BEGINS, IS_MISSING } from './steps.ts';
import { tuningByte } from './tuning-bytes.ts';
import type { TuningLayout } from './tuning-layout.ts';
import { tuningLayout } from './tuning-layout.ts';

export type GroupAsked = {
	readonly members: readonly number[];
	readonly setting: GroupSetting;
	/** For each section, what it and those after it surely cost them beyond what each costs alone. */
	readonly later: Float64Array;
	/** Each of them taken alone. */
	readonly alone: readonly Alone[];
	/** What the shared instruments' own ways cost at the prices of that; null without prices. */
	readonly shared: SharedRests | null;
	readonly budget: Budget;
};

export type GroupSteps = Steps;

/**
 * The steps of these members on this board; `goOnFrom` puts what it finds in the setting's pool.
 *
 * @example
 * groupSteps(board, { members: [], setting: groupSetting(board, []), later: new Float64Array(4), alone: [], shared: null, budget: { left: 9 } }).section // => 0
 */
export function groupSteps(board: Board, asked: GroupAsked): GroupSteps {
	return new Steps(board, asked);
}

/** To hold a way against so many others takes as long as to look at one. */
const OTHERS = 8;

class Steps {
	/** The section that is gone into. */
	section = 0;
	readonly #board: Board;
	readonly #setting: GroupSetting;
	readonly #shared: SharedRests | null;
	readonly #budget: Budget;
	readonly #seats: readonly Seat[];
	readonly #options: readonly StepOptions[];
	readonly #pool: LabelPool;
	readonly #overGap: number;
	readonly #retuning: number;
	readonly #later: Float64Array;
	readonly #isTaken: Uint8Array;
	readonly #hands: Int16Array;
	readonly #chosenFlags: Uint8Array;
	readonly #layout: TuningLayout;
	/** As the choosing of a section goes, and as they are kept after it. */
	readonly #tunings: Int32Array;
	readonly #bytes: Uint8Array;
	readonly #keptTunings: Int32Array;
	readonly #keptBytes: Uint8Array;
	/** For each member what they and those after them add at least. */
	readonly #leastAdded: Float64Array;
	readonly #seconds: number[] = [];
	#label = 0;
	#limits: CutOff = cutOff(Number.POSITIVE_INFINITY);

	constructor(board: Board, { members, setting, later, alone, shared, budget }: GroupAsked) {
		this.#board = board;
		this.#setting = setting;
		this.#shared = shared;
		this.#budget = budget;
		this.#seats = members.map((member) => board.seating.seats[member] as Seat);
		this.#pool = setting.pool;
		this.#overGap = setting.weights.of[OVER_GAP] ?? 0;
		this.#retuning = setting.weights.of[RETUNINGS] ?? 0;
		this.#later = later;
		this.#isTaken = new Uint8Array(board.seating.instrumentCount);
		this.#hands = new Int16Array(members.length);
		this.#chosenFlags = new Uint8Array(members.length);
		this.#leastAdded = new Float64Array(members.length + 1);
		const ways = alone.map((one) => one.hubWays.ways);
		this.#layout = tuningLayout(this.#seats, ways, setting.isFollowed);
		this.#tunings = new Int32Array(this.#layout.words);
		this.#bytes = new Uint8Array(this.#tunings.buffer);
		this.#keptTunings = new Int32Array(this.#layout.words);
		this.#keptBytes = new Uint8Array(this.#keptTunings.buffer);
		this.#options = alone.map((one, index) => {
			const from = this.#layout.ownFrom[index] ?? 0;
			return stepOptions(one, { tunings: this.#tunings, from, retuning: this.#retuning });
		});
	}

	/** The first way: all have what they have now. */
	begin(): void {
		this.section = 0;
		this.#pool.clear(this.#layout.words);
		this.#seats.forEach(({ start }, index) => {
			this.#hands[index] = start;
		});
		this.#bytes.fill(tuningByte(0));
		const nothing = { cost: 0, reach: 0, parent: -1, retuningWeight: 0 };
		this.#pool.add(this.#hands, this.#tunings, nothing);
	}

	/** Every way through the section from this one that the cut-off lets pass. */
	goOnFrom(label: number, limits: CutOff): void {
		this.#limits = limits;
		this.#label = label;
		for (let word = 0, at = label * this.#tunings.length; word < this.#tunings.length; word += 1) {
			this.#tunings[word] = this.#pool.tunings[at + word] ?? 0;
		}
		const cost = this.#pool.cost[label] ?? 0;
		let reach = cost + (this.#later[this.section + 1] ?? 0);
		for (let index = this.#seats.length - 1; index >= 0; index -= 1) {
			const options = this.#options[index] as StepOptions;
			reach += options.list(this.#placeBefore(index));
			this.#budget.left -= options.count;
			this.#leastAdded[index] = (this.#leastAdded[index + 1] ?? 0) + (options.adds[0] ?? 0);
			if (options.count === 0) return;
		}
		for (const instrument of this.#shared?.instruments ?? []) {
			reach += this.#restOf(this.section, instrument);
		}
		this.#extend(0, cost, reach);
	}

	#placeBefore(index: number): number {
		if (this.section === 0) return 0;
		const row = (this.section - 1) * (this.#seats[index]?.size ?? 0);
		const hand = this.#pool.hands[this.#label * this.#seats.length + index] ?? 0;
		return this.#options[index]?.ways.placeOf[row + hand] ?? 0;
	}

	/** What an instrument's way costs from a section on, from the tuning that it is in now; 0 where it has no price. */
	#restOf(section: number, instrument: number): number {
		const tuning = this.#bytes[this.#layout.byteOf[instrument] ?? -1] ?? 0;
		return this.#shared?.restOf(section, instrument, tuning) ?? 0;
	}

	/** Every step of this member and those after; `reach` is what all comes to at least. */
	#extend(index: number, cost: number, reach: number): void {
		const options = this.#options[index];
		if (options === undefined) {
			this.#close(cost, reach);
			return;
		}
		const { ways, costs, prices } = options;
		const later = this.#leastAdded[index + 1] ?? 0;
		for (let option = 0; option < options.count; option += 1) {
			let least = reach + (options.adds[option] ?? 0);
			if (!this.#limits.letsPass(least + later)) return;
			this.#budget.left -= 1;
			const step: number = options.steps[option] ?? 0;
			const to: number = ways.to[step] ?? 0;
			const hand: number = ways.handOf[to] ?? 0;
			const instrument = this.#seats[index]?.instrumentOf[hand] ?? -1;
			if (instrument >= 0 && this.#isTaken[instrument] === 1) continue;
			const flags = ways.flags[step] ?? 0;
			const byte = this.#layout.byteOf[instrument] ?? -1;
			const before = this.#bytes[byte] ?? 0;
			const isRetuned = (flags & BEGINS) !== 0 && byte >= 0 && before !== ways.tuning[step];
			const uncounted = (ways.cost[step] ?? 0) - (costs[step] ?? 0);
			let sum = cost + (ways.cost[step] ?? 0);
			least -= this.#restOf(this.section, instrument) + (prices[to] ?? 0);
			if (uncounted > 0) least += uncounted;
			if (isRetuned) {
				this.#bytes[byte] = ways.tuning[step] ?? 0;
				sum += this.#retuning;
				if ((ways.own[step] ?? -1) < 0 && uncounted === 0) least += this.#retuning;
			}
			least += this.#restOf(this.section + 1, instrument);
			if (this.#limits.letsPass(least + later)) {
				this.#hands[index] = hand;
				this.#chosenFlags[index] = flags;
				if (instrument >= 0) this.#isTaken[instrument] = 1;
				this.#extend(index + 1, sum, least);
				if (instrument >= 0) this.#isTaken[instrument] = 0;
			}
			if (isRetuned) this.#bytes[byte] = before;
		}
	}

	/** All have chosen for this section: what that costs together. */
	#close(cost: number, reach: number): void {
		for (let index = 0; index < this.#seats.length; index += 1) {
			const isMissing = ((this.#chosenFlags[index] ?? 0) & IS_MISSING) !== 0;
			if (isMissing && !this.#isRightlyMissing(index)) return;
		}
		const together = this.#overTogether() * this.#overGap;
		let least = reach + together;
		for (const instrument of this.#shared?.instruments ?? []) {
			if (this.#isTaken[instrument] === 1) continue;
			least += this.#restOf(this.section + 1, instrument) - this.#restOf(this.section, instrument);
		}
		if (!this.#limits.letsPass(least)) return;
		this.#limits.note(least);
		this.#keptTunings.set(this.#tunings);
		this.#layout.lastUse.forEach((last, byte) => {
			if (last <= this.section) this.#keptBytes[byte] = 0;
		});
		const others = this.#pool.add(this.#hands, this.#keptTunings, {
			cost: cost + together,
			reach: least,
			parent: this.#label,
			retuningWeight: this.#retuning,
		});
		this.#budget.left -= others / OTHERS;
	}

	/** How many more hand-overs do not fit the gap than would not alone. */
	#overTogether(): number {
		const { seating } = this.#board;
		const gap = seating.gapSeconds[this.section] ?? 0;
		if (gap === Number.POSITIVE_INFINITY) return 0;
		this.#seconds.length = 0;
		let alone = 0;
		this.#chosenFlags.forEach((flags, index) => {
			if ((flags & BEGINS) === 0) return;
			if ((flags & IS_OVER) !== 0) alone += 1;
			const instrument = this.#seats[index]?.instrumentOf[this.#hands[index] ?? 0] ?? 0;
			this.#seconds.push(seating.handOverSeconds[instrument] ?? 0);
		});
		return countOverGap(this.#seconds, gap) - alone;
	}

	/** Whether everything that would do is in other hands, or may be in those of somebody not here. */
	#isRightlyMissing(index: number): boolean {
		const seat = this.#seats[index] as Seat;
		const before = this.#pool.hands[this.#label * this.#seats.length + index] ?? 0;
		const broken = seat.wholeOf[before] === before ? -1 : (seat.instrumentOf[before] ?? -1);
		const row = this.section * this.#isTaken.length;
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
