// Which ways of a search are gone on from: those that may still come to less than the best known, and
// of these, where few are asked for, the most promising. What is left out bounds what was missed.

export type CutOff = Limits;

/**
 * A cut-off that lets everything below `upper` through.
 *
 * @example
 * cutOff(100).letsPass(99) // => true
 * cutOff(100).letsPass(100) // => false
 */
export function cutOff(upper: number): CutOff {
	return new Limits(upper);
}

class Limits {
	/** What the best known comes to. */
	upper: number;
	/** The least that anything left out could have come to. */
	leftOut = Number.POSITIVE_INFINITY;
	/** The best that the ways of this section come to so far, rising. */
	#near = new Float64Array();

	constructor(upper: number) {
		this.upper = upper;
	}

	/** From here on only the most promising so many pass; any number where `few` is 0. */
	beginSection(few: number): void {
		if (this.#near.length !== few) this.#near = new Float64Array(few);
		this.#near.fill(Number.POSITIVE_INFINITY);
	}

	/** Whether a way that comes to so much at best may still be gone on from. */
	letsPass(reach: number): boolean {
		if (reach >= this.upper) return false;
		if (this.#near.length === 0 || reach <= (this.#near[this.#near.length - 1] ?? 0)) return true;
		this.leaveOut(reach);
		return false;
	}

	/** A way that comes to so much at best is gone on from. */
	note(reach: number): void {
		const near = this.#near;
		let place = near.length - 1;
		if (place < 0 || reach >= (near[place] ?? 0)) return;
		for (; place > 0 && (near[place - 1] ?? 0) > reach; place -= 1) {
			near[place] = near[place - 1] ?? 0;
		}
		near[place] = reach;
	}

	/** One that comes to so much at best is not. */
	leaveOut(reach: number): void {
		if (reach < this.leftOut) this.leftOut = reach;
	}
}
