// All ways that one seat's hands can still take: places, one for each hand that is possible in a section,
// and the steps between them with what each costs. Listed once, then gone over by every search.

import type { Board } from './board.ts';
import { MISSING, OVER_GAP, RETUNINGS } from './criteria.ts';
import type { GroupSetting } from './group-setting.ts';
import type { Seat } from './seats.ts';
import type { Steps } from './steps.ts';
import { BEGINS, IS_MISSING } from './steps.ts';
import { tuningByte } from './tuning-bytes.ts';

/** Beside the flags of steps: a hand-over that does not fit its gap even alone. */
export const IS_OVER = 16;

/** Place 0 is where the seat is now; those of section `s` are numbered from `firstPlace[s]` up to `firstPlace[s + 1]`. */
export type Places = {
	readonly firstPlace: Int32Array;
	/** For each place its hand. */
	readonly handOf: Int16Array;
	/** For each section, then each hand, its place; -1 for none. */
	readonly placeOf: Int32Array;
};

export type SeatWays = Places & {
	/** The steps from place `p` are numbered from `firstStep[p]` up to `firstStep[p + 1]`. */
	readonly firstStep: Int32Array;
	readonly to: Int32Array;
	readonly flags: Uint8Array;
	/** Packed, without the re-tunings of what the setting follows. */
	readonly cost: Float64Array;
	/** With those of them that are sure although others may have the instrument; without what is counted for all. */
	readonly aloneCost: Float64Array;
	/** Where a stint begins with one of the seat's own instruments, its number among them; else -1. */
	readonly own: Int16Array;
	/** The byte of the tuning that is gone into. */
	readonly tuning: Uint8Array;
	/** For each instrument that nobody else can re-tune its number among the seat's own; else -1. */
	readonly ownOf: Int16Array;
	readonly ownCount: number;
	/** For each place, then each of the seat's own instruments, the bits of the tuning bytes that it can be in there. */
	readonly canBeIn: Int32Array;
};

type WaysAsked = {
	readonly setting: GroupSetting;
	/** The seat, and its place among those that the setting is for. */
	readonly seat: number;
	readonly index: number;
	readonly ownOf: Int16Array;
	/** For each section how many slots surely stay empty: counted for all, not for the one whose it is. */
	readonly missing: Uint8Array;
};

/**
 * The ways of a seat on this board.
 *
 * @example
 * seatWays(board, { setting: groupSetting(board, [0]), seat: 0, index: 0, ownOf: new Int16Array(9).fill(-1), missing: new Uint8Array(3) }).to // => Int32Array.of(1, 2, 3)
 */
export function seatWays(board: Board, asked: WaysAsked): SeatWays {
	const { sectionCount, seats } = board.seating;
	const { size } = seats[asked.seat] as Seat;
	const { first, to } = board.steps[asked.seat] as Steps;
	const places = placesOf(board, asked.seat);
	const firstStep = new Int32Array(places.handOf.length + 1);
	const list = new StepList(board, asked);
	for (let section = 0, place = 0; section < sectionCount; section += 1) {
		const row = section * size;
		for (const end = places.firstPlace[section] ?? 0; place < end; place += 1) {
			firstStep[place] = list.count;
			const before = places.handOf[place] ?? 0;
			const last = first[row + before + 1] ?? 0;
			for (let step = first[row + before] ?? 0; step < last; step += 1) {
				const next = places.placeOf[row + (to[step] ?? 0)] ?? -1;
				if (next >= 0) list.add(next, { section, before, step });
			}
		}
	}
	firstStep.fill(list.count, sectionCount === 0 ? 0 : places.firstPlace[sectionCount - 1]);
	const { ownOf } = asked;
	const ownCount = ownOf.reduce((count, own) => Math.max(count, own + 1), 0);
	const listed = list.listed();
	const canBeIn = tuningsAt({ ...places, firstStep, ...listed }, ownCount);
	return { ...places, firstStep, ...listed, ownOf, ownCount, canBeIn };
}

/** Tunings beyond so many are one bit, the sign: it stands for any of them. */
const MOST_BITS = 31;

/**
 * For each place, then each of so many own instruments, the bits of the tuning bytes that it can be in there.
 *
 * @example
 * tuningsAt(ways, 0) // => new Int32Array(0)
 */
export function tuningsAt(
	{
		handOf,
		firstStep,
		to,
		own,
		tuning,
	}: Pick<SeatWays, 'handOf' | 'firstStep' | 'to' | 'own' | 'tuning'>,
	ownCount: number,
): Int32Array {
	const canBeIn = new Int32Array(handOf.length * ownCount);
	canBeIn.fill(1 << tuningByte(0), 0, ownCount);
	for (let place = 0; place < handOf.length; place += 1) {
		const end = firstStep[place + 1] ?? 0;
		for (let step = firstStep[place] ?? 0; step < end; step += 1) {
			const row = (to[step] ?? 0) * ownCount;
			for (let one = 0; one < ownCount; one += 1) {
				const bits =
					own[step] === one
						? 1 << Math.min(tuning[step] ?? 0, MOST_BITS)
						: (canBeIn[place * ownCount + one] ?? 0);
				canBeIn[row + one] = (canBeIn[row + one] ?? 0) | bits;
			}
		}
	}
	return canBeIn;
}

