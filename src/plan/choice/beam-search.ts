// The best choice for all players together: branch and bound over the sections, one layer after the other.
// Of what is reached in a layer what is dominated goes (the same hands for no less, however the instruments
// are tuned), then what cannot become better than the best known by its cost to go; then all but the first
// few (beam search, B. T. Lowerre 1976, from memory), more of them at each try. What had to be dropped
// bounds how much better the best can be; where nothing had to, it is the best.

import { countOverGap } from '../schedule/fit.ts';
import type { CostToGo } from './cost-to-go.ts';
import { leastFrom } from './cost-to-go.ts';
import type { Hands } from './count-hands.ts';
import { OVER_GAP, RETUNINGS } from './criteria.ts';
import type { Possible, SearchGraph } from './search-graph.ts';
import type { Seat } from './seats.ts';
import { BEGINS, IS_FIRM, IS_GIVEN_UP, IS_MISSING, type Steps } from './steps.ts';

/** How many steps may still be looked at; counted, so that the same night gives the same plan. */
export type Budget = {
	left: number;
	/** Once gone it may be overdrawn in each section anew, so that a way through all of them is found. */
	readonly isAnewInEach?: boolean;
};

export type Found = {
	/** Null where the budget led to none. */
	readonly hands: Hands | null;
	readonly cost: number;
	/** Nothing costs less. */
	readonly bound: number;
};

/** So many are gone on from in each layer, at one try after the other. */
const WIDTHS = [2, 24, 240, 2400];
/** What putting together one step of all costs of the budget, beside the steps looked at for it. */
const ARRIVAL = 10;
/** So far a budget is overdrawn to find any step of all at all. */
const OVERDRAWN = -20_000;

/** What has been reached: hands and tunings after some sections. */
type Label = {
	readonly hands: Int16Array;
	readonly tunings: Uint8Array;
	readonly cost: number;
	/** With the least that the rest can cost. */
	readonly least: number;
	readonly before: Label | null;
};

/**
 * The cheapest choice in what is possible, or the best found. `toGo`: of each seat alone.
 *
 * @example
 * beamSearch({ graph, possible, toGo, budget: { left: 10000 } }).cost >= 0 // => true
 */
export function beamSearch(asked: Asked): Found {
	const search = new Search(asked);
	let best: Label | null = null;
	let bound = search.root.least;
	for (const width of WIDTHS) {
		const upper = best?.cost ?? Number.POSITIVE_INFINITY;
		if (bound >= upper) break;
		const { label, dropped } = search.through(width, upper);
		if (label !== null) best = label;
		bound = Math.max(bound, Math.min(dropped, best?.cost ?? Number.POSITIVE_INFINITY));
		if (best !== null && asked.budget.left <= 0) break;
	}
	if (best === null) return { hands: null, cost: Number.POSITIVE_INFINITY, bound };
	return { hands: search.pathTo(best), cost: best.cost, bound: Math.min(bound, best.cost) };
}

type Asked = {
	readonly graph: SearchGraph;
	readonly possible: Possible;
	readonly toGo: readonly CostToGo[];
	readonly budget: Budget;
};

class Search {
	readonly root: Label;
	readonly #graph: SearchGraph;
	readonly #possible: Possible;
	readonly #toGo: readonly CostToGo[];
	readonly #budget: Budget;
	readonly #seats: readonly Seat[];
	readonly #retuning: number;
	readonly #overGap: number;
	/** Of the step that is being put together: for each seat its step, and whose each instrument is. */
	readonly #chosen: Int32Array;
	readonly #holder: Int8Array;
	readonly #seconds: number[] = [];

