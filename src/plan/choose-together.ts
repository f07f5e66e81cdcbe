// The best choice for some of the players together, were there no others and no clock: proved by going
// through all sections where that can be done, else bettered part by part.

import { aloneIn } from './alone-in.ts';
import { bettered } from './bettered.ts';
import type { Board, Budget } from './board.ts';
import type { Counts } from './criteria.ts';
import { packed, unpacked } from './criteria.ts';
import { searchGroup } from './group-search.ts';
import { groupSetting } from './group-setting.ts';

/** The choice for some seats. */
export type Together = {
	/** For each of these seats, the hand in each section. */
	readonly hands: readonly Int16Array[];
	readonly counts: Counts;
	/** Nothing better than this is possible for them; the counts themselves where nothing was left out. */
	readonly bound: Counts;
	/** Whether every count was compared; in a show beyond all measure the last ones are not. */
	readonly isWhole: boolean;
};

export type ChooseHow = {
	readonly budget: Budget;
	/** What it is known to come to at least; found, it is not looked for anything better. */
	readonly floor?: Counts;
	/** Whether a choice that is not proved is worth bettering. */
	readonly isToBetter?: boolean;
};

/** How many ways are gone on from in each section: few first, whose result rules most others out. */
const WIDTHS = [3, 30, 400, 6000];
/** This share of what may be looked at goes into a proof, at the least so many steps; the rest betters what could not be proved. */
const FOR_PROOF = 0.25;
const LEAST_FOR_PROOF = 100_000;

/**
 * The best choice for these seats, or the best found with what may be looked at; null where there is
 * none. What somebody else would do with an instrument does not count, nor do hand-overs to them.
 *
 * @example
 * chooseTogether(board, [0], { budget: { left: 10000 } }).counts // => [0, 0, 0, 2, 0, 0, 0]
 */
export function chooseTogether(
	board: Board,
	seats: readonly number[],
	{ budget, floor, isToBetter = true }: ChooseHow,
): Together | null {
	const setting = groupSetting(board, seats);
	const { weights } = setting;
	const alone = aloneIn(board, seats, { setting, budget });
	if (alone === null) return null;
	const [only] = alone;
	if (only !== undefined && alone.length === 1) {
		return {
			hands: [only.path()],
			counts: unpacked(only.cost, weights),
			bound: unpacked(only.bound, weights),
			isWhole: weights.isWhole,
		};
	}
	const least = floor === undefined ? 0 : packed(floor, weights);
	const forProof = Math.max(LEAST_FOR_PROOF, budget.left * FOR_PROOF);
	const first: Budget = { left: isToBetter ? Math.min(budget.left, forProof) : budget.left };
	const rest = budget.left - first.left;
	const asked = { members: seats, setting, alone, budget: first };
	const upper = Number.POSITIVE_INFINITY;
	const found = searchGroup(board, asked, { upper, least, widths: WIDTHS });
	budget.left = rest + first.left;
	const { hands, bound } = found;
	if (hands === null) return null;
	const best =
		isToBetter && found.cost > bound
			? bettered(board, { members: seats, setting, budget }, { hands, cost: found.cost })
			: { hands, cost: found.cost };
	return {
		hands: best.hands,
		counts: unpacked(best.cost, weights),
		bound: unpacked(bound, weights),
		isWhole: weights.isWhole,
	};
}
