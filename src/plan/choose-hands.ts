// The best choice for all players without the clock: each taken alone first, and together only those
// whose choices clash. Apart they cost no more than together, so where nothing clashes it is the best.

import type { Board, Budget } from './board.ts';
import type { Together } from './choose-together.ts';
import { chooseTogether } from './choose-together.ts';
import type { Hands } from './clashes.ts';
import { firstClash } from './clashes.ts';
import type { Counts } from './criteria.ts';
import { added, noCounts } from './criteria.ts';

export type Chosen = {
	readonly hands: Hands;
	readonly counts: Counts;
	/** Nothing better than this is possible; the counts themselves where that is proved. */
	readonly bound: Counts;
	readonly isWhole: boolean;
	/** Who was chosen for together. */
	readonly groups: readonly Group[];
};

type Group = { readonly seats: readonly number[]; readonly choice: Together };

/** A group as it is begun with: what was chosen for it where more was possible, if anything. */
type Start = { readonly seats: readonly number[]; readonly choice: Together | null };

/**
 * The best choice on this board, or the best found; null where there is none. `before` is the choice on
 * a board where more was possible: what is still possible of it is still the best.
 *
 * @example
 * chooseHands(board, { left: 10000 }).counts // => [0, 0, 0, 2, 0, 0, 0]
 */
export function chooseHands(board: Board, budget: Budget, before?: Chosen): Chosen | null {
	let groups: Group[] = [];
	const known: readonly Start[] =
		before?.groups ?? board.seating.seats.map((_, seat) => ({ seats: [seat], choice: null }));
	for (const { seats, choice: old } of known) {
		const how = old === null ? { budget } : { budget, floor: old.bound };
		const choice =
			old !== null && isPossible(board, { seats, choice: old })
				? old
				: chooseTogether(board, seats, how);
		if (choice === null) return null;
		groups.push({ seats, choice });
	}
	if (
		before !== undefined &&
		groups.every(({ choice }, at) => choice === before.groups[at]?.choice)
	) {
		return before;
	}
	for (;;) {
		const hands = handsOf(groups);
		const clash = firstClash(board, hands, groupNumbers(groups));
		if (clash.length === 0) return { hands, ...sumOf(groups), groups };
		const seats = clash
			.flatMap((group) => groups[group]?.seats ?? [])
			.sort((one, other) => one - other);
		const floor = sumOf(groups.filter((_, group) => clash.includes(group))).bound;
		const choice = chooseTogether(board, seats, { budget, floor });
		if (choice === null) return null;
		groups = [...groups.filter((_, group) => !clash.includes(group)), { seats, choice }];
	}
}

function isPossible({ seating, possible }: Board, { seats, choice }: Group): boolean {
	return seats.every((seat, index) => {
		const size = seating.seats[seat]?.size ?? 0;
		return choice.hands[index]?.every(
			(hand, section) => possible[seat]?.[section * size + hand] === 1,
		);
	});
}

function handsOf(groups: readonly Group[]): Hands {
	const hands: Int16Array[] = [];
	for (const { seats, choice } of groups) {
		seats.forEach((seat, index) => {
			hands[seat] = choice.hands[index] ?? new Int16Array();
		});
	}
	return hands;
}

function groupNumbers(groups: readonly Group[]): Int16Array {
	const numbers = new Int16Array(groups.reduce((sum, { seats }) => sum + seats.length, 0));
	groups.forEach(({ seats }, group) => {
		for (const seat of seats) numbers[seat] = group;
	});
	return numbers;
}

function sumOf(groups: readonly Group[]): Pick<Chosen, 'counts' | 'bound' | 'isWhole'> {
	return {
		counts: groups.reduce((sum, { choice }) => added(sum, choice.counts), noCounts()),
		bound: groups.reduce((sum, { choice }) => added(sum, choice.bound), noCounts()),
		isWhole: groups.every(({ choice }) => choice.isWhole),
	};
}
