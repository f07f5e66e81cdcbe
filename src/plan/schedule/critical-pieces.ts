// Which pieces of work make the worst of them as late as it is at the least, in whatever order they are done.

import type { NightMs } from '../../journal/entry.ts';
import type { FreeClock } from './free-clock.ts';
import { latenessBound } from './lateness-bound.ts';
import type { Piece } from './order-work.ts';
import { onFreeClock } from './order-work.ts';
import { piecesFrom } from './pieces-of-work.ts';

/**
 * The pieces that alone make it so, from `nowMs` on: they cannot all be done sooner, and none is due later.
 *
 * @example
 * criticalPieces([{ seconds: 6, releaseMs: 0, dueMs: 20000 }, { seconds: 2, releaseMs: 2000, dueMs: 5000 }, { seconds: 3, releaseMs: 4000, dueMs: 9000 }], { nowMs: 0, clock: freeClock([]) }) // => [{ seconds: 2, releaseMs: 2000, dueMs: 5000 }]
 */
export function criticalPieces<P extends Piece>(
	pieces: readonly P[],
	{ nowMs, clock }: { readonly nowMs: NightMs; readonly clock: FreeClock },
): readonly P[] {
	const { heads, lengths, dues, nightMs } = piecesFrom(clock.at(nowMs), onFreeClock(pieces, clock));
	const { latest, finish } = latenessBound({ heads, lengths, dues, nightMs });
	const due = dues[latest] ?? 0;
	const isFrom = (head: number) => (_: unknown, place: number) =>
		(heads[place] ?? 0) >= head && (dues[place] ?? 0) <= due;
	// From one of the heads on there was nothing else to do, and no time to lose.
	const since = heads.toSorted().find((head) => {
		const length = lengths.filter(isFrom(head)).reduce((sum, one) => sum + one, 0);
		return head + length === finish;
	});
	return since === undefined ? [] : pieces.filter(isFrom(since));
}
