// A choice with everything that follows from it: stints, hand-overs, and the work in its order.

import type { Outlook } from '../demand/outlook.ts';
import type { Work } from '../plan.ts';
import type { Choice } from './choice.ts';
import { busyWindows, type FreeClock, freeClock } from './free-clock.ts';
import { type HandOversAhead, handOversAhead } from './hand-overs-ahead.ts';
import { nodesFor } from './least-late.ts';
import { exactOrder, startingAt } from './one-machine.ts';
import { onFreeClock, orderWork } from './order-work.ts';
import { intervalEnd, piecesFor, type StintPiece } from './work-ahead.ts';

/** What follows from choices, as far as comparing them goes by it. */
export type Weighed = HandOversAhead & {
	readonly choices: readonly Choice[];
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
	const { handOvers, stints } = handOversAhead(outlook, choices);
	const clock = freeClock(busyWindows(outlook.cues, handOvers));
	const pieces = piecesFor(outlook, stints);
	const waiting = startingAt(clock.at(outlook.nowMs), onFreeClock(pieces, clock));
	const { latenessMs, isProved } = exactOrder(waiting, {
		enoughMs: 0,
		nodes: nodesFor(pieces.length),
	});
	return {
		choices,
		handOvers,
		stints,
		clock,
		pieces,
		latenessMs: pieces.length === 0 ? 0 : Math.round(Math.max(0, latenessMs)),
		isInBestOrder: isProved,
	};
}

/**
 * The same with its work in the order in which to do it, and the time that each piece has.
 *
 * @example
 * scheduleOf(outlook, weighed).work.map(({ instrument, seconds }) => [instrument, seconds]) // => [['A1', 60]]
 */
export function scheduleOf(outlook: Outlook, weighed: Weighed): Schedule {
	const { nowMs } = outlook;
	const { pieces, clock } = weighed;
	const timed = orderWork(pieces, { nowMs, clock, intervalEndsMs: intervalEnd(outlook) });
	const work = timed.map(({ piece, startMs, finishMs, beginByMs }): Work => {
		const { job, stint, capo, isEarly, seconds, releaseMs, dueMs } = piece;
		return {
			job,
			instrument: stint.instrument.id,
			player: stint.choice.player,
			section: stint.section,
			to: stint.hand.tuning,
			capo,
			isEarly,
			seconds,
			fromMs: Math.max(releaseMs, nowMs),
			wantedMs: dueMs,
			startMs,
			finishMs,
			slackSeconds: (dueMs - finishMs) / 1000,
			shortSeconds: Math.max(0, clock.at(finishMs) - clock.at(dueMs)) / 1000,
			beginByMs,
		};
	});
	return { ...weighed, work };
}
