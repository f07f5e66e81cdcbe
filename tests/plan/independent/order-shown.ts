// The order in which work is shown, by enumeration of all orders.

import { leastWorst } from './least-worst.ts';
import type { WorkingClock } from './working-clock.ts';

/** A piece of work as it stands in the list; seconds of one clock. */
export type ShownPiece = {
	readonly instrument: string;
	/** Whose hand-over wants it: a `last` comes after the `first` of the same instrument and section. */
	readonly section: number;
	readonly part: 'whole' | 'first' | 'last';
	readonly seconds: number;
	readonly from: number;
	readonly wanted: number;
};

/** What is asked of the clock: the moment from which work is done, and the interval that is on, if any. */
export type ShownWhen = {
	readonly now: number;
	readonly clock: WorkingClock;
	/** The end of the interval that is on; null outside of one. */
	readonly intervalEnds: number | null;
};

export type Shown<Piece extends ShownPiece> = {
	readonly piece: Piece;
	readonly start: number;
	readonly finish: number;
	/** `wanted` less `finish`. */
	readonly slack: number;
};

/**
 * The pieces in the order shown, each as early as the order allows. Of all orders: the worst lateness least
 * (nothing late is 0); of those the lateness of all together least; of those the first by this rank, place by
 * place: in an interval early pieces that may be begun before it ends, what may be begun now, the time
 * wanted, the order given. Meant for up to eight pieces: it looks at all orders where some are late.
 */
export function orderShown<Piece extends ShownPiece>(
	pieces: readonly Piece[],
	{ now, clock, intervalEnds }: ShownWhen,
): readonly Shown<Piece>[] {
	const rank = (piece: Piece): readonly number[] => {
		const isEarly = intervalEnds !== null && piece.part === 'first' && piece.from < intervalEnds;
		return [isEarly ? 0 : 1, piece.from > now ? 1 : 0, piece.wanted];
	};
	const jobs = pieces.map((piece) => ({ ...piece, from: Math.max(now, piece.from) }));
	const least = msLate(leastWorst(jobs, clock));
	const ranked = [...pieces].sort((a, b) => compareRanks(rank(a), rank(b)));
	let best: { worst: number; sum: number; order: readonly Shown<Piece>[] } | null = null;

	const visit = (rest: readonly Piece[], done: readonly Shown<Piece>[], late: Late): void => {
		if (late.worst > least) return;
		if (best !== null) {
			if (best.worst === 0 && best.sum === 0) return;
			const difference = late.worst - best.worst || late.sum - best.sum;
			if (difference >= 0) return;
		}
		if (rest.length === 0) {
			best = { ...late, order: done };
			return;
		}
		for (const piece of rest) {
			if (piece.part === 'last' && rest.some((one) => isFirstOf(one, piece))) continue;
			const free = Math.max(now, piece.from, done.at(-1)?.finish ?? now);
			const finish = clock.momentAt(clock.workedAt(free) + piece.seconds);
			const shown = { piece, start: clock.freeFrom(free), finish, slack: piece.wanted - finish };
			const ms = msLate(-shown.slack);
			visit(
				rest.filter((one) => one !== piece),
				[...done, shown],
				{ worst: Math.max(late.worst, ms), sum: late.sum + ms },
			);
		}
	};
	visit(ranked, [], { worst: 0, sum: 0 });
	return best!.order;
}

function msLate(seconds: number): number {
	return Math.max(0, Math.round(seconds * 1000));
}

type Late = { readonly worst: number; readonly sum: number };

function isFirstOf(one: ShownPiece, last: ShownPiece): boolean {
	return one.part === 'first' && one.instrument === last.instrument && one.section === last.section;
}

function compareRanks(one: readonly number[], other: readonly number[]): number {
	return one.map((n, i) => n - other[i]!).find((n) => n !== 0) ?? 0;
}
