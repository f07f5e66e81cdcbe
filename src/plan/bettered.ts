// A choice that could not be proved the best, bettered part by part: everybody's rest of it is held to
// what it is, some songs or some players are chosen anew, and that over and over until nothing helps.

import { aloneIn } from './alone-in.ts';
import type { Board } from './board.ts';
import { boardHolding } from './board.ts';
import { searchGroup } from './group-search.ts';
import type { GroupAsked } from './group-steps.ts';

/** A choice by its hands for each member, and what it comes to. */
export type Held = { readonly hands: readonly Int16Array[]; readonly cost: number };

/** How many sections are chosen anew at once for all: few can be looked through wholly. */
const WINDOW = 12;
/** How many ways are gone on from in each section; where that betters nothing more, four times as many. */
const WIDTH = 100;
const MOST_WIDTH = 1600;

/**
 * The choice, or a better one: what was looked at does not go beyond the budget.
 *
 * @example
 * bettered(board, { members: [0, 1], setting: groupSetting(board, [0, 1]), budget: { left: 0 } }, { hands: [], cost: 5 }).cost // => 5
 */
export function bettered(board: Board, asked: Omit<GroupAsked, 'alone'>, choice: Held): Held {
	let best = choice;
	for (let width = WIDTH; width <= MOST_WIDTH && asked.budget.left > 0; ) {
		const before = best.cost;
		for (const isFree of freedoms(board, asked.members)) {
			best = chosenAnew(board, asked, { best, isFree, width });
		}
		if (best.cost === before) width *= 4;
	}
	return best;
}

type IsFree = (index: number, section: number) => boolean;

/** One player alone, all but one, all for some songs. */
function* freedoms({ seating }: Board, members: readonly number[]): Generator<IsFree> {
	for (const place of members.keys()) yield (index) => index === place;
	for (const place of members.keys()) yield (index) => index !== place;
	for (let from = 0; from < seating.sectionCount; from += WINDOW / 2) {
		yield (_, section) => section >= from && section < from + WINDOW;
	}
}

type Freed = {
	readonly best: Held;
	/** Whether a member's hands in a section may be other than they are. */
	readonly isFree: IsFree;
	readonly width: number;
};

function chosenAnew(
	board: Board,
	asked: Omit<GroupAsked, 'alone'>,
	{ best, isFree, width }: Freed,
): Held {
	if (asked.budget.left <= 0) return best;
	const part = boardHolding(board, asked.members, (index, section) =>
		isFree(index, section) ? null : (best.hands[index]?.[section] ?? 0),
	);
	const alone = part && aloneIn(part, asked.members, asked);
	if (part === null || alone === null) return best;
	const aim = { upper: best.cost, least: 0, widths: [width] };
	const { hands, cost } = searchGroup(part, { ...asked, alone }, aim);
	return hands === null ? best : { hands, cost };
}
