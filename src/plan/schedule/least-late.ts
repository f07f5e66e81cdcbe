// The order in which the worst piece of work is least late, and of those the one with the least lateness in
// all: 1 | r_j | L_max, then 1 | r_j | sum T_j among its best orders, by branch and bound over their beginnings.

import { endsInOrder, exactOrder, latenessInOrder, type PiecesOfWork } from './one-machine.ts';

/** In all sets of orders together no more pieces than this are looked at: with hundreds, each takes long, and a key waits. */
const PIECES = 10_000;
/** In all beginnings of orders together, for the lateness in all. */
const BEGUN = 20_000;

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
	const taken = new Set<number>();
	let left = BEGUN / rank.length;
	const goOn = (time: number, sumMs: number): void => {
		const rest = rank.filter((piece) => !taken.has(piece));
		const ends = heads.map((head, piece) => Math.max(time, head) + (lengths[piece] as number));
		const lateMs = ends.map((end, piece) => nightMs(end) - (dues[piece] as number));
		const least = rest.reduce((sum, piece) => sum + Math.max(0, lateMs[piece] as number), sumMs);
		if (least >= bestMs || rest.some((piece) => (lateMs[piece] as number) > worstMs)) return;
		if (rest.length === 0) {
			best = [...taken];
			bestMs = sumMs;
		}
		// Whatever is begun after another could have been done is left to that one.
		const mayBegin = rest.filter((piece) => !rest.includes(follows[piece] as number));
		const soonest = Math.min(...mayBegin.map((piece) => ends[piece] as number));
		for (const piece of mayBegin) {
			if ((heads[piece] as number) >= soonest) continue;
			if (left <= 0) return;
			left -= 1;
			taken.add(piece);
			goOn(ends[piece] as number, sumMs + Math.max(0, lateMs[piece] as number));
			taken.delete(piece);
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
	const ends = endsInOrder(pieces, order);
	const dues = pieces.dues.map((due, piece) =>
		Math.max(due, pieces.nightMs(ends[piece] as number)),
	);
	const isAsGood = (one: readonly number[]) => latenessInOrder({ ...pieces, dues }, one) <= 0;
	if (isAsGood(rank)) return rank;
	const wish = rank.map((_, piece) => rank.indexOf(piece));
	let now = order;
	for (let place = 1; place < now.length; ) {
		const [one, other] = [now[place - 1] as number, now[place] as number];
		const exchanged = now.toSpliced(place - 1, 2, other, one);
		const isNearer = (wish[other] as number) < (wish[one] as number);
		if (isNearer && isAsGood(exchanged)) {
			now = exchanged;
			place = Math.max(1, place - 1);
		} else place += 1;
	}
	return now;
}
