// The best for one player, were there nobody else and no clock, from wherever they may come to: what they
// would choose, and for searching on with others what their rest costs at least. Worked out from the end
// back: a rest is then known for all tunings that the player's own instruments may be in by that time.

import type { Budget } from './board.ts';
import type { HubWays } from './hub-ways.ts';
import type { RestList } from './rest-list.ts';
import { restList } from './rest-list.ts';
import type { SeatWays } from './seat-ways.ts';
import { tuningByte, wordsFor } from './tuning-bytes.ts';

export type AloneAsked = {
	readonly hubWays: HubWays;
	/** For each place what being there costs beside the steps. */
	readonly prices: Float64Array;
	/** What a re-tuning weighs. */
	readonly retuning: number;
	/** Ways that come to as much are not told apart. */
	readonly limit: number;
	/** Whether the tunings of the player's own instruments are left out. */
	readonly isRough: boolean;
	readonly budget: Budget;
};

/** To hold a rest against another takes this share of looking at one way for several players together. */
const OTHER = 0.0625;

/**
 * The choosing of one seat, all of it done; null where no way through comes to less than the limit.
 *
 * @example
 * chooseAlone({ hubWays: hubWays(ways, ways.cost), prices: new Float64Array(8), retuning: 9, limit: Infinity, isRough: false, budget: { left: 99 } }).cost > 0 // => true
 */
export function chooseAlone(asked: AloneAsked): Alone | null {
	const alone = new OneSeat(asked);
	return alone.cost === Number.POSITIVE_INFINITY ? null : alone;
}

export type Alone = OneSeat;

class OneSeat {
	readonly hubWays: HubWays;
	readonly prices: Float64Array;
	readonly retuning: number;
	/** The tuning bytes of the own instruments at the beginning; none where tunings are left out. */
	readonly tunings: Int32Array;
	/** The least packed cost, prices and all; infinite where there is no way through. */
	readonly cost: number;
	/** The least that could be, where rests were left out. */
	readonly bound: number;
	readonly #rests: RestList;

	constructor(asked: AloneAsked) {
		const { hubWays, prices, retuning } = asked;
		this.hubWays = hubWays;
		this.prices = prices;
		this.retuning = retuning;
		this.tunings = new Int32Array(asked.isRough ? 0 : wordsFor(hubWays.ways.ownCount));
		new Uint8Array(this.tunings.buffer).fill(tuningByte(0));
		const places = hubWays.order.length;
		this.#rests = restList({ places, words: this.tunings.length, retuning });
		this.#goBack(asked);
		const best = this.#rests.bestFrom(0, this.tunings, 0);
		this.cost = best < 0 ? Number.POSITIVE_INFINITY : this.#rests.costWith(best, this.tunings, 0);
		this.bound = this.restFrom(0, this.tunings, 0);
	}

