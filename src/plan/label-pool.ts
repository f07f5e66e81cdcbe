// The ways found so far, as labels: one for each combination of hands and tunings that is still worth
// going on from, in typed arrays that are used again for every section and every search.

import { countDiffering } from './tuning-bytes.ts';

export type LabelPool = Pool;

/**
 * An empty pool for so many seats; 2 to the power of `bits` places find equal hands.
 *
 * @example
 * labelPool(2, 8).count // => 0
 */
export function labelPool(seats: number, bits: number): LabelPool {
	return new Pool(seats, bits);
}

/** A label's hands and tunings, and what it cost to come there. */
class Pool {
	readonly seats: number;
	/** How many whole numbers the tuning bytes of a label take. */
	words = 0;
	cost = new Float64Array(256);
	/** What it comes to at best. */
	reach = new Float64Array(256);
	parent = new Int32Array(256);
	hands: Int16Array;
	tunings = new Int32Array();
	count = 0;
	#next = new Int32Array(256);
	#isDead = new Uint8Array(256);
	readonly #heads: Int32Array;
	#sectionFrom = 0;

	constructor(seats: number, bits: number) {
		this.seats = seats;
		this.hands = new Int16Array(256 * seats);
		this.#heads = new Int32Array(1 << bits).fill(-1);
	}

	/** Forgets all labels; those to come have so many words of tunings. */
	clear(words: number): void {
		this.count = 0;
		this.words = words;
		const size = this.cost.length * words;
		if (this.tunings.length < size) this.tunings = new Int32Array(size);
		this.beginSection();
	}

	/** Labels of different sections are never compared. */
	beginSection(): void {
		this.#heads.fill(-1);
		this.#sectionFrom = this.count;
	}

	/** Labels of this section that nothing beats, in the order in which they were found. */
	alive(): number[] {
		const labels: number[] = [];
		for (let label = this.#sectionFrom; label < this.count; label += 1) {
			if (this.#isDead[label] === 0) labels.push(label);
		}
		return labels;
	}

	/**
	 * Takes a label in, unless one with the same hands does as well: each tuning in which two differ can
	 * cost one re-tuning later at most. What it beats is not gone on from. Gives back how many it was
	 * held against.
	 */
	add(
		hands: Int16Array,
		tunings: Int32Array,
		found: { cost: number; reach: number; parent: number; retuningWeight: number },
	): number {
		const { cost, retuningWeight } = found;
		let others = 0;
		const slot = this.#slotOf(hands);
		for (let one = this.#heads[slot] ?? -1; one >= 0; one = this.#next[one] ?? -1) {
			others += 1;
			if (this.#isDead[one] === 1 || !this.#hasHands(one, hands)) continue;
			const apart = retuningWeight * this.#differences(one, tunings);
			const other = this.cost[one] ?? 0;
			if (other + apart <= cost) return others;
			if (cost + apart <= other) this.#isDead[one] = 1;
		}
		if (this.count === this.cost.length) this.#grow();
		const label = this.count;
		this.cost[label] = cost;
		this.reach[label] = found.reach;
		this.parent[label] = found.parent;
		this.hands.set(hands, label * this.seats);
		this.tunings.set(tunings, label * this.words);
		this.#isDead[label] = 0;
		this.#next[label] = this.#heads[slot] ?? -1;
		this.#heads[slot] = label;
		this.count += 1;
		return others;
	}

	#slotOf(hands: Int16Array): number {
		let hash = 0;
		for (let seat = 0; seat < hands.length; seat += 1) {
			hash = Math.imul(hash ^ (hands[seat] ?? 0), 0x9e3779b1);
			hash ^= hash >>> 15;
		}
		return hash & (this.#heads.length - 1);
	}

	#hasHands(label: number, hands: Int16Array): boolean {
		const from = label * this.seats;
		for (let seat = 0; seat < hands.length; seat += 1) {
			if (this.hands[from + seat] !== hands[seat]) return false;
		}
		return true;
	}

	#differences(label: number, tunings: Int32Array): number {
		const from = label * this.words;
		let count = 0;
		for (let word = 0; word < this.words; word += 1) {
			count += countDiffering(this.tunings[from + word] ?? 0, tunings[word] ?? 0);
		}
		return count;
	}

	#grow(): void {
		const size = this.cost.length * 2;
		const grown = <T extends Float64Array | Int32Array | Int16Array | Uint8Array>(
			from: T,
			to: T,
		): T => {
			to.set(from);
			return to;
		};
		this.cost = grown(this.cost, new Float64Array(size));
		this.reach = grown(this.reach, new Float64Array(size));
		this.parent = grown(this.parent, new Int32Array(size));
		this.#next = grown(this.#next, new Int32Array(size));
		this.#isDead = grown(this.#isDead, new Uint8Array(size));
		this.hands = grown(this.hands, new Int16Array(size * this.seats));
		this.tunings = grown(
			this.tunings,
			new Int32Array(Math.max(this.tunings.length, size * this.words)),
		);
	}
}
