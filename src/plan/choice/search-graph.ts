// The search graph of all players with what each step weighs, and what is still possible in it: the clock
// rules hands out, one after the other, and what no longer leads anywhere goes with them.

import {
	BACKUP,
	CHANGED,
	type Counts,
	HAND_OVERS,
	MISSING,
	noCounts,
	OVER_GAP,
	PREFERENCE,
	RETUNINGS,
	SUBSTITUTED,
	type Weights,
	weightsFor,
} from './criteria.ts';
import type { Seat, Seating } from './seats.ts';
import {
	BEGINS,
	COUNTS,
	IS_CHANGED,
	IS_MISSING,
	IS_SUBSTITUTED,
	type Steps,
	stepsOf,
} from './steps.ts';

export type SearchGraph = {
	readonly seating: Seating;
	readonly steps: readonly Steps[];
	readonly weights: Weights;
	/** For each seat, what each step weighs, re-tunings left out, and hand-overs over the gap but by its own length. */
	readonly costs: readonly Float64Array[];
	/** For each instrument that comes up in several tunings, its number among those; -1 for others. */
	readonly trackOf: Int16Array;
	/** For each of those the seat alone that its re-tunings are counted for: for one of several players they are never more than for all. */
	readonly countedBy: readonly number[];
};

/** For each seat, for each section and hand, 1 where it is still possible. */
export type Possible = readonly Uint8Array[];

/**
 * The graph of this seating.
 *
 * @example
 * searchGraph(seatingOf(outlook, null)).steps.length // => 3
 */
export function searchGraph(seating: Seating): SearchGraph {
	const steps = seating.seats.map((_, seat) => stepsOf(seating, seat));
	const weights = weightsFor(mostCounts(seating, steps));
	const costs = steps.map((_, seat) => costsOf(seating, steps, { seat, weights }));
	const tracked = [...seating.tuningCounts.keys()].filter(
		(instrument) => (seating.tuningCounts[instrument] as number) > 1,
	);
	return {
		seating,
		steps,
		weights,
		costs,
		trackOf: Int16Array.from(seating.tuningCounts, (_, instrument) => tracked.indexOf(instrument)),
		countedBy: tracked.map((instrument) =>
			seating.seats.findIndex(({ instrumentOf }) => instrumentOf.includes(instrument)),
		),
	};
}

/** What each step of a seat weighs: its counts packed into one number. */
function costsOf(
	seating: Seating,
	all: readonly Steps[],
	{ seat, weights: { of } }: { readonly seat: number; readonly weights: Weights },
): Float64Array {
	const steps = all[seat] as Steps;
	const { flags, backup, preference } = steps;
	// Most of what counts stands in the flags, of which few ever come together.
	const byFlags = new Float64Array(256).fill(-1);
	const flagged = (some: number): number => {
		if ((byFlags[some] as number) < 0) {
			byFlags[some] = FLAGGED.reduce(
				(sum, [flag, place]) => sum + (some & flag ? (of[place] as number) : 0),
				0,
			);
		}
		return byFlags[some] as number;
	};
	const [overGap, forBackup, forPreference] = [OVER_GAP, BACKUP, PREFERENCE].map(
		(place) => of[place] as number,
	) as [number, number, number];
	const costs = new Float64Array(flags.length);
	eachStep(steps, (step, section) => {
		costs[step] =
			flagged(flags[step] as number) +
			(backup[step] as number) * forBackup +
			(preference[step] as number) * forPreference +
			(isOverGap(seating, steps, { seat, section, step }) ? overGap : 0);
	});
	return costs;
}

/** What a flag counts one of. */
export const FLAGGED = [
	[IS_MISSING, MISSING],
	[IS_SUBSTITUTED, SUBSTITUTED],
	[IS_CHANGED, CHANGED],
	[COUNTS, HAND_OVERS],
] as const;

/** Its own hand-over alone takes longer than there is. */
function isOverGap(
	seating: Seating,
	{ flags, to }: Steps,
	{ seat, section, step }: { seat: number; section: number; step: number },
): boolean {
	if (((flags[step] as number) & BEGINS) === 0) return false;
	const instrument = seating.seats[seat]?.instrumentOf[to[step] as number] as number;
	return (seating.handOverSeconds[instrument] as number) > (seating.gapSeconds[section] as number);
}

function eachStep({ size, first }: Steps, visit: (step: number, section: number) => void): void {
	for (let at = 0; at + 1 < first.length; at += 1) {
		const end = first[at + 1] as number;
		const section = Math.floor(at / size);
		for (let step = first[at] as number; step < end; step += 1) visit(step, section);
	}
}

