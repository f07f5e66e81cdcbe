// Pieces of work lined up as they can be begun, the one wanted first in front: what every rule for one pair
// of hands asks for at each step. A heap, since it is asked thousands of times for one plan.

import type { PiecesOfWork } from './pieces-of-work.ts';

export type Line = WaitingLine;

/**
 * Nobody in line yet; `letIn` fills it. Of pieces wanted at the same time the first in the lists is in front.
 *
 * @example
 * lineUp({ heads: Float64Array.of(3, 8, 5), dues: Float64Array.of(9, 9, 9) }).nextHead // => 3
 */
export function lineUp(pieces: Pick<PiecesOfWork, 'heads' | 'dues'>): Line {
	return new WaitingLine(pieces);
}

class WaitingLine {
	/** When the next that is not in line can be begun; infinite once all were let in. */
	nextHead: number;
	readonly #heads: Float64Array;
	readonly #dues: Float64Array;
	/** All pieces by when they can be begun, and how many of them were let in. */
	readonly #byHead: Int32Array;
	#letInCount = 0;
	/** Those in line, as a binary heap. */
	readonly #heap: Int32Array;
	#count = 0;

	constructor({ heads, dues }: Pick<PiecesOfWork, 'heads' | 'dues'>) {
		this.#heads = heads;
		this.#dues = dues;
		this.#byHead = inRisingOrder(heads);
		this.#heap = new Int32Array(heads.length);
		this.nextHead = this.#headAt(0);
	}

	/** Lets in all that can be begun at this moment. */
	letIn(time: number): void {
		while (this.nextHead <= time) this.letInNext();
	}

	/** Lets in the next that can be begun; gives that piece. */
	letInNext(): number {
		const piece = this.#byHead[this.#letInCount] ?? -1;
		this.#letInCount += 1;
		this.nextHead = this.#headAt(this.#letInCount);
		this.putBack(piece);
		return piece;
	}

	/** Takes out the one wanted first; -1 when nobody is in line. */
	takeFirst(): number {
		if (this.#count === 0) return -1;
		const first = this.#heap[0] ?? -1;
		this.#count -= 1;
		this.#sink(this.#heap[this.#count] ?? -1);
		return first;
	}

	/** Puts one in line that was taken out. */
	putBack(piece: number): void {
		const heap = this.#heap;
		let place = this.#count;
		this.#count += 1;
		while (place > 0) {
			const above = (place - 1) >> 1;
			const other = heap[above] ?? -1;
			if (!this.#isBefore(piece, other)) break;
			heap[place] = other;
			place = above;
		}
		heap[place] = piece;
	}

	/** Finds the place of the piece from the top down. */
	#sink(piece: number): void {
		const heap = this.#heap;
		let place = 0;
		for (;;) {
			let below = 2 * place + 1;
			if (below >= this.#count) break;
			if (below + 1 < this.#count && this.#isBefore(heap[below + 1] ?? -1, heap[below] ?? -1)) {
				below += 1;
			}
			const other = heap[below] ?? -1;
			if (!this.#isBefore(other, piece)) break;
			heap[place] = other;
			place = below;
		}
		heap[place] = piece;
	}

	#isBefore(one: number, other: number): boolean {
		const due = this.#dues[one] ?? 0;
		const otherDue = this.#dues[other] ?? 0;
		return due < otherDue || (due === otherDue && one < other);
	}

	#headAt(place: number): number {
		const piece = this.#byHead[place];
		return piece === undefined ? Number.POSITIVE_INFINITY : (this.#heads[piece] ?? 0);
	}
}

/** The places of these values from the least up. Work comes nearly so, which insertion is quick with. */
function inRisingOrder(values: Float64Array): Int32Array {
	const places = new Int32Array(values.length);
	for (let place = 0; place < values.length; place += 1) {
		const value = values[place] ?? 0;
		let at = place;
		for (; at > 0 && (values[places[at - 1] ?? 0] ?? 0) > value; at -= 1) {
			places[at] = places[at - 1] ?? 0;
		}
		places[at] = place;
	}
	return places;
}
