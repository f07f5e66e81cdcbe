// How late work is at least, in whatever order: what it would come to if a piece might be put down for
// another. Of what can be begun, always the piece wanted first is then best (Horn's rule for
// 1 | pmtn, r_j | L_max, from memory); a clock that stands still now and then delays all alike.

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
	const isDone = new Uint8Array(left.length);
	let time = Number.NEGATIVE_INFINITY;
	let worst = { latenessMs: Number.NEGATIVE_INFINITY, latest: -1, finish: time };
	for (let open = left.length; open > 0; ) {
		const piece = wantedFirst({ heads, dues }, isDone, time);
		if (piece < 0) {
			time = firstHead(heads, isDone);
			continue;
		}
		const due = dues[piece] ?? 0;
		let until = time + (left[piece] ?? 0);
		let isPutDown = false;
		for (let other = 0; other < left.length; other += 1) {
			const head = heads[other] ?? 0;
			const isUrgent = isDone[other] === 0 && (dues[other] ?? 0) < due;
			if (!isUrgent || head <= time || head >= until) continue;
			until = head;
			isPutDown = true;
		}
		left[piece] = (left[piece] ?? 0) - (until - time);
		time = until;
		if (isPutDown) continue;
		isDone[piece] = 1;
		open -= 1;
		const latenessMs = nightMs(time) - due;
		if (latenessMs > worst.latenessMs) worst = { latenessMs, latest: piece, finish: time };
	}
	return worst;
}

/**
 * Of the pieces not done that can be begun at this moment the one wanted first, the first such in the
 * lists; -1 when there is none.
 *
 * @example
 * wantedFirst({ heads: Float64Array.of(0, 0, 9), dues: Float64Array.of(7, 5, 1) }, new Uint8Array(3), 4) // => 1
 */
export function wantedFirst(
	{ heads, dues }: Pick<PiecesOfWork, 'heads' | 'dues'>,
	isDone: Uint8Array,
	time: number,
): number {
	let first = -1;
	let least = Number.POSITIVE_INFINITY;
	for (let piece = 0; piece < heads.length; piece += 1) {
		const due = dues[piece] ?? 0;
		if (isDone[piece] === 1 || due >= least || (heads[piece] ?? 0) > time) continue;
		first = piece;
		least = due;
	}
	return first;
}

/**
 * When the first of those not done can be begun.
 *
 * @example
 * firstHead(Float64Array.of(3, 8, 5), Uint8Array.of(1, 0, 0)) // => 5
 */
export function firstHead(heads: Float64Array, isDone: Uint8Array): number {
	let first = Number.POSITIVE_INFINITY;
	for (let piece = 0; piece < heads.length; piece += 1) {
		const head = heads[piece] ?? 0;
		if (isDone[piece] === 0 && head < first) first = head;
	}
	return first;
}