/** More than these counts no choice can come to. */
function mostCounts(seating: Seating, steps: readonly Steps[]): Counts {
	const { sectionCount, tuningCounts, gapSeconds } = seating;
	const most = noCounts();
	steps.forEach((all, seat) => {
		const { size, first, to, flags, backup, preference } = all;
		const { instrumentOf } = seating.seats[seat] as Seat;
		for (let section = 0; section < sectionCount; section += 1) {
			let [some, isRetuned, points, wish] = [0, 0, 0, 0];
			const end = first[(section + 1) * size] as number;
			for (let step = first[section * size] as number; step < end; step += 1) {
				some |= flags[step] as number;
				points = Math.max(points, backup[step] as number);
				wish = Math.max(wish, preference[step] as number);
				const isGiven = ((flags[step] as number) & BEGINS) !== 0;
				const instrument = instrumentOf[to[step] as number] as number;
				if (isGiven && (tuningCounts[instrument] as number) > 1) isRetuned = 1;
			}
			const add = (place: number, count: number): void => {
				most[place] = (most[place] as number) + count;
			};
			for (const [flag, place] of FLAGGED) add(place, some & flag ? 1 : 0);
			add(OVER_GAP, some & BEGINS && Number.isFinite(gapSeconds[section]) ? 1 : 0);
			add(BACKUP, points);
			add(RETUNINGS, isRetuned);
			add(PREFERENCE, wish);
		}
	});
	return most;
}

/**
 * Everything that the steps lead to.
 *
 * @example
 * allPossible(graph).length // => 3
 */
export function allPossible(graph: SearchGraph): Possible {
	return graph.seating.seats.map((seat, index) => {
		const all = new Uint8Array(graph.seating.sectionCount * seat.hands.length).fill(1);
		return pruned(graph, index, all) ?? all;
	});
}

/** One hand of one seat in one section. */
export type HandAt = { readonly seat: number; readonly section: number; readonly hand: number };

/**
 * What is still possible with this hand there, or without it; null where that is nothing.
 *
 * @example
 * possibleWith(graph, allPossible(graph), { at: { seat: 0, section: 0, hand: 2 }, isIt: true }) !== null // => true
 */
export function possibleWith(
	graph: SearchGraph,
	possible: Possible,
	{ at, isIt }: { readonly at: HandAt; readonly isIt: boolean },
): Possible | null {
	const { seat, section, hand } = at;
	const size = graph.seating.seats[seat]?.hands.length ?? 0;
	const mine = (possible[seat] as Uint8Array).slice();
	if (isIt) mine.fill(0, section * size, (section + 1) * size);
	mine[section * size + hand] = isIt ? 1 : 0;
	const left = pruned(graph, seat, mine);
	return left === null ? null : possible.with(seat, left);
}

/** Without what no step leads to, and what leads nowhere: arc consistency on a layered graph, forwards and back. */
function pruned(graph: SearchGraph, seat: number, mine: Uint8Array): Uint8Array | null {
	const { sectionCount, seats } = graph.seating;
	const { size, first, to } = graph.steps[seat] as Steps;
	const { start } = seats[seat] as Seat;
	const reached = new Uint8Array(mine.length);
	for (let section = 0; section < sectionCount; section += 1) {
		const row = section * size;
		for (let hand = 0; hand < size; hand += 1) {
			const isFrom = section === 0 ? hand === start : reached[row - size + hand] === 1;
			if (!isFrom) continue;
			for (
				let step = first[row + hand] as number;
				step < (first[row + hand + 1] as number);
				step += 1
			) {
				const next = row + (to[step] as number);
				if (mine[next] === 1) reached[next] = 1;
			}
		}
	}
	for (let section = sectionCount - 1; section > 0; section -= 1) {
		const row = section * size;
		for (let hand = 0; hand < size; hand += 1) {
			if (reached[row - size + hand] === 0) continue;
			let leads = 0;
			for (
				let step = first[row + hand] as number;
				step < (first[row + hand + 1] as number);
				step += 1
			) {
				leads |= reached[row + (to[step] as number)] as number;
			}
			if (leads === 0) reached[row - size + hand] = 0;
		}
	}
	return sectionCount > 0 && !reached.subarray(0, size).includes(1) ? null : reached;
}

/**
 * Whether several hands are possible for a seat in a section.
 *
 * @example
 * isOpen(graph, allPossible(graph), { seat: 2, section: 0 }) // => false
 */
export function isOpen(
	{ seating }: SearchGraph,
	possible: Possible,
	{ seat, section }: { readonly seat: number; readonly section: number },
): boolean {
	const size = (seating.seats[seat] as Seat).hands.length;
	const row = (possible[seat] as Uint8Array).subarray(section * size, (section + 1) * size);
	return row.indexOf(1) !== row.lastIndexOf(1);
}
