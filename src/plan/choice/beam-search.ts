// The best choice for all players together: a search through the sections, one layer after the other (labels of a
// shortest path with resources; M. Desrochers, F. Soumis 1988, from memory). Of what is reached in a layer what is
// dominated goes (the same hands for no less, however the instruments are tuned), then what cannot become better
// than the best known by its cost to go; then all but the first few (beam search, B. T. Lowerre 1976, from memory),
// more of them at each try. What had to be dropped bounds how much better the best can be; where nothing had to,
// it is the best.

import { countOverGap } from '../schedule/fit.ts';
import { leastOf, type Rest } from './cost-to-go.ts';
import { type Counts, noCounts, OVER_GAP, RETUNINGS } from './criteria.ts';
import type { Domain, Domains } from './domains.ts';
import type { SearchGraph } from './search-graph.ts';
import type { Elsewhere, Step } from './steps.ts';

/** How many steps may still be looked at; counted, so that the same night gives the same plan. */
export type Budget = { left: number };

/** A choice for all: for each seat, the hand in each section. */
export type Hands = readonly Int16Array[];

export type Found = {
	readonly hands: Hands;
	readonly counts: Counts;
	/** Nothing costs less. */
	readonly bound: number;
};

/** So many are gone on from in each layer, at one try after the other. */
const WIDTHS = [2, 24, 240, 2400];
/** What putting together one step of all costs of the budget, beside the steps looked at for it. */
const ARRIVAL = 10;
/** So many steps are looked at beyond the budget to find any step of all from one label. */
const OVERDRAWN = 20_000;

/** What has been reached: hands and tunings after some sections. */
type Label = {
	/** The step of each seat that led here; none at the root. */
	readonly steps: readonly Step[];
	readonly hands: readonly number[];
	/** For each instrument the tuning that it is in. */
	readonly tunings: Uint8Array;
	readonly cost: number;
	/** With the least that the rest can cost. */
	readonly least: number;
	/** Of the cost what the steps alone do not tell, since the root. */
	readonly retunings: number;
	readonly overGap: number;
	readonly before: Label | null;
};

/**
 * The cheapest choice in these domains, or the best found; null where the budget led to none.
 *
 * @example
 * beamSearch(graph, allDomains(graph), { left: 10000 }).counts[5] // => 2
 */
export function beamSearch(graph: SearchGraph, domains: Domains, budget: Budget): Found | null {
	const search = new Search(graph, domains, budget);
	let best: Label | null = null;
	let bound = search.root.least;
	for (const width of WIDTHS) {
		const upper: number = best?.cost ?? Number.POSITIVE_INFINITY;
		if (bound >= upper || (best !== null && budget.left <= 0)) break;
		const { label, dropped } = search.through(width, upper);
		best = label ?? best;
		bound = Math.max(bound, Math.min(dropped, best?.cost ?? Number.POSITIVE_INFINITY));
	}
	return best && { ...choiceAt(best, graph.seating.seats.length), bound };
}

/** The hands on the way to this label, and what they count. */
function choiceAt(last: Label, seats: number): Omit<Found, 'bound'> {
	const path: Label[] = [];
	for (let at: Label | null = last; at?.before; at = at.before) path.unshift(at);
	const counts = noCounts();
	counts[RETUNINGS] = last.retunings;
	counts[OVER_GAP] = last.overGap;
	for (const step of path.flatMap(({ steps }) => steps)) {
		for (const [place, count] of step.counts.entries()) {
			counts[place] = (counts[place] as number) + count;
		}
	}
	const hands = Array.from({ length: seats }, (_, seat) =>
		Int16Array.from(path, (label) => label.hands[seat] as number),
	);
	return { hands, counts };
}

/** A step of one seat, with the least that it and all after it cost this one. */
type Way = { readonly step: Step; readonly least: number };

class Search {
	readonly root: Label;
	readonly #graph: SearchGraph;
	readonly #domains: Domains;
	readonly #budget: Budget;
	/** Of the step that is being put together: whose each instrument is, and how. */
	readonly #holder: (Step | null)[];

