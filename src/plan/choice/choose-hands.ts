// The best choice for all players without the clock: each taken alone first, and together only those whose
// choices clash (decomposition). Apart they cost no more than together, so where nothing clashes it is the
// best.

import type { Budget, Found, Group } from './beam-search.ts';
import { beamSearch } from './beam-search.ts';
import { firstClash } from './clash.ts';
import { type CostToGo, costToGo } from './cost-to-go.ts';
import { countHands } from './count-hands.ts';
import { added, type Counts, noCounts, unpacked } from './criteria.ts';
import type { Hands } from './moves.ts';
import type { Possible, SearchGraph } from './search-graph.ts';
import type { Seat } from './seats.ts';

export type Choosing = {
	readonly hands: Hands;
	readonly counts: Counts;
	/** Nothing better than this is possible; the counts themselves where that is proved. */
	readonly bound: Counts;
	/** Who was chosen for together, and what that came to. */
	readonly groups: readonly Chosen[];
};

type Chosen = {
	readonly seats: readonly number[];
	readonly found: Found;
	readonly toGo: readonly CostToGo[];
};

/**
 * The best choice in what is possible, or the best found; null where there is none. `before` is the choice
 * where more was possible: what of it still is stays the best.
 *
 * @example
 * chooseHands(graph, allPossible(graph), { budget: { left: 10000 }, before: null }).counts[5] // => 2
 */
export function chooseHands(
	graph: SearchGraph,
	possible: Possible,
	{ budget, before }: { readonly budget: Budget; readonly before: Choosing | null },
): Choosing | null {
	const choose = (seats: readonly number[]): Chosen | null => {
		const known = before?.groups.find((one) => one.seats.join() === seats.join());
		const group = groupOf(graph, possible, { seats, toGo: known?.toGo ?? null });
		budget.left -= group.effort;
		const found = beamSearch({ graph, possible, group, budget });
		return found.hands === null ? null : { seats, found, toGo: group.toGo };
	};
	let groups: Chosen[] = [];
	const known = before?.groups ?? graph.seating.seats.map((_, seat) => ({ seats: [seat] }));
	for (const one of known) {
		const isStill = 'found' in one && isPossible(graph, possible, one);
		const chosen = isStill ? one : choose(one.seats);
		if (chosen === null) return null;
		groups.push(chosen);
	}
	for (;;) {
		const hands = handsOf(groups);
		const clash = firstClash(graph, {
			hands,
			groups: numbersOf(groups),
			countedIn: (instrument) =>
				groups.findIndex(({ seats }) => seats.includes(ownerOf(graph, instrument))),
		});
		if (clash.length === 0) {
			return { hands, counts: countHands(graph, hands), bound: boundOf(graph, groups), groups };
		}
		const seats = clash
			.flatMap((group) => groups[group]?.seats ?? [])
			.sort((one, other) => one - other);
		const chosen = choose(seats);
		if (chosen === null) return null;
		groups = [...groups.filter((_, group) => !clash.includes(group)), chosen];
	}
}

/** The one for whom the re-tunings of a shared instrument are counted: of several players' the counts of one are never more than all together. */
function ownerOf({ seating }: SearchGraph, instrument: number): number {
	return seating.seats.findIndex(({ instrumentOf }) => instrumentOf.includes(instrument));
}

/** `effort`: what working out the costs to go takes of the budget. */
function groupOf(
	graph: SearchGraph,
	possible: Possible,
	{
		seats,
		toGo: before,
	}: { readonly seats: readonly number[]; readonly toGo: Chosen['toGo'] | null },
): Group & { readonly effort: number } {
	const { seating } = graph;
	const tracked = [...seating.tuningCounts.keys()].filter(
		(instrument) =>
			(seating.tuningCounts[instrument] as number) > 1 &&
			seats.includes(ownerOf(graph, instrument)),
	);
	const toGo = seats.map((seat, member) =>
		costToGo(graph, possible, {
			seat,
			tracked,
			isCounted: (instrument) => ownerOf(graph, instrument) === seat,
			before: before?.[member] ?? null,
		}),
	);
	return {
		seats,
		toGo,
		tracked,
		countedBy: tracked.map((instrument) => seats.indexOf(ownerOf(graph, instrument))),
		mayBeOutside: mayBeWith(
			graph,
			possible,
			[...seating.seats.keys()].filter((seat) => !seats.includes(seat)),
		),
		effort: toGo.reduce((sum, { effort }) => sum + 2 * effort, 0),
	};
}

/** Whether any of these may have an instrument in a section; asked over and over, so each answer is kept. */
function mayBeWith(
	{ seating }: SearchGraph,
	possible: Possible,
	seats: readonly number[],
): Group['mayBeOutside'] {
	const answers = new Int8Array(seating.sectionCount * seating.instrumentCount).fill(-1);
	const mayHold = (index: number, instrument: number, section: number): boolean => {
		const { hands, instrumentOf } = seating.seats[index] as Seat;
		const row = section * hands.length;
		return instrumentOf.some(
			(one, hand) => one === instrument && possible[index]?.[row + hand] === 1,
		);
	};
	return (instrument, section) => {
		const at = section * seating.instrumentCount + instrument;
		if (answers[at] === -1) {
			answers[at] = seats.some((seat) => mayHold(seat, instrument, section)) ? 1 : 0;
		}
		return answers[at] === 1;
	};
}

function isPossible(
	{ seating }: SearchGraph,
	possible: Possible,
	{ seats, found }: Chosen,
): boolean {
	return seats.every((seat, member) => {
		const size = seating.seats[seat]?.hands.length as number;
		return found.hands?.[member]?.every(
			(hand, section) => possible[seat]?.[section * size + hand] === 1,
		);
	});
}

function handsOf(groups: readonly Chosen[]): Hands {
	const hands: Int16Array[] = [];
	for (const { seats, found } of groups) {
		seats.forEach((seat, member) => {
			hands[seat] = found.hands?.[member] as Int16Array;
		});
	}
	return hands;
}

function numbersOf(groups: readonly Chosen[]): readonly number[] {
	const numbers: number[] = [];
	groups.forEach(({ seats }, group) => {
		for (const seat of seats) numbers[seat] = group;
	});
	return numbers;
}

function boundOf({ weights }: SearchGraph, groups: readonly Chosen[]): Counts {
	return groups.reduce((sum, { found }) => added(sum, unpacked(found.bound, weights)), noCounts());
}
