// What the rest of the night costs one player alone at the least, from each hand on and however the
// instruments are tuned by then: dynamic programming from the last section back. Where a tuning matters the
// rest says which it wants to find; a rest that costs no less however they are tuned is dropped (dominance).

import { RETUNINGS } from './criteria.ts';
import type { Possible, SearchGraph } from './search-graph.ts';
import { BEGINS, COUNTS, type Steps } from './steps.ts';

/** How many rests of one hand are kept apart at the most: the cheapest; what is dropped only lowers the bound. */
const MOST_RESTS = 24;

/** One way for the rest to be gone: what it costs with every instrument found as it wants it. */
type Rest = {
	readonly cost: number;
	/** For each instrument whose re-tunings this seat counts, the tuning that it wants to find, plus one; 0 where it does not matter. */
	readonly wants: Uint8Array;
};

type Layer = readonly (readonly Rest[])[];

export type CostToGo = {
	/** Before each section and after the last, for each hand the rests, cheapest first; none where nothing leads on. */
	readonly rests: readonly Layer[];
	/** The tracked instruments whose re-tunings it counts. */
	readonly tracks: readonly number[];
	/** What was possible for it. */
	readonly mine: Uint8Array;
	/** How many rests were held against others. */
	readonly effort: number;
};

export type Alone = {
	readonly seat: number;
	/** The same of this seat where other hands were possible: of what comes after the last difference nothing changes. */
	readonly before: CostToGo | null;
};

/**
 * The cost to go of one seat, as if nobody else took anything.
 *
 * @example
 * costToGo(graph, possible, { seat: 2, before: null }).effort // => 3
 */
export function costToGo(
	graph: SearchGraph,
	possible: Possible,
	{ seat, before }: Alone,
): CostToGo {
	const { seating, weights, countedBy } = graph;
	const steps = graph.steps[seat] as Steps;
	const costs = graph.costs[seat] as Float64Array;
	const mine = possible[seat] as Uint8Array;
	const { instrumentOf, tuningOf } = seating.seats[seat] as (typeof seating.seats)[number];
	const { size, first, to, flags } = steps;
	const retuning = weights.of[RETUNINGS] as number;
	const tracks = [...countedBy.keys()].filter((track) => countedBy[track] === seat);
	const trackOf = graph.trackOf.map((track) => tracks.indexOf(track));
	const { sectionCount } = seating;
	const nothing: Rest[] = [{ cost: 0, wants: new Uint8Array(tracks.length) }];
	const rests: Layer[] = before?.rests.slice() ?? [];
	rests[sectionCount] ??= new Array(size).fill(nothing);
	const last = before === null ? sectionCount - 1 : lastDifference(before.mine, mine, size);
	let effort = 0;
	for (let section = last; section >= 0; section -= 1) {
		const behind = rests[section + 1] as Layer;
		const row = section * size;
		// Whatever is given up, what is begun instead costs the same: worked out once for all hands.
		const begun = [new Begun(), new Begun()];
		const add = (all: Rest[], step: number): void => {
			const next = to[step] as number;
			const isBegun = ((flags[step] as number) & BEGINS) !== 0;
			const track = isBegun ? (trackOf[instrumentOf[next] as number] as number) : -1;
			const tuning = (tuningOf[next] as number) + 1;
			const going = { cost: costs[step] as number, track, tuning, retuning };
			const after = behind[next] as readonly Rest[];
			effort += after.length;
			for (const rest of after) insert(all, rest, going);
		};
		const layer = new Array<readonly Rest[]>(size);
		for (let hand = 0; hand < size; hand += 1) {
			const end = first[row + hand + 1] as number;
			const others: number[] = [];
			let shared: Begun | null = null;
			for (let step = first[row + hand] as number; step < end; step += 1) {
				if (mine[row + (to[step] as number)] === 0) continue;
				const kind = flags[step] as number;
				const isShared = (kind & BEGINS) !== 0 && seating.endsStints[section] === 0;
				if (!isShared) {
					others.push(step);
					continue;
				}
				shared = begun[(kind & COUNTS) === 0 ? 0 : 1] as Begun;
				if (shared.takes(to[step] as number)) add(shared.rests, step);
			}
			// Who has nothing else shares the list: what is still added to it by others only lowers the bound.
			const found =
				others.length === 0 && shared !== null ? shared.rests : [...(shared?.rests ?? [])];
			for (const step of others) add(found, step);
			layer[hand] = found;
		}
		rests[section] = layer;
	}
	return { rests, tracks, mine, effort };
}

