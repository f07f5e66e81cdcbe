// Enumeration of every plan of a state, depth first, with pruning by partial cost. Two bounds prune: the
// least counts of what is left (exact, each standing solved once, the clock left out), and the worst lateness
// of the work found so far when it may be interrupted, which more work and more hand-overs only raise.

import {
	COUNTED,
	type Cost,
	type Counts,
	type Criterion,
	costOf,
	NO_COUNTS,
	plus,
} from './cost.ts';
import { type Numbered, numbered } from './holds.ts';
import { leastWorst, preemptiveLeastWorst } from './least-worst.ts';
import type { Played } from './live-state.ts';
import { type LiveState, slotKey } from './live-state.ts';
import { type Joint, jointMoves, type Move } from './moves.ts';
import { boardWindows, firstRack, type Piece, prepared, type Rack } from './pieces.ts';
import { firstStanding, type Standing, type Step, stepOf } from './stints.ts';
import { type Busy, workingClock } from './working-clock.ts';

/** What one slot plays in a plan. */
export type PlannedSlot = {
	readonly slot: string;
	/** Place of its section in the state. */
	readonly section: number;
	readonly player: string;
	readonly how: Move['how'];
	/** What was named, where the slot is substituted; else null. */
	readonly for: string | null;
	/** Null where nothing is played. */
	readonly played: Played | null;
	/** A stint begins here. */
	readonly isHandOver: boolean;
};

/** One plan: its slots in the order of sections and players, its work, its busy windows. */
export type Plan = {
	readonly cost: Cost;
	readonly slots: readonly PlannedSlot[];
	readonly pieces: readonly Piece[];
	readonly busy: readonly Busy[];
};

export type Best = {
	readonly cost: Cost;
	/** Plans of this cost, as many as were asked for at most. */
	readonly plans: readonly Plan[];
	/** How many there are; no more than `mostPlans` are counted. */
	readonly count: number;
};

export type SearchOptions = {
	readonly criteria: readonly Criterion[];
	/** As many of the best plans are kept and counted; the search ends ties there. */
	readonly mostPlans: number;
	/** False prunes nothing and looks at every plan: slower by far, for checking the bounds. */
	readonly isBounded?: boolean;
	/** Give up after so many combinations of a section were looked at; without it never. */
	readonly mostSteps?: number;
};

/** Thrown where `mostSteps` was not enough. */
export class TooManySteps extends Error {}

type Node = {
	readonly index: number;
	readonly standing: Standing;
	readonly rack: Rack;
	readonly counts: Counts;
	readonly pieces: readonly Piece[];
	readonly busy: readonly Busy[];
	readonly path: readonly Taken[];
};

type Taken = { readonly joint: Joint; readonly step: Step };

