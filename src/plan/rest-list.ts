// What is still to come from each place of one seat's ways: rests, each with its cost and the tunings that
// it wants the seat's own instruments to be in. Kept are those that are best for some tunings.

import { countUnmet } from './tuning-bytes.ts';

export type RestList = List;

/**
 * The rests of so many places, none so far, which want as many tunings as go into so many whole numbers.
 *
 * @example
 * restList({ places: 3, words: 1, retuning: 100 }).bestFrom(0, new Int32Array(1), 0) // => -1
 */
export function restList(asked: Asked): RestList {
	return new List(asked);
}

/** `retuning`: what one weighs. */
type Asked = { readonly places: number; readonly words: number; readonly retuning: number };

/** Kept from one place at the most; in a show made by people there are a few. */
const MOST = 1000;

class List {
	/** The rests from place `p` are numbered from `first[p]` up to `end[p]`, the least first. */
	readonly first: Int32Array;
	readonly end: Int32Array;
	/** For each place the least that those come to for which there was no room. */
	readonly leftOut: Float64Array;
	cost = new Float64Array(256);
	/** The rest that goes on after the first step; -1 at the end. */
	next = new Int32Array(256);
	placeOf = new Int32Array(256);
	/** For each rest its words of wanted tunings. */
	wanted: Int32Array;
	/** What is offered wants these. */
	readonly offered: Int32Array;
	readonly offeredBytes: Uint8Array;
	/** Whatever costs so much is beaten, whatever it wants. */
	limit = Number.POSITIVE_INFINITY;
	readonly #words: number;
	readonly #retuning: number;
	#count = 0;
	#place = 0;
	#from = 0;

	constructor({ places, words, retuning }: Asked) {
		this.first = new Int32Array(places);
		this.end = new Int32Array(places);
		this.leftOut = new Float64Array(places).fill(Number.POSITIVE_INFINITY);
		this.wanted = new Int32Array(256 * words);
		this.offered = new Int32Array(words);
		this.offeredBytes = new Uint8Array(this.offered.buffer);
		this.#words = words;
		this.#retuning = retuning;
	}

	/** What is offered from now on begins here. */
	beginPlace(place: number): void {
		this.#place = place;
		this.#from = this.#count;
		this.first[place] = this.#count;
		this.end[place] = this.#count;
		this.limit = Number.POSITIVE_INFINITY;
	}

	/**
	 * Takes in a rest that wants what stands in `offered`, unless another does as well; those it beats go.
	 * Gives back how many it was held against, itself among them.
	 */
	offer(cost: number, next: number): number {
		const others = 1 + this.#count - this.#from;
		let at = this.#count;
		while (at > this.#from && cost < (this.cost[at - 1] ?? 0)) at -= 1;
		for (let one = this.#from; one < at; one += 1) {
			if (this.costWith(one, this.offered, 0) <= cost) return 1 + one - this.#from;
		}
		this.#dropBeaten(at, cost);
		this.#put(at, cost, next);
		if (this.#count - this.#from > MOST) {
			this.#count -= 1;
			this.leaveOut(this.#place, this.cost[this.#count] ?? 0);
		}
		this.end[this.#place] = this.#count;
		return others;
	}

	/** Takes in one that costs no less than all before it, and that none of them beats. */
	append(cost: number, next: number): number {
		this.#put(this.#count, cost, next);
		this.end[this.#place] = this.#count;
		return 1;
	}

	leaveOut(place: number, cost: number): void {
		if (cost < (this.leftOut[place] ?? 0)) this.leftOut[place] = cost;
	}

	/** The least rest from a place, were the instruments in the tunings that stand there from `from` on; -1 for none. */
	bestFrom(place: number, tunings: Int32Array, from: number): number {
		let least = Number.POSITIVE_INFINITY;
		let best = -1;
		const end = this.end[place] ?? 0;
		for (let one = this.first[place] ?? 0; one < end; one += 1) {
			if ((this.cost[one] ?? 0) >= least) break;
			const cost = this.costWith(one, tunings, from);
			if (cost >= least) continue;
			least = cost;
			best = one;
		}
		return best;
	}

	/** What a rest costs with such tunings. */
	costWith(rest: number, tunings: Int32Array, from: number): number {
		const at = rest * this.#words;
		let unmet = 0;
		for (let word = 0; word < this.#words; word += 1) {
			unmet += countUnmet(this.wanted[at + word] ?? 0, tunings[from + word] ?? 0);
		}
		return (this.cost[rest] ?? 0) + this.#retuning * unmet;
	}

	#dropBeaten(from: number, cost: number): void {
		let end = from;
		for (let one = from; one < this.#count; one += 1) {
			let unmet = 0;
			for (let word = 0; word < this.#words; word += 1) {
				const wanted = this.wanted[one * this.#words + word] ?? 0;
				unmet += countUnmet(this.offered[word] ?? 0, wanted);
			}
			if (cost + this.#retuning * unmet <= (this.cost[one] ?? 0)) continue;
			if (end < one) this.#copy(one, end);
			end += 1;
		}
		this.#count = end;
	}

	#put(at: number, cost: number, next: number): void {
		if (this.#count === this.cost.length) this.#grow();
		for (let one = this.#count; one > at; one -= 1) this.#copy(one - 1, one);
		this.placeOf[this.#count] = this.#place;
		this.#count += 1;
		this.cost[at] = cost;
		this.next[at] = next;
		for (let word = 0; word < this.#words; word += 1) {
			this.wanted[at * this.#words + word] = this.offered[word] ?? 0;
		}
		if (at === this.#from) this.limit = cost + this.#retuning * this.#countOffered();
	}

	#copy(from: number, to: number): void {
		this.cost[to] = this.cost[from] ?? 0;
		this.next[to] = this.next[from] ?? 0;
		for (let word = 0; word < this.#words; word += 1) {
			this.wanted[to * this.#words + word] = this.wanted[from * this.#words + word] ?? 0;
		}
	}

	#countOffered(): number {
		let count = 0;
		for (const four of this.offered) count += countUnmet(four, 0);
		return count;
	}

	#grow(): void {
		const { cost, next, placeOf, wanted } = this;
		this.cost = new Float64Array(2 * cost.length);
		this.next = new Int32Array(2 * cost.length);
		this.placeOf = new Int32Array(2 * cost.length);
		this.wanted = new Int32Array(2 * wanted.length);
		this.cost.set(cost);
		this.next.set(next);
		this.placeOf.set(placeOf);
		this.wanted.set(wanted);
	}
}
