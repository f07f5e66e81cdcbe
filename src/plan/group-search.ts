// The best choice for some players together, section by section: every way that may still turn out best,
// few at first, whose result rules most others out.

import type { Board } from './board.ts';
import { cutOff } from './cut-off.ts';
import type { GroupAsked } from './group-steps.ts';
import { groupSteps } from './group-steps.ts';

/** What was found, packed costs. */
export type Found = {
	/** For each member, the hand in each section; null where nothing is better than what was known. */
	readonly hands: readonly Int16Array[] | null;
	readonly cost: number;
	/** Nothing comes to less. */
	readonly bound: number;
};

export type Aim = {
	/** Only what comes to less is looked for. */
	readonly upper: number;
	/** What it is known to come to at least. */
	readonly least: number;
	/** How many ways are gone on from in each section, one run after the other. */
	readonly widths: readonly number[];
};

/** Up to this width, ways beyond the best so many are not even noted. */
const FEW = 30;

/**
 * The best choice below `upper`, or the best found with the budget.
 *
 * @example
 * searchGroup(board, { members: [], setting: groupSetting(board, []), later: new Float64Array(4), alone: [], shared: null, budget: { left: 9 } }, { upper: 1, least: 0, widths: [3] }).cost // => 0
 */
export function searchGroup(board: Board, asked: GroupAsked, aim: Aim): Found {
	const steps = groupSteps(board, asked);
	const { pool } = asked.setting;
	const limits = cutOff(aim.upper);
	let hands: readonly Int16Array[] | null = null;
	let bound = aim.least;
	for (const width of aim.widths) {
		limits.leftOut = Number.POSITIVE_INFINITY;
		const label = run(width);
		if (label >= 0) {
			limits.upper = pool.cost[label] ?? 0;
			hands = pathTo(label);
		}
		bound = Math.max(bound, Math.min(limits.leftOut, limits.upper));
		if (bound >= limits.upper || asked.budget.left <= 0) break;
	}
	return { hands, cost: limits.upper, bound };

	/** Goes through all sections; the best label of the last one, or -1 where nothing gets there. */
	function run(width: number): number {
		steps.begin();
		let frontier = pool.alive();
		for (let section = 0; section < board.seating.sectionCount; section += 1) {
			steps.section = section;
			pool.beginSection();
			limits.beginSection(width <= FEW ? width : 0);
			for (const [place, label] of frontier.entries()) {
				if (place > 0 && asked.budget.left <= 0) {
					limits.leaveOut(pool.reach[label] ?? 0);
					break;
				}
				steps.goOnFrom(label, limits);
			}
			frontier = mostPromising(pool.alive(), width);
			if (frontier.length === 0) return -1;
		}
		return frontier.reduce((best, label) =>
			(pool.cost[label] ?? 0) < (pool.cost[best] ?? 0) ? label : best,
		);
	}

	/** So many of the labels, the most promising first. */
	function mostPromising(labels: number[], width: number): number[] {
		const reach = (label: number): number => pool.reach[label] ?? 0;
		labels.sort((one, other) => reach(one) - reach(other) || one - other);
		const next = labels[width];
		if (next === undefined) return labels;
		limits.leaveOut(reach(next));
		labels.length = width;
		return labels;
	}

	function pathTo(label: number): readonly Int16Array[] {
		const { sectionCount } = board.seating;
		const path = asked.members.map(() => new Int16Array(sectionCount));
		let at = label;
		for (let section = sectionCount - 1; section >= 0; section -= 1) {
			path.forEach((mine, index) => {
				mine[section] = pool.hands[at * asked.members.length + index] ?? 0;
			});
			at = pool.parent[at] ?? 0;
		}
		return path;
	}
}
