// Pieces of work as mere numbers, for the arithmetic that is done over and over: one pair of hands,
// releases, due times, the worst lateness (1 | r_j | L_max), on a clock that stands still while hands are
// not free.

/** One item per piece in each list. */
export type PiecesOfWork = {
	/** What the free clock shows when it can be begun; finite. */
	readonly heads: Float64Array;
	/** Milliseconds of free time. */
	readonly lengths: Float64Array;
	/** When it is wanted, by the night's clock. */
	readonly dues: Float64Array;
	/** The night's clock, when the free clock comes to show this. Never slower than the free clock. */
	readonly nightMs: (free: number) => number;
};

/**
 * By how much the worst piece ends after it is wanted when they are done in this order, each as soon as
 * it can be; below 0 when all are early, `-Infinity` without any.
 *
 * @example
 * latenessInOrder({ heads: Float64Array.of(0, 1), lengths: Float64Array.of(5, 1), dues: Float64Array.of(10, 2), nightMs: (free) => free }, [0, 1]) // => 4
 */
export function latenessInOrder(pieces: PiecesOfWork, order: readonly number[]): number {
	const { heads, lengths, dues, nightMs } = pieces;
	let time = Number.NEGATIVE_INFINITY;
	let worst = Number.NEGATIVE_INFINITY;
	for (const piece of order) {
		time = Math.max(time, heads[piece] ?? 0) + (lengths[piece] ?? 0);
		worst = Math.max(worst, nightMs(time) - (dues[piece] ?? 0));
	}
	return worst;
}

/**
 * When each ends on the free clock, by their places in the lists, in this order.
 *
 * @example
 * endsInOrder({ heads: Float64Array.of(0, 1), lengths: Float64Array.of(5, 1) }, [1, 0]) // => Float64Array.of(7, 2)
 */
export function endsInOrder(
	{ heads, lengths }: Pick<PiecesOfWork, 'heads' | 'lengths'>,
	order: readonly number[],
): Float64Array {
	const ends = new Float64Array(order.length);
	let time = Number.NEGATIVE_INFINITY;
	for (const piece of order) {
		time = Math.max(time, heads[piece] ?? 0) + (lengths[piece] ?? 0);
		ends[piece] = time;
	}
	return ends;
}

/** Pieces that wait to be done, by when they are due; one item per piece in each list, milliseconds. */
export type Waiting = {
	/** On the free clock; `-Infinity` where nothing holds it back. */
	readonly releases: Float64Array;
	readonly lengths: Float64Array;
	/** When it is wanted, on the free clock. */
	readonly freeDues: Float64Array;
	/** The same by the night's clock. */
	readonly dues: Float64Array;
	/** The night's clock when the free clock comes to show this. */
	readonly nightMs: (free: number) => number;
};

/**
 * The pieces for hands that are free from this moment on.
 *
 * @example
 * piecesFrom(100, { releases: Float64Array.of(-Infinity, 480), lengths: Float64Array.of(60, 45), dues: Float64Array.of(600, 720), nightMs: (free) => free }).heads // => Float64Array.of(100, 480)
 */
export function piecesFrom(
	start: number,
	{ releases, lengths, dues, nightMs }: Omit<Waiting, 'freeDues'>,
): PiecesOfWork {
	return { heads: releases.map((one) => Math.max(one, start)), lengths, dues, nightMs };
}
