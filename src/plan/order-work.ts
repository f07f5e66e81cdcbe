// In which order the work is done, and when each piece then begins and ends. One pair of hands, no
// piece put down for another.

import type { NightMs } from '../journal/entry.ts';
import type { FreeClock } from './free-clock.ts';
import { leastLateFrom } from './least-late-from.ts';
import type { PiecesOfWork, Waiting } from './pieces-of-work.ts';
import { finishesInOrder, latenessInOrder, piecesFrom } from './pieces-of-work.ts';
import { latestStarts, standingOrder } from './standing-order.ts';

/** A piece of work before it has its place. */
export type Piece = {
	readonly seconds: number;
	/** Not to be begun before, whatever the time is now; `-Infinity` where nothing holds it back. */
	readonly releaseMs: NightMs;
	readonly dueMs: NightMs;
};

/** A piece of work in its place. */
export type Timed<P extends Piece> = {
	readonly piece: P;
	readonly startMs: NightMs;
	readonly finishMs: NightMs;
	/** The latest moment at which it can be begun without making itself or anything after it late. */
	readonly beginByMs: NightMs;
};

export type Ordered<P extends Piece> = {
	readonly timed: readonly Timed<P>[];
	/** In no other order is the worst of them less late. */
	readonly isProved: boolean;
};

/**
 * The pieces in the order in which to do them, begun at `nowMs`. By when they are due, ties in the order
 * given, as long as nothing gets late by that; else in the order that leaves most time before it has to be
 * begun; once that makes something late, in the one in which the worst is least late. As long as all can
 * be on time the order does not depend on the time, and the latest moments never do: they stand still
 * while nothing happens.
 *
 * @example
 * orderWork([{ seconds: 60, releaseMs: 0, dueMs: 200000 }, { seconds: 45, releaseMs: 0, dueMs: 100000 }], { nowMs: 10000, clock: freeClock([]) }).timed.map(({ finishMs, beginByMs }) => [finishMs, beginByMs]) // => [[55000, 55000], [115000, 140000]]
 */
export function orderWork<P extends Piece>(
	pieces: readonly P[],
	{ nowMs, clock }: { readonly nowMs: NightMs; readonly clock: FreeClock },
): Ordered<P> {
	const byDue = pieces.toSorted((one, other) => one.dueMs - other.dueMs);
	const waiting = onFreeClock(byDue, clock);
	const standing = standingOrder(waiting);
	const latest = latestStarts(waiting, standing);
	const now = clock.at(nowMs);
	const { order, isProved } = orderFrom(now, waiting, standing);
	let free = now;
	const timed = order.flatMap((place): readonly Timed<P>[] => {
		const piece = byDue[place];
		if (piece === undefined) return [];
		const start = Math.max(free, waiting.releases[place] ?? 0);
		free = start + (waiting.lengths[place] ?? 0);
		return [
			{
				piece,
				startMs: Math.max(clock.lastMs(start), nowMs),
				finishMs: clock.firstMs(free),
				beginByMs: clock.lastMs(latest[place] ?? 0),
			},
		];
	});
	return { timed, isProved };
}

/**
 * The pieces on the free clock, in the order given.
 *
 * @example
 * onFreeClock([{ seconds: 2, releaseMs: 0, dueMs: 12 }], freeClock([{ fromMs: 10, untilMs: 15 }])).freeDues // => Float64Array.of(10)
 */
export function onFreeClock(pieces: readonly Piece[], clock: FreeClock): Waiting {
	const releases = new Float64Array(pieces.length);
	const lengths = new Float64Array(pieces.length);
	const freeDues = new Float64Array(pieces.length);
	const dues = new Float64Array(pieces.length);
	for (const [place, { releaseMs, seconds, dueMs }] of pieces.entries()) {
		releases[place] = Number.isFinite(releaseMs) ? clock.at(releaseMs) : releaseMs;
		lengths[place] = seconds * 1000;
		freeDues[place] = clock.at(dueMs);
		dues[place] = dueMs;
	}
	return { releases, lengths, freeDues, dues, nightMs: clock.firstMs };
}

/** The standing order, unless the worst is less late in another, or as late and all together less. */
function orderFrom(
	now: number,
	waiting: Waiting,
	standing: readonly number[],
): { readonly order: readonly number[]; readonly isProved: boolean } {
	const pieces = piecesFrom(now, waiting);
	const standingMs = latenessInOrder(pieces, standing);
	if (standingMs <= 0) return { order: standing, isProved: true };
	const { order, latenessMs, isProved } = leastLateFrom(now, waiting);
	const isBetter =
		latenessMs < standingMs || lateInAll(pieces, order) < lateInAll(pieces, standing);
	return { order: isBetter ? order : standing, isProved };
}

function lateInAll(pieces: PiecesOfWork, order: readonly number[]): number {
	return finishesInOrder(pieces, order).reduce(
		(sum, finishMs, piece) => sum + Math.max(0, finishMs - (pieces.dues[piece] ?? 0)),
		0,
	);
}