	constructor({ graph, possible, toGo, budget }: Asked) {
		const { seating, weights } = graph;
		this.#graph = graph;
		this.#possible = possible;
		this.#toGo = toGo;
		this.#budget = budget;
		this.#seats = seating.seats;
		this.#retuning = weights.of[RETUNINGS] as number;
		this.#overGap = weights.of[OVER_GAP] as number;
		this.#chosen = new Int32Array(seating.seats.length);
		this.#holder = new Int8Array(seating.instrumentCount).fill(-1);
		const hands = Int16Array.from(this.#seats, ({ start }) => start);
		// Every instrument is found in its first tuning.
		const tunings = new Uint8Array(graph.countedBy.length).fill(1);
		const least = this.#leastFrom(0, hands, tunings);
		this.root = { hands, tunings, cost: 0, least, before: null };
	}

	/** One try: the best that is better than `upper`, and the least that anything dropped could cost. */
	through(
		width: number,
		upper: number,
	): { readonly label: Label | null; readonly dropped: number } {
		let layer: readonly Label[] = [this.root];
		let dropped = Number.POSITIVE_INFINITY;
		const { sectionCount } = this.#graph.seating;
		for (let section = 0; section < sectionCount; section += 1) {
			const next = new Layer(this.#retuning, width);
			// With the budget gone the best of each layer is still taken to the end.
			const going = this.#budget.left > 0 ? layer : layer.slice(0, 1);
			for (const label of layer.slice(going.length)) dropped = Math.min(dropped, label.least);
			for (const label of going) {
				dropped = Math.min(dropped, this.#goOn(label, section, { next, upper }));
			}
			const all = next.labels().sort((one, other) => one.least - other.least);
			for (const label of all.slice(width)) dropped = Math.min(dropped, label.least);
			layer = all.slice(0, width);
		}
		const [first = null] = layer;
		return { label: first, dropped };
	}

	/** The hands on the way to this label. */
	pathTo(label: Label): Hands {
		const { sectionCount } = this.#graph.seating;
		const hands = this.#seats.map(() => new Int16Array(sectionCount));
		let section = sectionCount - 1;
		for (let at: Label | null = label; at?.before; at = at.before, section -= 1) {
			hands.forEach((mine, seat) => {
				mine[section] = (at as Label).hands[seat] as number;
			});
		}
		return hands;
	}

	/** What all can do from this label, the best of it; gives back what the rest could cost at the least. */
	#goOn(label: Label, section: number, { next, upper }: Aim): number {
		const budget = this.#budget;
		const rest = new Float64Array(this.#seats.length + 1);
		const lists = this.#seats.map((_, seat) => this.#stepsFrom(label, section, seat));
		for (let seat = lists.length - 1; seat >= 0; seat -= 1) {
			const [first] = lists[seat] as StepsFrom;
			if (first === undefined) return Number.POSITIVE_INFINITY;
			rest[seat] = (rest[seat + 1] as number) + first.least;
		}
		let dropped = Number.POSITIVE_INFINITY;
		let isAny = false;
		const overdrawn = OVERDRAWN + (budget.isAnewInEach === true ? Math.min(0, budget.left) : 0);
		const choose = (seat: number, least: number): void => {
			if (seat === lists.length) {
				budget.left -= ARRIVAL;
				if (this.#arrive(label, section, { next, upper })) isAny = true;
				return;
			}
			for (const { step, least: own } of lists[seat] as StepsFrom) {
				budget.left -= 1;
				const sum = least + own;
				const atLeast = sum + (rest[seat + 1] as number);
				if (atLeast >= upper) break;
				// What the beam has no room for, or the budget, is left out, and bounds what was lost by it.
				if (atLeast >= next.limit || budget.left <= (isAny ? 0 : overdrawn)) {
					dropped = Math.min(dropped, atLeast);
					break;
				}
				const to = this.#graph.steps[seat]?.to[step] as number;
				const instrument = this.#seats[seat]?.instrumentOf[to] as number;
				if (instrument >= 0) {
					if ((this.#holder[instrument] as number) >= 0) continue;
					this.#holder[instrument] = seat;
				}
				this.#chosen[seat] = step;
				choose(seat + 1, sum);
				if (instrument >= 0) this.#holder[instrument] = -1;
			}
		};
		choose(0, label.cost);
		return dropped;
	}

	/**
	 * The steps of one seat, each with the least that it and all after it cost this one. Whoever else tunes
	 * an instrument as this one wants it pays for that at least as much as it spares.
	 */
	#stepsFrom({ hands, tunings }: Label, section: number, seat: number): StepsFrom {
		const { size, first, to, flags } = this.#graph.steps[seat] as Steps;
		const { instrumentOf, tuningOf } = this.#seats[seat] as Seat;
		const toGo = this.#toGo[seat] as CostToGo;
		const costs = this.#graph.costs[seat] as Float64Array;
		const mine = this.#possible[seat] as Uint8Array;
		const row = section * size;
		const from = row + (hands[seat] as number);
		const found: { step: number; least: number }[] = [];
		for (let step = first[from] as number; step < (first[from + 1] as number); step += 1) {
			const hand = to[step] as number;
			if (mine[row + hand] === 0) continue;
			let least = costs[step] as number;
			const isBegun = ((flags[step] as number) & BEGINS) !== 0;
			const track = isBegun ? (this.#graph.trackOf[instrumentOf[hand] as number] as number) : -1;
			const tuned = track < 0 ? 0 : (tunings[track] as number);
			const tuning = (tuningOf[hand] as number) + 1;
			if (track >= 0 && tuned !== tuning && this.#graph.countedBy[track] === seat) {
				least += this.#retuning;
			}
			if (track >= 0) tunings[track] = tuning;
			least += leastFrom(toGo, {
				section: section + 1,
				hand,
				found: tunings,
				retuning: this.#retuning,
			});
			if (track >= 0) tunings[track] = tuned;
			if (least === Number.POSITIVE_INFINITY) continue;
			let at = found.length;
			found.push({ step, least });
			for (; at > 0 && (found[at - 1] as { least: number }).least > least; at -= 1) {
				found[at] = found[at - 1] as (typeof found)[number];
			}
			found[at] = { step, least };
		}
		return found;
	}

	/** All have their steps: whether they go together, and what that comes to. */
	#arrive(label: Label, section: number, { next, upper }: Aim): boolean {
		if (!this.#goTogether(section)) return false;
		const seats = this.#seats;
		const chosen = this.#chosen;
		const seconds = this.#seconds;
		const { gapSeconds, handOverSeconds } = this.#graph.seating;
		const gap = gapSeconds[section] as number;
		const hands = new Int16Array(seats.length);
		let { cost, tunings } = label;
		let apart = 0;
		seconds.length = 0;
		for (let seat = 0; seat < seats.length; seat += 1) {
			const { to, flags } = this.#graph.steps[seat] as Steps;
			const step = chosen[seat] as number;
			const hand = to[step] as number;
			hands[seat] = hand;
			cost += (this.#graph.costs[seat] as Float64Array)[step] as number;
			if (((flags[step] as number) & BEGINS) === 0) continue;
			const { instrumentOf, tuningOf } = seats[seat] as Seat;
			const instrument = instrumentOf[hand] as number;
			const own = handOverSeconds[instrument] as number;
			seconds.push(own);
			if (own > gap) apart += 1;
			const track = this.#graph.trackOf[instrument] as number;
			const tuning = (tuningOf[hand] as number) + 1;
			if (track < 0 || tunings[track] === tuning) continue;
			if (tunings === label.tunings) tunings = tunings.slice();
			tunings[track] = tuning;
			cost += this.#retuning;
		}
		if (seconds.length > 1 && gap !== Number.POSITIVE_INFINITY) {
			cost += (countOverGap(seconds, gap) - apart) * this.#overGap;
		}
		const least = cost + this.#leastFrom(section + 1, hands, tunings);
		if (least < upper) next.add({ hands, tunings, cost, least, before: label });
		return true;
	}

	/** Whoever does without does so because others firmly have it; whoever has nothing could have nothing. */
	#goTogether(section: number): boolean {
		for (let seat = 0; seat < this.#seats.length; seat += 1) {
			const steps = this.#graph.steps[seat] as Steps;
			const step = this.#chosen[seat] as number;
			const taken = steps.takenBy[step] as number;
			const isFirm = ((steps.flags[step] as number) & IS_GIVEN_UP) === 0;
			if (taken >= 0 && !this.#isElsewhere(taken, { seat, isFirm })) return false;
			if (((steps.flags[step] as number) & IS_MISSING) === 0) continue;
			const { slots, instrumentOf } = this.#seats[seat] as Seat;
			const slot = slots[section] as Seat['slots'][number];
			if (slot.primary >= 0) {
				const instrument = instrumentOf[slot.primary] as number;
				if (!this.#isElsewhere(instrument, { seat, isFirm: true })) return false;
			}
			for (const hand of slot.others) {
				const instrument = instrumentOf[hand] as number;
				if (!this.#isElsewhere(instrument, { seat, isFirm: false })) return false;
			}
		}
		return true;
	}

	#isElsewhere(instrument: number, { seat, isFirm }: { seat: number; isFirm: boolean }): boolean {
		const holder = this.#holder[instrument] as number;
		if (holder < 0 || holder === seat) return false;
		const flags = this.#graph.steps[holder]?.flags[this.#chosen[holder] as number] as number;
		return !isFirm || (flags & IS_FIRM) !== 0;
	}

	#leastFrom(section: number, hands: Int16Array, found: Uint8Array): number {
		let sum = 0;
		for (let seat = 0; seat < hands.length; seat += 1) {
			const toGo = this.#toGo[seat] as CostToGo;
			const hand = hands[seat] as number;
			sum += leastFrom(toGo, { section, hand, found, retuning: this.#retuning });
		}
		return sum;
	}
}

type Aim = { readonly next: Layer; readonly upper: number };

type StepsFrom = readonly { readonly step: number; readonly least: number }[];

/** What is reached in one section, without what is dominated. */
class Layer {
	/** What costs as much at the least has no room any more. */
	limit = Number.POSITIVE_INFINITY;
	readonly #retuning: number;
	readonly #width: number;
	readonly #byHands = new Map<string, Label[]>();
	/** The least costs of the best that were added, in rising order. */
	readonly #best: number[] = [];

	constructor(retuning: number, width: number) {
		this.#retuning = retuning;
		this.#width = width;
	}

	labels(): Label[] {
		return [...this.#byHands.values()].flat();
	}

	add(label: Label): void {
		this.#narrow(label.least);
		const key = label.hands.join();
		const known = this.#byHands.get(key);
		if (known === undefined) {
			this.#byHands.set(key, [label]);
			return;
		}
		if (known.some((one) => this.#dominates(one, label))) return;
		const left = known.filter((one) => !this.#dominates(label, one));
		left.push(label);
		this.#byHands.set(key, left);
	}

	#narrow(least: number): void {
		if (least >= this.limit) return;
		const best = this.#best;
		let place = best.push(least) - 1;
		for (; place > 0 && (best[place - 1] as number) > least; place -= 1) {
			best[place] = best[place - 1] as number;
		}
		best[place] = least;
		best.length = Math.min(best.length, this.#width);
		if (best.length === this.#width) this.limit = best.at(-1) as number;
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
