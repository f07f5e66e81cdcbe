// The order in which the worst piece of work is least late, and of those the one with the least lateness in
// all: 1 | r_j | L_max, then 1 | r_j | sum T_j among its best orders.

import { endsInOrder, exactOrder, latenessInOrder, type PiecesOfWork } from './one-machine.ts';

/** Sets of orders looked at for the worst lateness: chance never asked for more than a hundred. */
const NODES = 2000;
/** In all of them together no more pieces than this are looked at: with hundreds, each takes long, and a key waits. */
const PIECES = 10_000;
/** Beginnings of orders looked at for the lateness in all; fewer where there are many pieces. */
const BEGINNINGS = 1000;
const BEGUN = 20_000;
/** Among more pieces than these so few beginnings lead to hardly any order: it is left as it is. */
const MANY = 70;

/**
 * How many sets of orders of so many pieces are looked at.
 *
 * @example
 * nodesFor(20) // => 500
 * nodesFor(800) // => 13
 */
export function nodesFor(count: number): number {
	return Math.ceil(Math.min(NODES, PIECES / Math.max(1, count)));
}

export type LeastLate = {
	readonly order: readonly number[];
	/** In no order is the worst less late. */
	readonly isProved: boolean;
};

export type Wishes = {
	/** The places of the pieces, in the order wished. */
	readonly rank: readonly number[];
	/** For each piece the one that it comes after; -1 where it comes after none. */
	readonly follows: readonly number[];
	/** How many sets of orders may be looked at; left out, as many as for a list that is shown. */
	readonly nodes?: number;
};

/**
 * The least late order from these pieces' heads on, as near to `rank` as that allows.
 *
 * @example
 * leastLate({ heads: Float64Array.of(0, 0), lengths: Float64Array.of(5, 5), dues: Float64Array.of(4, 8), nightMs: (free) => free }, { rank: [0, 1], follows: [-1, -1] }).order // => [0, 1]
 */
export function leastLate(pieces: PiecesOfWork, wishes: Wishes): LeastLate {
	const { nodes = nodesFor(pieces.heads.length) } = wishes;
	const found = exactOrder(pieces, { enoughMs: 0, nodes });
	const exact = inSequence(found.order, wishes.follows);
	const worstMs = Math.max(0, latenessInOrder(pieces, exact));
	const order = worstMs === 0 ? exact : leastInAll(pieces, { ...wishes, worstMs, exact });
	return { order: nearRank(pieces, order, wishes.rank), isProved: found.isProved };
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

type InAll = Wishes & { readonly worstMs: number; readonly exact: readonly number[] };

/** Branch and bound over the beginnings of orders, none later than `worstMs` at its worst, by their lateness in all. */
function leastInAll(
	pieces: PiecesOfWork,
	{ rank, follows, worstMs, exact }: InAll,
): readonly number[] {
	const { heads, lengths, dues, nightMs } = pieces;
	const count = heads.length;
	let best: readonly number[] = [];
	let bestMs = Number.POSITIVE_INFINITY;
	for (const order of [rank, exact]) {
		const sum = inAll(pieces, order);
		if (latenessInOrder(pieces, order) <= worstMs && sum < bestMs) {
			best = order;
			bestMs = sum;
		}
	}
	if (count > MANY) return best;
	const taken: number[] = [];
	const isTaken = new Uint8Array(count);
	let left = Math.min(BEGINNINGS, BEGUN / count);
	const goOn = (time: number, lateMs: number): void => {
		if (taken.length === count) {
			best = taken.slice();
			bestMs = lateMs;
			return;
		}
		// Whatever is begun after another could have been done is left to that one.
		let soonest = Number.POSITIVE_INFINITY;
		let restMs = lateMs;
		for (let piece = 0; piece < count; piece += 1) {
			if (isTaken[piece] === 1) continue;
			const finish = Math.max(time, heads[piece] as number) + (lengths[piece] as number);
			soonest = Math.min(soonest, finish);
			const late = nightMs(finish) - (dues[piece] as number);
			if (late > worstMs) return;
			restMs += Math.max(0, late);
		}
		if (restMs >= bestMs) return;
		for (const piece of rank) {
			const first = follows[piece] as number;
			if (isTaken[piece] === 1 || (first >= 0 && isTaken[first] === 0)) continue;
			if ((heads[piece] as number) >= soonest) continue;
			if (left <= 0) return;
			left -= 1;
			const finish = Math.max(time, heads[piece] as number) + (lengths[piece] as number);
			const late = Math.max(0, nightMs(finish) - (dues[piece] as number));
			isTaken[piece] = 1;
			taken.push(piece);
			goOn(finish, lateMs + late);
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

/** Whether the worst is no later in this order than in the other, nor all together. */
function isAsGood(pieces: PiecesOfWork, one: readonly number[], other: readonly number[]): boolean {
	const worstMs = Math.max(0, latenessInOrder(pieces, other));
	return latenessInOrder(pieces, one) <= worstMs && inAll(pieces, one) <= inAll(pieces, other);
}

/**
 * The order wished, where it is as good; else the order given with neighbours exchanged that stand against it,
 * wherever none becomes late by that, or later than it is.
 *
 * @example
 * nearRank({ heads: Float64Array.of(0, 0), lengths: Float64Array.of(5, 5), dues: Float64Array.of(20, 30), nightMs: (free) => free }, [1, 0], [0, 1]) // => [0, 1]
 */
export function nearRank(
	pieces: PiecesOfWork,
	order: readonly number[],
	rank: readonly number[],
): readonly number[] {
	const endsOfPieces = endsInOrder(pieces, order);
	const dues = pieces.dues.map((due, piece) =>
		Math.max(due, pieces.nightMs(endsOfPieces[piece] as number)),
	);
	if (isAsGood(pieces, rank, order)) return rank;
	const ranks = new Int32Array(rank.length);
	rank.forEach((piece, place) => {
		ranks[piece] = place;
	});
	const now = [...order];
	const ends = Float64Array.from(order, (piece) => endsOfPieces[piece] as number);
	const isNeverLate = { ...pieces, dues };
	for (let place = 1; place < now.length; place = place < 1 ? 1 : place + 1) {
		const before = now[place - 1] as number;
		const after = now[place] as number;
		if ((ranks[before] as number) < (ranks[after] as number)) continue;
		now[place - 1] = after;
		now[place] = before;
		const changed = endsFrom(isNeverLate, { order: now, place: place - 1, ends });
		if (changed === null) {
			now[place - 1] = before;
			now[place] = after;
			continue;
		}
		ends.set(changed, place - 1);
		place -= 2;
	}
	return now;
}

type Exchanged = {
	readonly order: readonly number[];
	/** The first of the two that were exchanged. */
	readonly place: number;
	/** When each place of the order ended before, on the free clock. */
	readonly ends: Float64Array;
};

/** The ends that are others from this place on; null where something is late by that. */
function endsFrom(
	{ heads, lengths, dues, nightMs }: PiecesOfWork,
	{ order, place, ends }: Exchanged,
): readonly number[] | null {
	const changed: number[] = [];
	let time = ends[place - 1] ?? Number.NEGATIVE_INFINITY;
	for (let at = place; at < order.length; at += 1) {
		const piece = order[at] as number;
		time = Math.max(time, heads[piece] as number) + (lengths[piece] as number);
		if (nightMs(time) > (dues[piece] as number)) return null;
		// From there on nothing is moved.
		if (at > place && time === ends[at]) break;
		changed.push(time);
	}
	return changed;
}