	constructor(graph: SearchGraph, domains: Domains, budget: Budget) {
		const { seats, instrumentCount } = graph.seating;
		this.#graph = graph;
		this.#domains = domains;
		this.#budget = budget;
		this.#holder = new Array<Step | null>(instrumentCount).fill(null);
		const hands = seats.map(({ start }) => start);
		// Every instrument is in its first tuning.
		const tunings = new Uint8Array(instrumentCount);
		const least = this.#leastFrom(0, hands, tunings);
		this.root = {
			steps: [],
			hands,
			tunings,
			cost: 0,
			least,
			retunings: 0,
			overGap: 0,
			before: null,
		};
	}

	/** One try: the best that is better than `upper`, and the least that anything dropped could cost. */
	through(width: number, upper: number): { label: Label | null; dropped: number } {
		let labels: readonly Label[] = [this.root];
		let dropped = Number.POSITIVE_INFINITY;
		for (let section = 0; section < this.#graph.seating.sectionCount; section += 1) {
			const layer = new Layer({ section, width, upper, retuning: this.#weight(RETUNINGS) });
			// With the budget gone the best of each layer is still taken to the end.
			const going = this.#budget.left > 0 ? labels : labels.slice(0, 1);
			for (const { least } of labels.slice(going.length)) layer.drop(least);
			for (const label of going) this.#goOn(label, layer);
			labels = layer.best();
			dropped = Math.min(dropped, layer.dropped);
		}
		return { label: labels[0] ?? null, dropped };
	}

	/** Into the layer with what all can do from this label, depth first, who has no choice before the others. */
	#goOn(label: Label, layer: Layer): void {
		const budget = this.#budget;
		const lists = label.hands.map((_, seat) => this.#waysFrom(label, layer.section, seat));
		const inTurn = lists.map((_, seat) => seat);
		const isOpen = (seat: number) => Number((lists[seat]?.length ?? 0) > 1);
		inTurn.sort((one, other) => isOpen(one) - isOpen(other));
		const overdrawn = Math.min(0, budget.left) - OVERDRAWN;
		const chosen: Step[] = [];
		let isAny = false;
		// `least`: of those that have chosen by what they chose, of the others by their cheapest.
		const choose = (turn: number, least: number): void => {
			if (turn === inTurn.length) {
				budget.left -= ARRIVAL;
				if (!this.#goTogether(chosen)) return;
				isAny = true;
				layer.add(this.#arrived(label, chosen, layer.section));
				return;
			}
			const seat = inTurn[turn] as number;
			const ways = lists[seat] as readonly Way[];
			for (const { step, least: own } of ways) {
				budget.left -= 1;
				const atLeast = least + own - (ways[0] as Way).least;
				if (atLeast >= layer.upper) break;
				// What the beam has no room for, or the budget, is left out, and bounds what was lost by it.
				if (atLeast >= layer.limit || budget.left <= (isAny ? 0 : overdrawn)) {
					layer.drop(atLeast);
					break;
				}
				const { instrument } = step;
				if (instrument >= 0 && this.#holder[instrument] !== null) continue;
				chosen[seat] = step;
				if (instrument >= 0) this.#holder[instrument] = step;
				choose(turn + 1, atLeast);
				if (instrument >= 0) this.#holder[instrument] = null;
			}
		};
		choose(0, label.least);
	}

	/** The ways on of one seat, the cheapest first. */
	#waysFrom({ hands, tunings }: Label, section: number, seat: number): readonly Way[] {
		const { has } = this.#domains[seat] as Domain;
		const retuning = this.#weight(RETUNINGS);
		const row = section * (this.#graph.seating.seats[seat]?.hands.length as number);
		const ways: Way[] = [];
		const steps = this.#graph.steps[seat]?.[section]?.from[hands[seat] as number] ?? [];
		for (const step of steps.flat()) {
			if (has[row + step.to] === 0) continue;
			const { instrument, tuning, isTuned } = step;
			const before = tunings[instrument] as number;
			// Whoever else tunes it pays for that at least as much as it spares.
			if (step.begins) tunings[instrument] = tuning;
			const toGo = this.#toGo(section + 1, seat, step.to);
			const least = step.cost + leastOf(toGo, tunings, retuning);
			if (step.begins) tunings[instrument] = before;
			ways.push({ step, least: isTuned && before !== tuning ? least + retuning : least });
		}
		return ways.sort((one, other) => one.least - other.least);
	}

	/** Whoever does without does so because others have it. */
	#goTogether(steps: readonly Step[]): boolean {
		const isElsewhere = ({ instrument, isFirm }: Elsewhere, step: Step): boolean => {
			const holder = this.#holder[instrument] as Step | null;
			return holder !== null && holder !== step && (holder.isFirm || !isFirm);
		};
		return steps.every(
			(step) =>
				step.elsewhere.every((one) => isElsewhere(one, step)) &&
				(step.givenUp < 0 || isElsewhere({ instrument: step.givenUp, isFirm: false }, step)),
		);
	}

	/** Where all have their steps. */
	#arrived(before: Label, steps: readonly Step[], section: number): Label {
		let { tunings, retunings, overGap } = before;
		let cost = before.cost;
		let alone = 0;
		const seconds: number[] = [];
		for (const step of steps) {
			cost += step.cost;
			if (!step.begins) continue;
			seconds.push(step.seconds);
			alone += step.counts[OVER_GAP] as number;
			if (tunings[step.instrument] === step.tuning) continue;
			tunings = tunings.with(step.instrument, step.tuning);
			retunings += 1;
		}
		overGap += countOverGap(seconds, this.#graph.seating.gapSeconds[section] as number) - alone;
		cost += (retunings - before.retunings) * this.#weight(RETUNINGS);
		cost += (overGap - before.overGap) * this.#weight(OVER_GAP);
		const hands = steps.map(({ to }) => to);
		const least = cost + this.#leastFrom(section + 1, hands, tunings);
		return { steps: [...steps], hands, tunings, cost, least, retunings, overGap, before };
	}

	/** The least that the rest costs each alone, all together. */
	#leastFrom(section: number, hands: readonly number[], tunings: Uint8Array): number {
		const retuning = this.#weight(RETUNINGS);
		return hands.reduce(
			(sum, hand, seat) => sum + leastOf(this.#toGo(section, seat, hand), tunings, retuning),
			0,
		);
	}

	#toGo(section: number, seat: number, hand: number): readonly Rest[] {
		const size = this.#graph.seating.seats[seat]?.hands.length as number;
		return this.#domains[seat]?.toGo[section * size + hand] as readonly Rest[];
	}

	#weight(place: number): number {
		return this.#graph.weights.of[place] as number;
	}
}

type Aim = {
	readonly section: number;
	/** So many have room. */
	readonly width: number;
	/** What costs as much is no better than the best known. */
	readonly upper: number;
	readonly retuning: number;
};

/** What is reached in one section, without what is dominated. */
class Layer {
	readonly section: number;
	readonly upper: number;
	/** What costs as much at the least has no room any more. */
	limit = Number.POSITIVE_INFINITY;
	/** The least that anything dropped could cost. */
	dropped = Number.POSITIVE_INFINITY;
	readonly #retuning: number;
	readonly #width: number;
	readonly #byHands = new Map<string, Label[]>();
	/** The least costs of the best that were added, in rising order. */
	readonly #least: number[] = [];

	constructor({ section, width, upper, retuning }: Aim) {
		this.section = section;
		this.upper = upper;
		this.#retuning = retuning;
		this.#width = width;
	}

	drop(least: number): void {
		this.dropped = Math.min(this.dropped, least);
	}

	/** As many of the best as have room. */
	best(): readonly Label[] {
		const all = [...this.#byHands.values()].flat();
		all.sort((one, other) => one.least - other.least);
		for (const { least } of all.slice(this.#width)) this.drop(least);
		return all.slice(0, this.#width);
	}

	add(label: Label): void {
		if (label.least >= this.upper) return;
		this.#narrow(label.least);
		const key = label.hands.join();
		const known = this.#byHands.get(key) ?? [];
		if (known.some((one) => this.#dominates(one, label))) return;
		const left = known.filter((one) => !this.#dominates(label, one));
		this.#byHands.set(key, [...left, label]);
	}

	#narrow(least: number): void {
		if (least >= this.limit) return;
		let place = this.#least.length;
		while (place > 0 && (this.#least[place - 1] as number) > least) place -= 1;
		this.#least.splice(place, 0, least);
		this.#least.length = Math.min(this.#least.length, this.#width);
		if (this.#least.length === this.#width) this.limit = this.#least.at(-1) as number;
	}

	/** With the same hands it costs no more, whatever has to be tuned again for it. */
	#dominates(one: Label, other: Label): boolean {
		let { cost } = one;
		for (let track = 0; track < one.tunings.length; track += 1) {
			if (one.tunings[track] !== other.tunings[track]) cost += this.#retuning;
		}
		return cost <= other.cost;
	}
}