function placesOf({ seating, possible }: Board, number: number): Places {
	const { size, start } = seating.seats[number] as Seat;
	const open = possible[number] as Uint8Array;
	const firstPlace = new Int32Array(seating.sectionCount + 1);
	const placeOf = new Int32Array(open.length).fill(-1);
	const hands = [start];
	open.forEach((is, at) => {
		if (at % size === 0) firstPlace[at / size] = hands.length;
		if (is === 0) return;
		placeOf[at] = hands.length;
		hands.push(at % size);
	});
	firstPlace[seating.sectionCount] = hands.length;
	return { firstPlace, handOf: Int16Array.from(hands), placeOf };
}

class StepList {
	count = 0;
	readonly #board: Board;
	readonly #asked: WaysAsked;
	readonly #seat: Seat;
	readonly #steps: Steps;
	readonly #stepCosts: Float64Array;
	readonly #missing: number;
	readonly #overGap: number;
	readonly #retuning: number;
	readonly #to: Int32Array;
	readonly #flags: Uint8Array;
	readonly #cost: Float64Array;
	readonly #aloneCost: Float64Array;
	readonly #own: Int16Array;
	readonly #tuning: Uint8Array;

	constructor(board: Board, asked: WaysAsked) {
		const { setting, seat, index } = asked;
		this.#board = board;
		this.#asked = asked;
		this.#seat = board.seating.seats[seat] as Seat;
		this.#steps = board.steps[seat] as Steps;
		this.#stepCosts = setting.stepCosts[index] as Float64Array;
		this.#missing = setting.weights.of[MISSING] ?? 0;
		this.#overGap = setting.weights.of[OVER_GAP] ?? 0;
		this.#retuning = setting.weights.of[RETUNINGS] ?? 0;
		const most = this.#steps.to.length;
		this.#to = new Int32Array(most);
		this.#flags = new Uint8Array(most);
		this.#cost = new Float64Array(most);
		this.#aloneCost = new Float64Array(most);
		this.#own = new Int16Array(most).fill(-1);
		this.#tuning = new Uint8Array(most);
	}

	add(
		to: number,
		{ section, before, step }: { section: number; before: number; step: number },
	): void {
		const { seating } = this.#board;
		const at = this.count;
		const hand = this.#steps.to[step] ?? 0;
		const flags = this.#steps.flags[step] ?? 0;
		const instrument = this.#seat.instrumentOf[hand] ?? -1;
		let cost = this.#stepCosts[step] ?? 0;
		this.count += 1;
		this.#to[at] = to;
		this.#flags[at] = flags;
		this.#cost[at] = cost;
		this.#aloneCost[at] = cost;
		if ((flags & IS_MISSING) !== 0 && (this.#asked.missing[section] ?? 0) > 0) {
			this.#aloneCost[at] = cost - this.#missing;
		}
		if ((flags & BEGINS) === 0) return;
		if ((seating.handOverSeconds[instrument] ?? 0) > (seating.gapSeconds[section] ?? 0)) {
			this.#flags[at] = flags | IS_OVER;
			cost += this.#overGap;
		}
		this.#own[at] = this.#asked.ownOf[instrument] ?? -1;
		this.#tuning[at] = tuningByte(this.#seat.tuningOf[hand] ?? 0);
		const isOthers = this.#own[at] === -1 && this.#isSurelyRetuned(section, before, hand);
		const isFollowed = this.#asked.setting.isFollowed[instrument] === 1;
		this.#cost[at] = isOthers && !isFollowed ? cost + this.#retuning : cost;
		this.#aloneCost[at] = isOthers ? cost + this.#retuning : cost;
	}

	listed(): Pick<SeatWays, 'to' | 'flags' | 'cost' | 'aloneCost' | 'own' | 'tuning'> {
		return {
			to: this.#to.slice(0, this.count),
			flags: this.#flags.slice(0, this.count),
			cost: this.#cost.slice(0, this.count),
			aloneCost: this.#aloneCost.slice(0, this.count),
			own: this.#own.slice(0, this.count),
			tuning: this.#tuning.slice(0, this.count),
		};
	}

	/** Whether, with nobody following its tunings, the instrument was in the same hands in another, or surely is in another. */
	#isSurelyRetuned(section: number, before: number, hand: number): boolean {
		const { instrumentOf, tuningOf } = this.#seat;
		const instrument = instrumentOf[hand] ?? 0;
		const tuning = tuningOf[hand] ?? 0;
		if ((this.#board.seating.tuningCounts[instrument] ?? 0) < 2) return false;
		return instrumentOf[before] === instrument
			? tuningOf[before] !== tuning
			: this.#board.isSure(section, instrument, tuning);
	}
}
