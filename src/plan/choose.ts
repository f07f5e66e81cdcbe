// Who plays what from here to the end of the set: the best plan, or the best found, and whether it is
// proved. The choice is made without the clock first; only where its work comes out late is one searched
// for that is less so.

import type { Board, Budget } from './board.ts';
import { boardAfter, boardOf } from './board.ts';
import { choicesOf } from './choices.ts';
import type { Chosen } from './choose-hands.ts';
import { chooseHands } from './choose-hands.ts';
import type { Counts } from './criteria.ts';
import { compared, HAND_OVERS, MISSING, OVER_GAP, PREFERENCE, RETUNINGS } from './criteria.ts';
import { gearFigures } from './gear-figures.ts';
import type { Question } from './open-questions.ts';
import { openQuestions } from './open-questions.ts';
import type { Outlook } from './outlook.ts';
import type { Cost } from './plan.ts';
import type { Said } from './possible-hands.ts';
import type { Seating } from './seats.ts';
import { seatingOf } from './seats.ts';
import type { SureAsked } from './sure-work.ts';
import { sureLateness } from './sure-work.ts';
import type { Told } from './told.ts';
import type { Weighed } from './weighed.ts';
import { weighed } from './weighed.ts';
import { worthwhile } from './worthwhile.ts';

/** The best choice with what follows from it. */
export type Best = Weighed & {
	readonly isProved: boolean;
	/** Nothing better than this is possible; null where the choice itself is proved the best. */
	readonly bound: Cost | null;
};

export type ChooseAsked = {
	readonly outlook: Outlook;
	/** What the plan before gave; null when there is none. */
	readonly told: Told | null;
	/** How many steps may be looked at. */
	readonly budget: number;
};

/** This share of the budget at the most goes into the choice without the clock: lateness weighs more than most of it. */
const WITHOUT_CLOCK = 0.6;
/** Beside the choosing: what takes about as long as so many of its steps for each slot of the board. */
const STEPS_A_SLOT = { weighing: 40, bounding: 9, asking: 14 } as const;

/** One set of possible choices, with the best of them as long as the clock is left out. */
type Node = {
	readonly board: Board;
	readonly chosen: Chosen;
	readonly weighed: Weighed;
	/** What that one comes to. */
	readonly full: Counts;
	/** What any of them comes to at least. */
	readonly least: Counts;
};

/**
 * The best choice there is, as far as the budget goes.
 *
 * @example
 * chooseAll({ outlook, told: null, budget: 100000 }).isProved // => true
 */
export function chooseAll(asked: ChooseAsked): Best {
	const seating = seatingOf(asked.outlook, asked.told);
	return new Search(asked, seating).best(boardOf(seating));
}

class Search {
	readonly #asked: SureAsked;
	readonly #seating: Seating;
	readonly #budget: Budget;

	constructor(asked: ChooseAsked, seating: Seating) {
		this.#asked = { outlook: asked.outlook, figures: gearFigures(asked.outlook, seating) };
		this.#seating = seating;
		this.#budget = { left: asked.budget };
	}

