// What a search goes by: the seats, their steps, and what is still possible.

import type { MayHold } from './may-hold.ts';
import { mayHold } from './may-hold.ts';
import type { Possible, Said } from './possible-hands.ts';
import { possibleAfter, possibleHands } from './possible-hands.ts';
import type { Seating } from './seats.ts';
import type { Steps } from './steps.ts';
import { stepsOf } from './steps.ts';
import type { SureRetunings } from './sure-retunings.ts';
import { sureRetunings } from './sure-retunings.ts';

export type Board = {
	readonly seating: Seating;
	readonly may: MayHold;
	readonly steps: readonly Steps[];
	readonly possible: Possible;
	readonly isSure: SureRetunings;
	/** What is the same in every search for the same seats, whatever has been said; kept by those who make it. */
	readonly kept: Map<string, unknown>;
};

/** How much may still be looked at, in steps: never in time, so that the same show gives the same plan. */
export type Budget = { left: number };

/**
 * The board on which everything is open.
 *
 * @example
 * boardOf(seating).steps.length // => 3
 */
export function boardOf(seating: Seating): Board {
	const may = mayHold(seating);
	const steps = seating.seats.map((_, seat) => stepsOf(seating, may, seat));
	const possible = possibleHands(seating, steps);
	if (possible === null)
		throw new Error('a section leaves somebody without anything, not even nothing');
	return {
		seating,
		may,
		steps,
		possible,
		isSure: sureRetunings(seating, possible),
		kept: new Map(),
	};
}

/**
 * The board once something more has been said of a slot; null where that cannot be.
 *
 * @example
 * boardAfter(board, { seat: 0, section: 0, hands: [0], isIt: true }) // => null
 */
export function boardAfter(board: Board, said: Said): Board | null {
	const possible = possibleAfter(board, said);
	return possible && { ...board, possible };
}

/**
 * The board with only these of its steps; null where they lead nowhere.
 *
 * @example
 * boardWith(board, board.steps).steps.length // => 3
 */
export function boardWith({ seating, may }: Board, steps: readonly Steps[]): Board | null {
	const possible = possibleHands(seating, steps);
	if (possible === null) return null;
	const isSure = sureRetunings(seating, possible);
	return { seating, may, steps, possible, isSure, kept: new Map() };
}
