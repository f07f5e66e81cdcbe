// The order in which the worst piece of work is least late, and of those the one with the least lateness in
// all: 1 | r_j | L_max, then 1 | r_j | sum T_j among its best orders, by branch and bound over their beginnings.

import { endsInOrder, exactOrder, latenessInOrder, type PiecesOfWork } from './one-machine.ts';

/** In all sets of orders together no more pieces than this are looked at: with hundreds, each takes long, and a key waits. */
const PIECES = 10_000;
/** In all beginnings of orders together, for the lateness in all. */
const BEGUN = 20_000;
/** Among more pieces than these so few beginnings lead to hardly any order: it is left as it is. */
const MANY = 70;

/**
 * How many sets of orders of so many pieces are looked at; chance never asked for more than a hundred.
 *
 * @example
 * nodesFor(20) // => 500
 * nodesFor(800) // => 13
 */
export function nodesFor(count: number): number {
	return Math.ceil(PIECES / Math.max(1, count));
}

type Wishes = {
	/** The places of the pieces, in the order wished. */
	readonly rank: readonly number[];
	/** For each piece the one that it comes after; -1 where it comes after none. */
	readonly follows: readonly number[];
	/** How many sets of orders may be looked at. */
	readonly nodes?: number;
};

/**
 * The least late order from these pieces' heads on, as near to `rank` as that allows.
 *
 * @example
 * leastLate({ heads: Float64Array.of(0, 0), lengths: Float64Array.of(5, 5), dues: Float64Array.of(4, 8), nightMs: (free) => free }, { rank: [0, 1], follows: [-1, -1] }) // => [0, 1]
 */
export function leastLate(pieces: PiecesOfWork, wishes: Wishes): readonly number[] {
	const { rank, follows, nodes = nodesFor(rank.length) } = wishes;
	if (latenessInOrder(pieces, rank) <= 0) return rank;
	const { order } = exactOrder(pieces, { enoughMs: 0, nodes });
	const least = leastInAll(pieces, wishes, inSequence(order, follows));
	return nearRank(pieces, least, rank);
}

/** What stands before the piece that it is to follow is done straight after that: the worst is no later for it. */
function inSequence(order: readonly number[], follows: readonly number[]): readonly number[] {
	return order.reduce((now, place) => {
		const first = follows[place] as number;
		if (first < 0 || now.indexOf(first) < now.indexOf(place)) return now;
		const rest = now.filter((one) => one !== place);
		return rest.toSpliced(rest.indexOf(first) + 1, 0, place);
	}, order);
}

/** Of the orders that are no later at their worst than the exact one, the one with the least lateness in all. */
function leastInAll(
	pieces: PiecesOfWork,
	{ rank, follows }: Wishes,
	exact: readonly number[],
): readonly number[] {
	const { heads, lengths, dues, nightMs } = pieces;
	const worstMs = Math.max(0, latenessInOrder(pieces, exact));
	let best = exact;
	let bestMs = inAll(pieces, exact);
	if (latenessInOrder(pieces, rank) <= worstMs && inAll(pieces, rank) <= bestMs) {
		best = rank;
		bestMs = inAll(pieces, rank);
	}
	if (rank.length > MANY) return best;
	const taken: number[] = [];
	const isTaken = new Uint8Array(rank.length);
	let left = BEGUN / rank.length;
	const endOf = (piece: number, time: number): number =>
		Math.max(time, heads[piece] as number) + (lengths[piece] as number);
	const mayBegin = (piece: number): boolean => {
		const first = follows[piece] as number;
		return isTaken[piece] === 0 && (first < 0 || isTaken[first] === 1);
	};
	const goOn = (time: number, sumMs: number): void => {
		let soonest = Number.POSITIVE_INFINITY;
		let leastMs = sumMs;
		for (const piece of rank) {
			if (isTaken[piece] === 1) continue;
			const end = endOf(piece, time);
			const lateMs = nightMs(end) - (dues[piece] as number);
			if (lateMs > worstMs) return;
			leastMs += Math.max(0, lateMs);
			if (mayBegin(piece)) soonest = Math.min(soonest, end);
		}
		if (leastMs >= bestMs) return;
		if (taken.length === rank.length) {
			best = [...taken];
			bestMs = sumMs;
		}
		for (const piece of rank) {
			// Whatever is begun after another could have been done is left to that one.
			if (!mayBegin(piece) || (heads[piece] as number) >= soonest) continue;
			if (left <= 0) return;
			left -= 1;
			const end = endOf(piece, time);
			isTaken[piece] = 1;
			taken.push(piece);
			goOn(end, sumMs + Math.max(0, nightMs(end) - (dues[piece] as number)));
			taken.pop();
			isTaken[piece] = 0;
		}
	};
	goOn(Number.NEGATIVE_INFINITY, 0);
	return best;
}

function inAll(pieces: PiecesOfWork, order: readonly number[]): number {
	const { dues, nightMs } = pieces;
	return endsInOrder(pieces, order).reduce(
		(sum, end, piece) => sum + Math.max(0, nightMs(end) - (dues[piece] as number)),
		0,
	);
}

/**
 * The order wished, where nothing becomes late by it, or later than in the order given; else that one with
 * neighbours exchanged that stand against the wish, wherever that holds.
 *
 * @example
 * nearRank({ heads: Float64Array.of(0, 0), lengths: Float64Array.of(5, 5), dues: Float64Array.of(20, 30), nightMs: (free) => free }, [1, 0], [0, 1]) // => [0, 1]
 */
export function nearRank(
	pieces: PiecesOfWork,
	order: readonly number[],
	rank: readonly number[],
): readonly number[] {
	const { heads, lengths, nightMs } = pieces;
	const before = endsInOrder(pieces, order);
	const dues = pieces.dues.map((due, piece) => Math.max(due, nightMs(before[piece] as number)));
	if (latenessInOrder({ ...pieces, dues }, rank) <= 0) return rank;
	const wish = new Int32Array(rank.length);
	for (const [at, piece] of rank.entries()) wish[piece] = at;
	const now = [...order];
	const ends = Float64Array.from(order, (piece) => before[piece] as number);
	/** Exchanges two neighbours, and moves those behind them, where none is late by that. */
	const isExchanged = (place: number): boolean => {
		const pair = [now[place] as number, now[place - 1] as number];
		const moved: number[] = [];
		let time = ends[place - 2] ?? Number.NEGATIVE_INFINITY;
		for (let at = place - 1; at < now.length; at += 1) {
			const piece = pair[at - place + 1] ?? (now[at] as number);
			time = Math.max(time, heads[piece] as number) + (lengths[piece] as number);
			if (nightMs(time) > (dues[piece] as number)) return false;
			if (at > place && time === ends[at]) break;
			moved.push(time);
		}
		now.splice(place - 1, 2, ...pair);
		ends.set(moved, place - 1);
		return true;
	};
	for (let place = 1; place < now.length; ) {
		const isNearer = (wish[now[place] as number] ?? 0) < (wish[now[place - 1] as number] ?? 0);
		place = isNearer && isExchanged(place) ? Math.max(1, place - 1) : place + 1;
	}
	return now;
}
