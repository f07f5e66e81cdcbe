// Who plays what from here to the end of the set: the best plan, or the best found, and whether it is
// proved. The choice is made without the clock first; only where its work comes out late is one searched
// for that is less so.

import type { Session } from '../session/session.ts';
import type { Board, Budget } from './board.ts';
import { boardAfter, boardOf } from './board.ts';
import { choicesOf } from './choices.ts';
import type { Chosen } from './choose-hands.ts';
import { chooseHands } from './choose-hands.ts';
import type { Counts } from './criteria.ts';
import { compared, HAND_OVERS, MISSING, OVER_GAP, PREFERENCE, RETUNINGS } from './criteria.ts';
import { gearFigures } from './gear-figures.ts';
import { openQuestion } from './open-question.ts';
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
	readonly session: Session;
	readonly outlook: Outlook;
	/** What the plan before gave; null when there is none. */
	readonly told: Told | null;
	/** How many steps may be looked at. */
	readonly budget: number;
};

/** One set of possible choices, with the best of them as long as the clock is left out. */
type Node = {
	readonly board: Board;
	readonly said: readonly Said[];
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
 * chooseAll({ session, outlook, told: null, budget: 100000 }).isProved // => true
 */
export function chooseAll(asked: ChooseAsked): Best {
	const seating = seatingOf(asked.outlook, asked.told);
	let board = boardOf(seating);
	const figures = gearFigures(asked.outlook, seating);
	const budget: Budget = { left: asked.budget };
	const nodeFor = (now: Board, said: readonly Said[], parent?: Node): Node | null => {
		budget.left -= stepCount(now);
		const chosen = chooseHands(now, budget, parent?.chosen);
		return chosen && nodeOf({ ...asked, figures }, { seating, board: now, said, chosen, parent });
	};
	let root = nodeFor(board, []);
	if (root === null) throw new Error('no choice at all, not even of nothing');
	if (compared(root.least, root.full) < 0) {
		board = worthwhile(board, root.chosen.counts);
		const { chosen } = root;
		root = nodeOf({ ...asked, figures }, { seating, board, said: [], chosen, parent: root });
	}
	let open: Node[] = [root];
	let best = root;
	while (open.length > 0) {
		const node = leastOf(open);
		if (compared(node.least, best.full) >= 0) break;
		if (budget.left <= 0) return ended(best, node.least);
		const question = openQuestion({ ...asked, figures, ...node, ...node.chosen });
		if (question === null) {
			if (!node.weighed.isInBestOrder) return ended(best, node.least);
			open = open.filter((one) => one !== node);
			continue;
		}
		open = open.filter((one) => one !== node);
		for (const isIt of [true, false]) {
			const said = [...node.said, { ...question, isIt }];
			const after = boardAfter(board, said);
			const child = after && nodeFor(after, said, node);
			if (!child) continue;
			if (compared(child.full, best.full) < 0) best = child;
			if (compared(child.least, best.full) < 0) open.push(child);
		}
	}
	return ended(best, null);
}

function leastOf(nodes: readonly Node[]): Node {
	return nodes.reduce((least, one) => (compared(one.least, least.least) < 0 ? one : least));
}

/** What has to be read and weighed for one choice, whatever it is, counts as so many steps. */
function stepCount({ steps }: Board): number {
	return 3000 + 4 * steps.reduce((sum, { to }) => sum + to.length, 0);
}

type NodeAsked = Pick<Node, 'board' | 'said' | 'chosen'> & {
	readonly seating: Seating;
	/** The larger set that this one is part of. */
	readonly parent: Node | undefined;
};

function nodeOf({ session, outlook, figures }: SureAsked, asked: NodeAsked): Node {
	const { seating, board, said, chosen, parent } = asked;
	const all =
		parent?.chosen === chosen
			? parent.weighed
			: weighed(session, outlook, choicesOf(outlook, seating, chosen.hands));
	const latenessMs = Math.round(all.cost.lateness * 1000);
	const full = withLateness(chosen.counts, latenessMs);
	const sureMs =
		latenessMs === 0 ? 0 : Math.round(sureLateness({ session, outlook, figures }, board));
	const own = withLateness(chosen.bound, Math.min(sureMs, latenessMs));
	const least = parent !== undefined && compared(own, parent.least) < 0 ? parent.least : own;
	return { board, said, chosen, weighed: all, full, least };
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
