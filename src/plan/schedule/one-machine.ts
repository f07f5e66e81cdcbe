// The work of one pair of hands as mere numbers: pieces with releases and due times, the worst of them as
// little late as can be (1 | r_j | L_max), on a clock that stands still while hands are not free.
// Jackson's rule, with pieces put down for others, gives the bound; without, the orders that Carlier's
// branch and bound goes on from ("The one-machine sequencing problem", European Journal of Operational
// Research 11, 1982; all from memory).

/** One item per piece in each list. */
export type PiecesOfWork = {
	/** What the free clock shows when it can be begun; `-Infinity` where nothing holds it back. */
	readonly heads: Float64Array;
	/** Milliseconds of free time. */
	readonly lengths: Float64Array;
	/** When it is wanted, by the night's clock. */
	readonly dues: Float64Array;
	/** The night's clock, when the free clock comes to show this. Never slower than the free clock. */
	readonly nightMs: (free: number) => number;
};

/**
 * The pieces for hands that are free from this moment on.
 *
 * @example
 * startingAt(100, { heads: Float64Array.of(-Infinity, 480), lengths: Float64Array.of(60, 45), dues: Float64Array.of(600, 720), nightMs: (free) => free }).heads // => Float64Array.of(100, 480)
 */
export function startingAt(free: number, pieces: PiecesOfWork): PiecesOfWork {
	return { ...pieces, heads: pieces.heads.map((head) => Math.max(head, free)) };
}

/**
 * When each ends on the free clock, by their places in the lists, done in this order as soon as can be.
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
		time = Math.max(time, heads[piece] as number) + (lengths[piece] as number);
		ends[piece] = time;
	}
	return ends;
}

/**
 * By how much the worst piece then ends after it is wanted; below 0 when all are early, `-Infinity` without any.
 *
 * @example
 * latenessInOrder({ heads: Float64Array.of(0, 1), lengths: Float64Array.of(5, 1), dues: Float64Array.of(10, 2), nightMs: (free) => free }, [0, 1]) // => 4
 */
export function latenessInOrder(pieces: PiecesOfWork, order: readonly number[]): number {
	const ends = endsInOrder(pieces, order);
	let worst = Number.NEGATIVE_INFINITY;
	for (const piece of order) {
		const late = pieces.nightMs(ends[piece] as number) - (pieces.dues[piece] as number);
		worst = Math.max(worst, late);
	}
	return worst;
}

type Jackson = {
	/** By when they are done. */
	readonly order: readonly number[];
	/** `-Infinity` without any pieces. */
	readonly latenessMs: number;
	/** The place in the order of the latest piece; -1 without any. */
	readonly latest: number;
	/** The place since which work goes on without a pause up to there. */
	readonly since: number;
};

/**
 * Jackson's rule: of what can be begun always the piece wanted first, of those the first in the lists; never
 * idle while one can be. With pieces put down for others no order is less late.
 *
 * @example
 * jackson({ heads: Float64Array.of(0, 2, 4), lengths: Float64Array.of(6, 2, 3), dues: Float64Array.of(20, 5, 9), nightMs: (free) => free }, { isPreemptive: true }) // => { order: [1, 2, 0], latenessMs: -1, latest: 0, since: 0 }
 */
export function jackson(
	{ heads, lengths, dues, nightMs }: PiecesOfWork,
	{ isPreemptive }: { readonly isPreemptive: boolean },
): Jackson {
	const byHead = inOrderOf(heads);
	const left = lengths.slice();
	/** Those that can be begun, the one wanted first at the end. */
	const line: number[] = [];
	const order: number[] = [];
	let time = Number.NEGATIVE_INFINITY;
	let block = 0;
	let worst = { latenessMs: time, latest: -1, since: -1 };
	let next = 0;
	let headMs = heads[byHead[0] as number] ?? Number.POSITIVE_INFINITY;
	while (order.length < heads.length) {
		if (line.length === 0 && headMs > time) {
			time = headMs;
			block = order.length;
		}
		while (headMs <= time) {
			insertInLine(line, byHead[next] as number, dues);
			next += 1;
			headMs = heads[byHead[next] as number] ?? Number.POSITIVE_INFINITY;
		}
		const piece = line.at(-1) as number;
		const end = time + (left[piece] as number);
		time = isPreemptive ? Math.min(end, headMs) : end;
		left[piece] = end - time;
		if (time < end) continue;
		line.pop();
		const latenessMs = nightMs(time) - (dues[piece] as number);
		if (latenessMs > worst.latenessMs) {
			worst = { latenessMs, latest: order.length, since: block };
		}
		order.push(piece);
	}
	return { order, ...worst };
}