/** The best plans of a state by these criteria, the first before all others. */
export function search(state: LiveState, options: SearchOptions): Best {
	const model = numbered(state);
	let stepsLeft = options.mostSteps ?? Infinity;
	const onStep = (): void => {
		stepsLeft -= 1;
		if (stepsLeft < 0) throw new TooManySteps();
	};
	const order = options.criteria.flatMap((name) => (name === 'lateness' ? [] : [placeOf(name)]));
	const toGo = options.isBounded === false ? () => NO_COUNTS : countsToGo(model, order, onStep);
	const hasClock = options.criteria.includes('lateness');
	const boards = boardWindows(state.sections);
	let best: { counts: Counts; lateMs: number } | null = null;
	let plans: Plan[] = [];
	let count = 0;

	/** Below 0 better than the best known, 0 as good, above 0 worse. */
	const compare = (counts: Counts, lateMs: number): number => {
		if (best === null) return -1;
		for (const name of options.criteria) {
			const difference =
				name === 'lateness'
					? lateMs - best.lateMs
					: counts[placeOf(name)]! - best.counts[placeOf(name)]!;
			if (difference !== 0) return difference;
		}
		return 0;
	};
	const isHopeless = (counts: Counts, lateMs: number): boolean => {
		if (options.isBounded === false) return false;
		const difference = compare(counts, lateMs);
		return difference > 0 || (difference === 0 && count >= options.mostPlans);
	};

	const visit = (node: Node): void => {
		if (node.index === state.sections.length) {
			const clock = workingClock([...boards, ...node.busy]);
			const lateMs = latenessMs(leastWorst(node.pieces, clock));
			const difference = compare(node.counts, hasClock ? lateMs : 0);
			if (difference > 0) return;
			if (difference < 0)
				[best, plans, count] = [{ counts: node.counts, lateMs: hasClock ? lateMs : 0 }, [], 0];
			count += 1;
			if (count <= options.mostPlans) plans.push(planOf(state, node, lateMs));
			return;
		}
		const { index, standing } = node;
		const branches = jointMoves(model, index, standing.hands).map((joint) => {
			const step = stepOf(model, index, standing, joint);
			const counts = plus(node.counts, step.counts);
			return { joint, step, counts, bound: plus(counts, toGo(index + 1, step.next)) };
		});
		branches.sort((a, b) => compareCounts(a.bound, b.bound, order));
		for (const { joint, step, counts, bound } of branches) {
			if (isHopeless(bound, 0)) continue;
			onStep();
			const work = prepared(model, { index, standing, step, rack: node.rack });
			const pieces = [...node.pieces, ...work.pieces];
			const busy = [...node.busy, ...work.busy];
			if (hasClock && best !== null && options.isBounded !== false) {
				const clock = workingClock([...boards, ...busy]);
				if (isHopeless(bound, latenessMs(preemptiveLeastWorst(pieces, clock)))) continue;
			}
			visit({
				index: index + 1,
				standing: step.next,
				rack: work.rack,
				counts,
				pieces,
				busy,
				path: [...node.path, { joint, step }],
			});
		}
	};
	visit({
		index: 0,
		standing: firstStanding(model),
		rack: firstRack(state),
		counts: NO_COUNTS,
		pieces: [],
		busy: [],
		path: [],
	});
	if (plans[0] === undefined) throw new Error('no plan: every section has at least one');
	return { cost: plans[0].cost, plans, count };
}

function placeOf(name: Criterion): number {
	return (COUNTED as readonly Criterion[]).indexOf(name);
}

function compareCounts(one: Counts, other: Counts, order: readonly number[]): number {
	for (const place of order) {
		const difference = one[place]! - other[place]!;
		if (difference !== 0) return difference;
	}
	return 0;
}

function latenessMs(worst: number): number {
	return Math.max(0, Math.round(worst * 1000));
}

/** The least counts from a section on for each standing, in this order of the counts. */
function countsToGo(
	model: Numbered,
	order: readonly number[],
	onStep: () => void,
): (index: number, standing: Standing) => Counts {
	const known = new Map<string, Counts>();
	const least = (index: number, standing: Standing): Counts => {
		if (index === model.state.sections.length) return NO_COUNTS;
		const key = keyOf(model, index, standing);
		const found = known.get(key);
		if (found !== undefined) return found;
		let best: Counts | null = null;
		for (const joint of jointMoves(model, index, standing.hands)) {
			onStep();
			const step = stepOf(model, index, standing, joint);
			if (best !== null && compareCounts(step.counts, best, order) > 0) continue;
			const counts = plus(step.counts, least(index + 1, step.next));
			if (best === null || compareCounts(counts, best, order) < 0) best = counts;
		}
		known.set(key, best!);
		return best!;
	};
	return least;
}

function keyOf(model: Numbered, index: number, { hands, tunings, isFirst }: Standing): string {
	const held = hands.map((hold) => hold?.id ?? '-').join(' ');
	const relevant = tunings.map((tuning, i) => (model.canMatter(index, i, tuning) ? tuning : '-'));
	return `${index}|${held}|${relevant.join(' ')}|${isFirst.map(Number).join('')}`;
}

function planOf(state: LiveState, node: Node, lateMs: number): Plan {
	const slots = node.path.flatMap(({ joint, step }, index) =>
		joint.map((move, p): PlannedSlot => {
			const player = state.players[p]!.id;
			const section = state.sections[index]!;
			const demand = section.cells[player]?.demand;
			const named = demand?.kind === 'named' ? demand.instrument : null;
			return {
				slot: slotKey(section.key, player),
				section: index,
				player,
				how: move.how,
				for: move.how === 'substituted' ? named : null,
				played: move.hold?.played ?? null,
				isHandOver: step.begun.some((stint) => stint.player === p),
			};
		}),
	);
	return { cost: costOf(node.counts, lateMs), slots, pieces: node.pieces, busy: node.busy };
}
