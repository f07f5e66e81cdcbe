// Pieces of work lined up as they can be begun, the one wanted first in front: what every rule for one pair
// of hands asks for at each step.

import type { PiecesOfWork } from './pieces-of-work.ts';

/**
 * Nobody in line yet; `letIn` fills it. Of pieces wanted at the same time the first in the lists is in front.
 *
 * @example
 * new Line({ heads: Float64Array.of(3, 8, 5), dues: Float64Array.of(9, 9, 9) }).nextHead // => 3
 */
export class Line {
	/** When the next that is not in line can be begun; infinite once all were let in. */
	nextHead: number;
	readonly #heads: Float64Array;
	readonly #dues: Float64Array;
	/** All pieces by when they can be begun, and how many of them were let in. */
	readonly #byHead: number[] = [];
	#letInCount = 0;
	/** Those in line, the one wanted first at the end. */
	readonly #line: number[] = [];

	constructor({ heads, dues }: Pick<PiecesOfWork, 'heads' | 'dues'>) {
		this.#heads = heads;
		this.#dues = dues;
		for (let piece = 0; piece < heads.length; piece += 1) {
			insert(this.#byHead, piece, (one) => (heads[one] as number) > (heads[piece] as number));
		}
		this.nextHead = this.#headAt(0);
	}

	/** Lets in all that can be begun at this moment. */
	letIn(time: number): void {
		while (this.nextHead <= time) this.letInNext();
	}

	/** Lets in the next that can be begun; gives that piece. */
	letInNext(): number {
		const piece = this.#byHead[this.#letInCount] as number;
		this.#letInCount += 1;
		this.nextHead = this.#headAt(this.#letInCount);
		this.putBack(piece);
		return piece;
	}

	/** Takes out the one wanted first; -1 when nobody is in line. */
	takeFirst(): number {
		return this.#line.pop() ?? -1;
	}

	/** Puts one in line that was taken out. */
	putBack(piece: number): void {
		const dues = this.#dues;
		const due = dues[piece] as number;
		insert(this.#line, piece, (one) => {
			const other = dues[one] as number;
			return other < due || (other === due && one < piece);
		});
	}

	#headAt(place: number): number {
		const piece = this.#byHead[place];
		return piece === undefined ? Number.POSITIVE_INFINITY : (this.#heads[piece] as number);
	}
}

/** Puts the piece before all those at the end that stay behind it. */
function insert(pieces: number[], piece: number, isBehind: (one: number) => boolean): void {
	let place = pieces.push(piece) - 1;
	for (; place > 0 && isBehind(pieces[place - 1] as number); place -= 1) {
		pieces[place] = pieces[place - 1] as number;
	}
	pieces[place] = piece;
}
