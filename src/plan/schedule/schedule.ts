// A choice with everything that follows from it: stints, hand-overs, and the work in its order.

import type { Outlook } from '../demand/outlook.ts';
import type { PlannedHandOver, Work } from '../plan.ts';
import type { Choice } from './choice.ts';
import type { FreeClock } from './free-clock.ts';
import { busyWindows, freeClock } from './free-clock.ts';
import { handOversAhead } from './hand-overs-ahead.ts';
import { nodesFor } from './least-late.ts';
import { exactOrder, startingAt } from './one-machine.ts';
import { onFreeClock } from './order-work.ts';
import type { Stint } from './stints.ts';
import { stintsAhead } from './stints.ts';
import { piecesFor, type StintPiece, workInOrder } from './work-ahead.ts';

/** What follows from choices, as far as comparing them goes by it. */
export type Weighed = {
	readonly choices: readonly Choice[];
	readonly stints: readonly Stint[];
	readonly handOvers: readonly PlannedHandOver[];
	readonly clock: FreeClock;
	readonly pieces: readonly StintPiece[];
	/** By how much the latest work is late in the best order; 0 where none is. */
	readonly latenessMs: number;
	/** In no other order is the worst of the work less late. */
	readonly isInBestOrder: boolean;
};

/** The same with the work in the order in which it is shown. */
export type Schedule = Weighed & { readonly work: readonly Work[] };

/**
 * What follows from these choices, and how late it comes out.
 *
 * @example
 * weigh(outlook, choices).latenessMs // => 0
 */
export function weigh(outlook: Outlook, choices: readonly Choice[]): Weighed {
	const stints = stintsAhead(outlook, choices);
	const handOvers = handOversAhead(outlook, choices);
	const clock = freeClock(busyWindows(outlook.cues, handOvers));
	const pieces = piecesFor(outlook, stints, handOvers);
	const waiting = startingAt(clock.at(outlook.nowMs), onFreeClock(pieces, clock));
	const { latenessMs, isProved } = exactOrder(waiting, {
		enoughMs: 0,
		nodes: nodesFor(pieces.length),
	});
	return {
		choices,
		stints,
		handOvers,
		clock,
		pieces,
		latenessMs: pieces.length === 0 ? 0 : Math.round(Math.max(0, latenessMs)),
		isInBestOrder: isProved,
	};
}

/**
 * The same with its work in order.
 *
 * @example
 * scheduleOf(outlook, weigh(outlook, choices)).work.length // => 1
 */
export function scheduleOf(outlook: Outlook, all: Weighed): Schedule {
	const work = workInOrder(outlook, all.pieces, all.clock);
	return { ...all, work };
}
