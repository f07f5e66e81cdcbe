// How late work is at least, in whatever order: what it would come to if a piece might be put down for
// another. Of what can be begun, always the piece wanted first is then best (Horn's rule for
// 1 | pmtn, r_j | L_max, from memory); a clock that stands still now and then delays all alike.

import { Line } from './line-up.ts';
import type { PiecesOfWork } from './pieces-of-work.ts';

export type LatenessBound = {
	/** `-Infinity` without any pieces. */
	readonly latenessMs: number;
	/** The piece that it is reached with, by its place in the lists; -1 without any. */
	readonly latest: number;
	/** When that one is done, on the free clock. */
	readonly finish: number;
};

/**
 * The least worst lateness if pieces might be put down.
 *
 * @example
 * latenessBound({ heads: Float64Array.of(0, 2, 4), lengths: Float64Array.of(6, 2, 3), dues: Float64Array.of(20, 5, 9), nightMs: (free) => free }) // => { latenessMs: -1, latest: 1, finish: 4 }
 */
export function latenessBound({ heads, lengths, dues, nightMs }: PiecesOfWork): LatenessBound {
	const left = lengths.slice();
	const line = new Line({ heads, dues });
	let time = Number.NEGATIVE_INFINITY;
	let worst = { latenessMs: Number.NEGATIVE_INFINITY, latest: -1, finish: time };
	for (let open = left.length; open > 0; ) {
		line.letIn(time);
		const piece = line.takeFirst();
		if (piece < 0) {
			time = line.nextHead;
			continue;
		}
		const due = dues[piece] ?? 0;
		const end = time + (left[piece] ?? 0);
		let until = end;
		while (line.nextHead < until) {
			const head = line.nextHead;
			if ((dues[line.letInNext()] ?? 0) < due) until = head;
		}
		left[piece] = end - until;
		time = until;
		if (until < end) {
			line.putBack(piece);
			continue;
		}
		open -= 1;
		const latenessMs = nightMs(time) - due;
		if (latenessMs > worst.latenessMs) worst = { latenessMs, latest: piece, finish: time };
	}
	return worst;
}
