// The order that makes the worst piece of work least late, proved. Always what is wanted first of what can be begun gives an order; where a
// piece that is wanted later holds up those that make it late, it goes either before all of them or after
// all of them ("The one-machine sequencing problem", European Journal of Operational Research 11, 1982;
// from memory). Late by the night's clock, which never runs slower than the free one: a due time
// brought forward by the work to follow asks no more than that work does.

import { latenessBound } from './lateness-bound.ts';
import { Line } from './line-up.ts';
import type { PiecesOfWork } from './pieces-of-work.ts';
import { latenessInOrder } from './pieces-of-work.ts';

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
	/** Orders later than this are of no use and left aside; left out, all are of use. */
	readonly uselessAboveMs?: number;
};

/** The orders that keep to these heads and dues, which are as given or narrower. */
type Node = PiecesOfWork & { readonly boundMs: number };

/**
 * The best order, or the best found with this effort. Of pieces that are wanted at the same time the
 * first in the lists goes first.
 *
 * @example
 * exactOrder({ heads: Float64Array.of(0, 1), lengths: Float64Array.of(5, 1), dues: Float64Array.of(10, 2), nightMs: (free) => free }, { enoughMs: -Infinity, nodes: 9 }) // => { order: [1, 0], latenessMs: 0, boundMs: 0, isProved: true, nodes: 2 }
 */
export function exactOrder(
	pieces: PiecesOfWork,
	{ enoughMs, nodes: most, uselessAboveMs = Number.POSITIVE_INFINITY }: Effort,
): ExactOrder {
	let open: Node[] = [{ ...pieces, boundMs: latenessBound(pieces).latenessMs }];
	let order: readonly number[] = [];
	let latenessMs = Number.POSITIVE_INFINITY;
	for (let nodes = 0; ; nodes += 1) {
		const node = leastOf(open);
		const boundMs = Math.min(latenessMs, node?.boundMs ?? uselessAboveMs);
		const isProved = latenessMs <= Math.max(enoughMs, boundMs);
		if (node === undefined || isProved || nodes >= most) {
			return { order, latenessMs, boundMs, isProved, nodes };
		}
		const found = inTurn(node);
		const foundMs = latenessInOrder(pieces, found.order);
		if (foundMs < latenessMs) {
			order = found.order;
			latenessMs = foundMs;
		}
		open = [...open.filter((one) => one !== node), ...divided(node, found)].filter(
			(one) => one.boundMs < latenessMs && one.boundMs <= uselessAboveMs,
		);
	}
}

function leastOf(nodes: readonly Node[]): Node | undefined {
	return nodes.reduce<Node | undefined>(
		(least, one) => (least === undefined || one.boundMs < least.boundMs ? one : least),
		undefined,
	);
}

type InTurn = {
	readonly order: readonly number[];
	/** The place in the order of the piece that is latest; -1 without any. */
	readonly latest: number;
	/** The place since which work goes on without a pause up to there. */
	readonly since: number;
};

/** Of what can be begun, always the piece wanted first; never idle while one can be. */
function inTurn({ heads, lengths, dues, nightMs }: PiecesOfWork): InTurn {
	const line = new Line({ heads, dues });
	const order: number[] = [];
	let worst = Number.NEGATIVE_INFINITY;
	let latest = -1;
	let since = -1;
	let block = 0;
	let time = Number.NEGATIVE_INFINITY;
	while (order.length < heads.length) {
		line.letIn(time);
		let piece = line.takeFirst();
		if (piece < 0) {
			block = order.length;
			time = line.nextHead;
			line.letIn(time);
			piece = line.takeFirst();
		}
		time += lengths[piece] ?? 0;
		const late = nightMs(time) - (dues[piece] ?? 0);
		if (late > worst) {
			worst = late;
			latest = order.length;
			since = block;
		}
		order.push(piece);
	}
	return { order, latest, since };
}

/** Those of a node's orders that may be better than the one found: none, or two sets of them. */
function divided(node: Node, { order, latest, since }: InTurn): readonly Node[] {
	const { heads, lengths, dues } = node;
	const due = dues[order[latest] ?? 0] ?? 0;
	let head = Number.POSITIVE_INFINITY;
	let length = 0;
	for (let place = latest; place >= since; place -= 1) {
		const piece = order[place] ?? 0;
		if ((dues[piece] ?? 0) > due) {
			return [
				withNode(node, { dues: dues.with(piece, due - length) }),
				withNode(node, { heads: heads.with(piece, head + length) }),
			];
		}
		head = Math.min(head, heads[piece] ?? 0);
		length += lengths[piece] ?? 0;
	}
	return [];
}

function withNode(node: Node, narrower: Partial<PiecesOfWork>): Node {
	const pieces = { ...node, ...narrower };
	return { ...pieces, boundMs: Math.max(node.boundMs, latenessBound(pieces).latenessMs) };
}
