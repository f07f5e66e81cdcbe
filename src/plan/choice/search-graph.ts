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
	TIE,
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
	const counted = steps.map((all, seat) => {
		const counts: number[][] = new Array(all.to.length);
		eachStep(all, (step, section) => {
			counts[step] = countsOf(seating, all, { seat, section, step });
		});
		return counts;
	});
	const weights = weightsFor(mostCounts(seating, steps, counted));
	const costs = counted.map((all) => Float64Array.from(all, (counts) => packed(counts, weights)));
	return { seating, steps, weights, costs };
}

/** The counts packed into one number. */
function packed(counts: Counts, { of }: Weights): number {
	let sum = 0;
	for (let place = 0; place < counts.length; place += 1) {
		sum += (counts[place] as number) * (of[place] as number);
	}
	return sum;
}

function eachStep({ size, first }: Steps, visit: (step: number, section: number) => void): void {
	for (let at = 0; at + 1 < first.length; at += 1) {
		const end = first[at + 1] as number;
		const section = Math.floor(at / size);
		for (let step = first[at] as number; step < end; step += 1) visit(step, section);
	}
}

export type StepAt = { readonly seat: number; readonly section: number; readonly step: number };

/**
 * What one step of one seat counts, alone: re-tunings left out, and gaps that it shares with others.
 *
 * @example
 * countsOf(seating, graph.steps[0], { seat: 0, section: 0, step: 0 })[5] // => 0
 */
export function countsOf(
	seating: Seating,
	steps: Steps,
	{ seat, section, step }: StepAt,
): number[] {
	const flags = steps.flags[step] as number;
	const instrument = seating.seats[seat]?.instrumentOf[steps.to[step] as number] as number;
	const isOver =
		(flags & BEGINS) !== 0 &&
		(seating.handOverSeconds[instrument] as number) > (seating.gapSeconds[section] as number);
	const counts = [0, 0, 0, 0, 0, 0, 0, 0, 0];
	counts[MISSING] = flags & IS_MISSING ? 1 : 0;
	counts[SUBSTITUTED] = flags & IS_SUBSTITUTED ? 1 : 0;
	counts[OVER_GAP] = isOver ? 1 : 0;
	counts[CHANGED] = flags & IS_CHANGED ? 1 : 0;
	counts[BACKUP] = steps.backup[step] as number;
	counts[HAND_OVERS] = flags & COUNTS ? 1 : 0;
	counts[PREFERENCE] = steps.preference[step] as number;
	counts[TIE] = steps.tie[step] as number;
	return counts;
}

/** More than these counts no choice can come to. */
function mostCounts(
	seating: Seating,
	steps: readonly Steps[],
	counted: readonly (readonly Counts[])[],
): Counts {
	const most = [...noCounts()];
	steps.forEach((all, seat) => {
		const ofSection = Array.from({ length: seating.sectionCount }, () => [...noCounts()]);
		eachStep(all, (step, section) => {
			const counts = [...((counted[seat] as readonly Counts[])[step] as Counts)];
			const flags = all.flags[step] as number;
			const isGiven = (flags & BEGINS) !== 0;
			if (isGiven && Number.isFinite(seating.gapSeconds[section])) counts[OVER_GAP] = 1;
			const instrument = seating.seats[seat]?.instrumentOf[all.to[step] as number] as number;
			if (isGiven && (seating.tuningCounts[instrument] as number) > 1) counts[RETUNINGS] = 1;
			const row = ofSection[section] as number[];
			counts.forEach((count, place) => {
				row[place] = Math.max(row[place] as number, count);
			});
		});
		for (const row of ofSection) {
			row.forEach((count, place) => {
				most[place] = (most[place] as number) + count;
			});
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
 * The only hand that is possible for a seat in a section; -1 where there are several. Before the first
 * section it is what is in hands now.
 *
 * @example
 * onlyHand(graph, allPossible(graph), { seat: 2, section: 0 }) // => 0
 */
export function onlyHand(
	{ seating }: SearchGraph,
	possible: Possible,
	{ seat, section }: { readonly seat: number; readonly section: number },
): number {
	const one = seating.seats[seat] as Seat;
	if (section < 0) return one.start;
	const size = one.hands.length;
	const row = (possible[seat] as Uint8Array).subarray(section * size, (section + 1) * size);
	const hand = row.indexOf(1);
	return row.indexOf(1, hand + 1) === -1 ? hand : -1;
}
