// In which order the work is done, and when each piece then begins and ends. One pair of hands, no
// piece put down for another.

import type { NightMs } from '../../journal/entry.ts';
import type { FreeClock } from './free-clock.ts';
import { latestStarts } from './latest-starts.ts';
import { leastLate } from './least-late.ts';
import { type PiecesOfWork, startingAt } from './one-machine.ts';

/** A piece of work before it has its place. */
export type Piece = {
	readonly seconds: number;
	/** Not to be begun before, whatever the time is now; `-Infinity` where nothing holds it back. */
	readonly releaseMs: NightMs;
	readonly dueMs: NightMs;
	/** A touch-up follows it. */
	readonly isEarly: boolean;
	/** What its work is done for: a touch-up follows what is done early for the same. */
	readonly of?: object;
};

/** A piece of work in its place. */
export type Timed<P extends Piece> = {
	readonly piece: P;
	readonly startMs: NightMs;
	readonly finishMs: NightMs;
	/** The latest moment at which it can be begun without making itself or anything after it late. */
	readonly beginByMs: NightMs;
};

type When = {
	readonly nowMs: NightMs;
	readonly clock: FreeClock;
	/** When the interval that is on ends: what can be done early in it is done first. Null where none is. */
	readonly intervalEndsMs: NightMs | null;
	/** How many sets of orders may be looked at; left out, as many as for a list that is shown. */
	readonly nodes?: number;
};

/**
 * The pieces in the order in which to do them, begun at `nowMs`: the one in which the worst is least late; of
 * these the one with the least lateness in all; of these by the time wanted, what may not yet be begun never
 * before what may, and in an interval what can be done early first while that delays nothing. The latest
 * moments to begin do not depend on the time: they stand still while nothing happens.
 *
 * @example
 * orderWork([{ seconds: 60, releaseMs: 0, dueMs: 200000, isEarly: false }, { seconds: 45, releaseMs: 0, dueMs: 100000, isEarly: false }], { nowMs: 10000, clock: freeClock([]), intervalEndsMs: null }).map(({ finishMs, beginByMs }) => [finishMs, beginByMs]) // => [[55000, 55000], [115000, 140000]]
 */
export function orderWork<P extends Piece>(pieces: readonly P[], when: When): readonly Timed<P>[] {
	const { nowMs, clock } = when;
	const byDue = inDueOrder(pieces);
	const waiting = onFreeClock(byDue, clock);
	const latest = latestStarts(waiting, clock);
	let free = clock.at(nowMs);
	return orderShown(byDue, waiting, when).map((place): Timed<P> => {
		const start = Math.max(free, waiting.heads[place] as number);
		free = start + (waiting.lengths[place] as number);
		return {
			piece: byDue[place] as P,
			startMs: Math.max(clock.lastMs(start), nowMs),
			finishMs: clock.firstMs(free),
			beginByMs: clock.lastMs(latest[place] as number),
		};
	});
}

/**
 * What stands first in that order, as far as it is known after so many sets of orders; undefined where there
 * is nothing.
 *
 * @example
 * firstShown([{ seconds: 60, releaseMs: 0, dueMs: 200000, isEarly: false }], { nowMs: 0, clock: freeClock([]), intervalEndsMs: null, nodes: 9 }).seconds // => 60
 */
export function firstShown<P extends Piece>(pieces: readonly P[], when: When): P | undefined {
	const byDue = inDueOrder(pieces);
	return byDue[orderShown(byDue, onFreeClock(byDue, when.clock), when)[0] ?? -1];
}

function inDueOrder<P extends Piece>(pieces: readonly P[]): readonly P[] {
	return pieces.toSorted((one, other) => one.dueMs - other.dueMs);
}

/**
 * The pieces on the free clock, in the order given.
 *
 * @example
 * onFreeClock([{ seconds: 2, releaseMs: 12, dueMs: 20, isEarly: false }], freeClock([{ fromMs: 10, untilMs: 15 }])).heads // => Float64Array.of(10)
 */
export function onFreeClock(pieces: readonly Piece[], clock: FreeClock): PiecesOfWork {
	const count = pieces.length;
	const [heads, lengths, dues] = [
		new Float64Array(count),
		new Float64Array(count),
		new Float64Array(count),
	];
	pieces.forEach(({ releaseMs, seconds, dueMs }, place) => {
		heads[place] = Number.isFinite(releaseMs) ? clock.at(releaseMs) : releaseMs;
		lengths[place] = seconds * 1000;
		dues[place] = dueMs;
	});
	return { heads, lengths, dues, nightMs: clock.firstMs };
}

function orderShown(
	byDue: readonly Piece[],
	waiting: PiecesOfWork,
	{ nowMs, clock, intervalEndsMs, nodes }: When,
): readonly number[] {
	const isFirst = ({ isEarly, releaseMs }: Piece) =>
		isEarly && intervalEndsMs !== null && releaseMs < intervalEndsMs;
	const figures = byDue.map((one) => (isFirst(one) ? 0 : 2) + (one.releaseMs <= nowMs ? 0 : 1));
	const figureOf = (place: number) => figures[place] as number;
	const rank = [...byDue.keys()].sort((one, other) => figureOf(one) - figureOf(other));
	return leastLate(startingAt(clock.at(nowMs), waiting), {
		rank,
		follows: byDue.map((one) => followed(byDue, one)),
		...(nodes === undefined ? {} : { nodes }),
	});
}

/** The place of the early piece that a touch-up follows; -1 where there is none. */
function followed(pieces: readonly Piece[], { of, isEarly }: Piece): number {
	if (isEarly || of === undefined) return -1;
	return pieces.findIndex((one) => one.isEarly && one.of === of);
}