	/** The place in each section, of the first among the best ways. */
	path(): Int32Array {
		const { hubs, ways } = this.hubWays;
		const places = new Int32Array(ways.firstPlace.length - 1);
		let rest = this.#rests.bestFrom(0, this.tunings, 0);
		for (let section = 0; section < places.length; section += 1) {
			do rest = this.#rests.next[rest] ?? -1;
			while ((this.#rests.placeOf[rest] ?? 0) >= hubs);
			places[section] = this.#rests.placeOf[rest] ?? 0;
		}
		return places;
	}

	/** What all after this place costs at least; the own instruments' tunings stand in `tunings` from `from` on. */
	restFrom(place: number, tunings: Int32Array, from: number): number {
		const best = this.#rests.bestFrom(place, tunings, from);
		const leftOut = this.#rests.leftOut[place] ?? 0;
		return best < 0 ? leftOut : Math.min(leftOut, this.#rests.costWith(best, tunings, from));
	}

	/** The same whatever the tunings are. */
	leastFrom(place: number): number {
		const first = this.#rests.first[place] ?? 0;
		const isNone = first === this.#rests.end[place];
		const least = isNone ? Number.POSITIVE_INFINITY : (this.#rests.cost[first] ?? 0);
		return Math.min(least, this.#rests.leftOut[place] ?? 0);
	}

	#goBack({ hubWays, prices, limit, budget }: AloneAsked): void {
		const { ways, hubs, order, first, end, to, more } = hubWays;
		const come = comeTo(hubWays, prices);
		const lastFrom = ways.firstPlace.at(-2) ?? 0;
		for (let at = order.length - 1; at >= 0; at -= 1) {
			const place = order[at] ?? 0;
			this.#rests.beginPlace(place);
			if (place >= lastFrom && place < hubs) {
				this.#rests.offered.fill(0);
				this.#rests.offer(0, -1);
			}
			const most = limit - (come[place] ?? 0) - (more[place] ?? 0);
			const last = end[place] ?? 0;
			for (let step = first[place] ?? 0; step < last; step += 1) {
				const price = prices[to[step] ?? 0] ?? 0;
				budget.left -= OTHER * this.#goOver(place, step, { price, most });
			}
		}
	}

	/** Offers all rests from where a step leads, with the step before them; gives back how many others they were held against. */
	#goOver(place: number, step: number, { price, most }: { price: number; most: number }): number {
		const { ways, hubs, cost, to, own, tuning } = this.hubWays;
		const rests = this.#rests;
		const { offered } = rests;
		const next = to[step] ?? 0;
		const base = (cost[step] ?? 0) + price;
		const byte = this.tunings.length === 0 ? -1 : (own[step] ?? -1);
		const tuned = tuning[step] ?? 0;
		const last = rests.end[next] ?? 0;
		// Rests that come over unchanged do not beat one another here either.
		let isSame = byte < 0 && rests.first[place] === rests.end[place];
		let others = 0;
		rests.leaveOut(place, base + (rests.leftOut[next] ?? 0));
		for (let rest = rests.first[next] ?? 0; rest < last; rest += 1) {
			let sum = base + (rests.cost[rest] ?? 0);
			if (sum >= rests.limit) break;
			if (sum >= most) {
				rests.leaveOut(place, sum);
				break;
			}
			for (let word = 0; word < offered.length; word += 1) {
				offered[word] = rests.wanted[rest * offered.length + word] ?? 0;
			}
			if (byte >= 0) {
				const wanted = rests.offeredBytes[byte] ?? 0;
				if (wanted !== 0 && wanted !== tuned) sum += this.retuning;
				rests.offeredBytes[byte] = tuned;
			}
			if (place < hubs && offered.length > 0) {
				sum += this.retuning * meetKnown(rests.offeredBytes, ways, place);
			}
			for (let word = 0; isSame && word < offered.length; word += 1) {
				isSame = offered[word] === rests.wanted[rest * offered.length + word];
			}
			others += isSame ? rests.append(sum, rest) : rests.offer(sum, rest);
		}
		return others;
	}
}

/** Strikes out what is wanted that is surely met at a place, or surely not; gives back how many are not. */
function meetKnown(wanted: Uint8Array, { canBeIn, ownCount }: SeatWays, place: number): number {
	let unmet = 0;
	for (let one = 0; one < ownCount; one += 1) {
		const tuning = wanted[one] ?? 0;
		const bits = canBeIn[place * ownCount + one] ?? 0;
		if (tuning === 0 || bits < 0) continue;
		const isOut = (bits & (1 << tuning)) === 0;
		if (isOut) unmet += 1;
		if (isOut || bits === 1 << tuning) wanted[one] = 0;
	}
	return unmet;
}

/**
 * For each place and hub what coming there costs at least, re-tunings left out.
 *
 * @example
 * comeTo(hubWays(ways, ways.cost), new Float64Array(8))[0] // => 0
 */
export function comeTo(
	{ order, first, end, to, cost }: HubWays,
	prices: Float64Array,
): Float64Array {
	const come = new Float64Array(order.length).fill(Number.POSITIVE_INFINITY);
	come[0] = 0;
	for (const place of order) {
		const last = end[place] ?? 0;
		for (let step = first[place] ?? 0; step < last; step += 1) {
			const next = to[step] ?? 0;
			const sum = (come[place] ?? 0) + (cost[step] ?? 0) + (prices[next] ?? 0);
			if (sum < (come[next] ?? 0)) come[next] = sum;
		}
	}
	return come;
}