/** The rests behind every stint that may begin in a section, whichever hands were before. */
class Begun {
	readonly rests: Rest[] = [];
	readonly #hands = new Set<number>();

	/** Whether this hand is not among them yet; from now on it is. */
	takes(hand: number): boolean {
		if (this.#hands.has(hand)) return false;
		this.#hands.add(hand);
		return true;
	}
}

/** The last section in which other hands are possible; -1 for none. */
function lastDifference(one: Uint8Array, other: Uint8Array, size: number): number {
	let at = one.length - 1;
	while (at >= 0 && one[at] === other[at]) at -= 1;
	return Math.floor(at / size);
}

/** The step before a rest. */
type Going = {
	readonly cost: number;
	/** The tracked instrument that the step tunes; -1 for none. */
	readonly track: number;
	/** Into what, plus one. */
	readonly tuning: number;
	readonly retuning: number;
};

/**
 * Adds a rest with the step before it, made only where none is at least as good however the instruments are tuned,
 * and drops those that it is so much better than.
 */
function insert(rests: Rest[], behind: Rest, going: Going): void {
	const { track, tuning, retuning } = going;
	const wanted = track < 0 ? 0 : (behind.wants[track] as number);
	const again = wanted !== 0 && wanted !== tuning ? retuning : 0;
	const cost = behind.cost + going.cost + again;
	let at = 0;
	for (; at < rests.length; at += 1) {
		const other = rests[at] as Rest;
		if (other.cost > cost) break;
		if (isWithin(other, { cost, wants: behind.wants }, going)) return;
	}
	const wants = track < 0 || wanted === tuning ? behind.wants : behind.wants.with(track, tuning);
	const one = { cost, wants };
	const untouched = { ...going, track: -1 };
	for (let index = rests.length - 1; index >= at; index -= 1) {
		if (isWithin(one, rests[index] as Rest, untouched)) rests.splice(index, 1);
	}
	rests.splice(at, 0, one);
	if (rests.length > MOST_RESTS) {
		// What is dropped costs no less than the last that is kept: from there on tunings are not asked for.
		const last = rests[MOST_RESTS - 1] as Rest;
		rests.length = MOST_RESTS - 1;
		rests.push({ cost: last.cost, wants: new Uint8Array(last.wants.length) });
	}
}

/** Whether a rest costs no more than another, where the instruments are as that wants them before its step. */
function isWithin(one: Rest, other: Rest, { track, tuning, retuning }: Going): boolean {
	let { cost } = one;
	for (let at = 0; cost <= other.cost && at < one.wants.length; at += 1) {
		const wanted = one.wants[at] as number;
		const found = at === track ? tuning : (other.wants[at] as number);
		if (wanted !== 0 && wanted !== found) cost += retuning;
	}
	return cost <= other.cost;
}

/** Where a player is, with the tunings that the tracked instruments are in there. */
export type Standing = {
	readonly section: number;
	readonly hand: number;
	/** One item per tracked instrument: its tuning, plus one. */
	readonly found: Uint8Array;
	readonly retuning: number;
};

/**
 * The least that the rest from there costs; infinite where nothing leads on.
 *
 * @example
 * leastFrom(costToGo(graph, possible, { seat: 2, before: null }), { section: 1, hand: 0, found: Uint8Array.of(), retuning: 5 }) // => 0
 */
export function leastFrom(
	{ rests, tracks }: CostToGo,
	{ section, hand, found, retuning }: Standing,
): number {
	let least = Number.POSITIVE_INFINITY;
	const all = rests[section]?.[hand] as readonly Rest[];
	for (let index = 0; index < all.length; index += 1) {
		const rest = all[index] as Rest;
		if (rest.cost >= least) break;
		let sum = rest.cost;
		for (let track = 0; track < tracks.length; track += 1) {
			const wanted = rest.wants[track];
			if (wanted !== 0 && wanted !== found[tracks[track] as number]) sum += retuning;
		}
		if (sum < least) least = sum;
	}
	return least;
}