/** The pieces by their heads. Put in one by one, as below: lists are short, and asked for by the ten thousand. */
function inOrderOf(heads: Float64Array): Uint32Array {
	const pieces = new Uint32Array(heads.length);
	for (let piece = 0; piece < heads.length; piece += 1) {
		const head = heads[piece] as number;
		let place = piece;
		for (; place > 0; place -= 1) {
			const before = pieces[place - 1] as number;
			if ((heads[before] as number) <= head) break;
			pieces[place] = before;
		}
		pieces[place] = piece;
	}
	return pieces;
}

/** Puts the piece before those at the end that are wanted sooner, or at once and stand before it in the lists. */
function insertInLine(line: number[], piece: number, dues: Float64Array): void {
	const due = dues[piece] as number;
	let place = line.push(piece) - 1;
	for (; place > 0; place -= 1) {
		const other = line[place - 1] as number;
		const sooner = (dues[other] as number) - due;
		if (sooner > 0 || (sooner === 0 && other > piece)) break;
		line[place] = other;
	}
	line[place] = piece;
}

export type ExactOrder = {
	/** The pieces by their places in the lists. */
	readonly order: readonly number[];
	readonly latenessMs: number;
	/** No order is less late than this. */
	readonly boundMs: number;
	/** No order is less late, or this one is late by no more than was asked for. */
	readonly isProved: boolean;
	/** How many sets of orders were looked at. */
	readonly nodes: number;
};

export type Effort = {
	/** An order that is no later than this will do. */
	readonly enoughMs: number;
	/** How many sets of orders may be looked at. */
	readonly nodes: number;
};

/** The orders that keep to these heads and dues, which are as given or narrower. */
type Node = PiecesOfWork & { readonly boundMs: number };

/**
 * The least late order, or the best found with this effort, by Carlier's branch and bound. Late by the night's
 * clock, which never runs slower than the free one: a due time brought forward by the work to follow asks no
 * more than that work does.
 *
 * @example
 * exactOrder({ heads: Float64Array.of(0, 1), lengths: Float64Array.of(5, 1), dues: Float64Array.of(10, 2), nightMs: (free) => free }, { enoughMs: -Infinity, nodes: 9 }) // => { order: [1, 0], latenessMs: 0, boundMs: 0, isProved: true, nodes: 2 }
 */
export function exactOrder(pieces: PiecesOfWork, { enoughMs, nodes: most }: Effort): ExactOrder {
	let open: readonly Node[] = [nodeOf(pieces, Number.NEGATIVE_INFINITY)];
	let order: readonly number[] = [];
	let latenessMs = Number.POSITIVE_INFINITY;
	for (let nodes = 0; ; nodes += 1) {
		const boundMs = Math.min(latenessMs, ...open.map((one) => one.boundMs));
		const node = open.find((one) => one.boundMs === boundMs);
		const isProved = latenessMs <= Math.max(enoughMs, boundMs);
		if (node === undefined || isProved || nodes >= most) {
			return { order, latenessMs, boundMs, isProved, nodes };
		}
		const found = jackson(node, { isPreemptive: false });
		const foundMs = latenessInOrder(pieces, found.order);
		if (foundMs < latenessMs) {
			order = found.order;
			latenessMs = foundMs;
		}
		open = [...open.filter((one) => one !== node), ...divided(node, found)].filter(
			(one) => one.boundMs < latenessMs,
		);
	}
}

/**
 * Those of a node's orders that may be better than the one found: none, or two sets of them. A piece that is
 * wanted later and holds up those that make it late goes before all of them or after all of them.
 */
function divided(node: Node, { order, latest, since }: Jackson): readonly Node[] {
	const { heads, lengths, dues, boundMs } = node;
	const block = order.slice(since, latest + 1);
	const due = dues[block.at(-1) as number] as number;
	const at = block.findLastIndex((piece) => (dues[piece] as number) > due);
	if (at < 0) return [];
	const piece = block[at] as number;
	const held = block.slice(at + 1);
	const head = Math.min(...held.map((one) => heads[one] as number));
	const length = held.reduce((sum, one) => sum + (lengths[one] as number), 0);
	return [
		nodeOf({ ...node, dues: dues.with(piece, due - length) }, boundMs),
		nodeOf({ ...node, heads: heads.with(piece, head + length) }, boundMs),
	];
}

function nodeOf(pieces: PiecesOfWork, leastMs: number): Node {
	const { latenessMs } = jackson(pieces, { isPreemptive: true });
	return { ...pieces, boundMs: Math.max(leastMs, latenessMs) };
}