	best(board: Board): Best {
		const root = this.#rootOn(board);
		let open: readonly Node[] = [root];
		let best = root;
		while (open.length > 0) {
			const node = leastOf(open);
			if (compared(node.least, best.full) >= 0) break;
			if (this.#budget.left <= 0) return ended(best, node.least);
			open = open.filter((one) => one !== node);
			const boards = this.#divided(node, best.full);
			if (boards === null && !node.weighed.isInBestOrder) return ended(best, node.least);
			for (const part of boards ?? []) {
				if (compared(part.least, best.full) >= 0) continue;
				if (this.#budget.left <= 0) return ended(best, node.least);
				const child = this.#nodeOn(part, node);
				if (child === null) continue;
				if (compared(child.full, best.full) < 0) best = child;
				if (compared(child.least, best.full) < 0) open = [...open, child];
			}
		}
		return ended(best, null);
	}

	#rootOn(board: Board): Node {
		this.#spend('weighing', board);
		const first: Budget = { left: this.#budget.left * WITHOUT_CLOCK };
		this.#budget.left -= first.left;
		const chosen = chooseHands(board, first);
		this.#budget.left += first.left;
		if (chosen === null) throw new Error('no choice at all, not even of nothing');
		const root = this.#node({ board, chosen });
		if (compared(root.least, root.full) >= 0) return root;
		return this.#node({ board: worthwhile(board, chosen.counts), chosen, parent: root });
	}

	#nodeOn({ board, sureMs }: Part, parent: Node): Node | null {
		this.#spend('weighing', board);
		const chosen = chooseHands(board, this.#budget, parent.chosen);
		return chosen && this.#node({ board, chosen, parent, sureMs });
	}

	#node({ board, chosen, parent, sureMs: known }: NodeAsked): Node {
		const { outlook } = this.#asked;
		const all =
			parent?.chosen === chosen
				? parent.weighed
				: weighed(outlook, choicesOf(outlook, this.#seating, chosen.hands));
		const latenessMs = Math.round(all.cost.lateness * 1000);
		const sureMs = known ?? (latenessMs === 0 ? 0 : this.#sureMs(board, latenessMs));
		const full = withLateness(chosen.counts, latenessMs);
		const own = withLateness(chosen.bound, Math.min(sureMs, latenessMs));
		return { board, chosen, weighed: all, full, least: larger(own, parent?.least) };
	}

	#spend(on: keyof typeof STEPS_A_SLOT, { seating }: Board): void {
		this.#budget.left -= STEPS_A_SLOT[on] * seating.sectionCount * seating.seats.length;
	}

	#sureMs(board: Board, enoughMs: number): number {
		return Math.round(sureLateness(this.#asked, board, enoughMs));
	}

	/** The two parts of a node's choices by the question whose yes says most; null where there is none. */
	#divided(node: Node, best: Counts): readonly Part[] | null {
		let sharpest: Question | null = null;
		let most = Number.NEGATIVE_INFINITY;
		this.#spend('asking', node.board);
		for (const question of openQuestions({ ...this.#asked, ...node, ...node.chosen })) {
			const yes = this.#part(node, { ...question, isIt: true }, 0);
			const sureMs = yes?.sureMs ?? Number.POSITIVE_INFINITY;
			if (sureMs <= most) continue;
			sharpest = question;
			most = sureMs;
			if (yes === null || compared(yes.least, best) >= 0 || this.#budget.left <= 0) break;
		}
		if (sharpest === null) return null;
		const bestMs = best[LATENESS] ?? 0;
		const parts: readonly (Part | null)[] = [
			this.#part(node, { ...sharpest, isIt: true }, bestMs),
			this.#part(node, { ...sharpest, isIt: false }, bestMs),
		];
		return parts.filter((one) => one !== null);
	}

	#part(node: Node, said: Said, enoughMs: number): Part | null {
		this.#spend('bounding', node.board);
		const board = boardAfter(node.board, said);
		if (board === null) return null;
		const sureMs = this.#sureMs(board, enoughMs);
		return { board, sureMs, least: larger(withLateness(node.chosen.bound, sureMs), node.least) };
	}
}

type NodeAsked = Pick<Node, 'board' | 'chosen'> & {
	/** The larger set that this one is part of. */
	readonly parent?: Node;
	/** How late all of it is at least, where that is known. */
	readonly sureMs?: number;
};

/** Part of a node's choices, nothing of them chosen yet. */
type Part = Pick<Node, 'board' | 'least'> & { readonly sureMs: number };

function larger(one: Counts, other: Counts | undefined): Counts {
	return other !== undefined && compared(one, other) < 0 ? other : one;
}

function leastOf(nodes: readonly Node[]): Node {
	return nodes.reduce((least, one) => (compared(one.least, least.least) < 0 ? one : least));
}

/** The counts with the lateness in its place, after those that weigh more. */
function withLateness(counts: Counts, latenessMs: number): Counts {
	return [...counts.slice(0, LATENESS), latenessMs, ...counts.slice(LATENESS)];
}

const LATENESS = OVER_GAP + 1;

function ended({ weighed: all, chosen }: Node, least: Counts | null): Best {
	const isProved = least === null && chosen.isWhole;
	return { ...all, isProved, bound: least === null ? null : costAtLeast(least) };
}

function costAtLeast(least: Counts): Cost {
	const without = least.toSpliced(LATENESS, 1);
	return {
		missing: least[MISSING] ?? 0,
		overGap: least[OVER_GAP] ?? 0,
		lateness: (least[LATENESS] ?? 0) / 1000,
		handOvers: without[HAND_OVERS] ?? 0,
		retunings: without[RETUNINGS] ?? 0,
		preference: without[PREFERENCE] ?? 0,
	};
}
