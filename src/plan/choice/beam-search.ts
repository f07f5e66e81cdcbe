// The best choice for some players together: branch and bound over the sections, one layer after the other.
// Of what is reached in a layer what is dominated goes (the same hands for no less, however the instruments
// are tuned), then what cannot become better than the best known by its cost to go; then all but the first
// few (beam search, B. T. Lowerre 1976, from memory), more of them at each try. What had to be dropped
// bounds how much better the best can be; where nothing had to, it is the best.

import { countOverGap } from '../schedule/fit.ts';
import type { CostToGo } from './cost-to-go.ts';
import { leastFrom } from './cost-to-go.ts';
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

/** Who is chosen for, with what each costs alone from everywhere on. */
export type Group = {
	readonly seats: readonly number[];
	/** One item per seat. */
	readonly toGo: readonly CostToGo[];
	/** Instruments whose tunings are followed. */
	readonly tracked: readonly number[];
	/** For each of them the member whose cost to go counts its re-tunings. */
	readonly countedBy: readonly number[];
	/** Whether somebody outside the group may have an instrument in a section. */
	readonly mayBeOutside: (instrument: number, section: number) => boolean;
};

export type Found = {
	/** For each seat of the group, the hand in each section; null where nothing better than asked was found. */
	readonly hands: readonly Int16Array[] | null;
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
 * The cheapest choice for a group, or the best found.
 *
 * @example
 * beamSearch({ graph, possible, group, budget: { left: 10000 } }).cost >= 0 // => true
 */
export function beamSearch(asked: {
	readonly graph: SearchGraph;
	readonly possible: Possible;
	readonly group: Group;
	readonly budget: Budget;
}): Found {
	const search = new Search(asked.graph, asked.possible, asked.group);
	let best: Label | null = null;
	let bound = search.root.least;
	for (const width of WIDTHS) {
		const upper = best?.cost ?? Number.POSITIVE_INFINITY;
		if (bound >= upper) break;
		const { label, dropped } = search.through(width, upper, asked.budget);
		if (label !== null) best = label;
		bound = Math.max(bound, Math.min(dropped, best?.cost ?? Number.POSITIVE_INFINITY));
		if (best !== null && asked.budget.left <= 0) break;
	}
	if (best === null) return { hands: null, cost: Number.POSITIVE_INFINITY, bound };
	return { hands: search.pathTo(best), cost: best.cost, bound: Math.min(bound, best.cost) };
}

class Search {
	readonly root: Label;
	readonly #graph: SearchGraph;
	readonly #possible: Possible;
	readonly #group: Group;
	readonly #seats: readonly Seat[];
	readonly #steps: readonly Steps[];
	readonly #costs: readonly Float64Array[];
	readonly #trackOf: Int16Array;
	readonly #retuning: number;
	readonly #overGap: number;
	/** Of the step that is being put together: for each seat its step, and whose each instrument is. */
	readonly #chosen: Int32Array;
	readonly #holder: Int8Array;
	readonly #seconds: number[] = [];

	constructor(graph: SearchGraph, possible: Possible, group: Group) {
		const { seating, weights } = graph;
		this.#graph = graph;
		this.#possible = possible;
		this.#group = group;
		this.#seats = group.seats.map((seat) => seating.seats[seat] as Seat);
		this.#steps = group.seats.map((seat) => graph.steps[seat] as Steps);
		this.#costs = group.seats.map((seat) => graph.costs[seat] as Float64Array);
		this.#trackOf = new Int16Array(seating.instrumentCount).fill(-1);
		group.tracked.forEach((instrument, track) => {
			this.#trackOf[instrument] = track;
		});
		this.#retuning = weights.of[RETUNINGS] as number;
		this.#overGap = weights.of[OVER_GAP] as number;
		this.#chosen = new Int32Array(group.seats.length);
		this.#holder = new Int8Array(seating.instrumentCount).fill(-1);
		const hands = Int16Array.from(this.#seats, ({ start }) => start);
		// Every instrument is found in its first tuning.
		const tunings = new Uint8Array(group.tracked.length).fill(1);
		const least = this.#leastFrom(0, hands, tunings);
		this.root = { hands, tunings, cost: 0, least, before: null };
	}

	/** One try: the best that is better than `upper`, and the least that anything dropped could cost. */
	through(
		width: number,
		upper: number,
		budget: Budget,
	): { readonly label: Label | null; readonly dropped: number } {
		let layer: readonly Label[] = [this.root];
		let dropped = Number.POSITIVE_INFINITY;
		const { sectionCount } = this.#graph.seating;
		for (let section = 0; section < sectionCount; section += 1) {
			const next = new Layer(this.#retuning, width);
			// With the budget gone the best of each layer is still taken to the end.
			const going = budget.left > 0 ? layer : layer.slice(0, 1);
			for (const label of layer.slice(going.length)) dropped = Math.min(dropped, label.least);
			for (const label of going) {
				dropped = Math.min(dropped, this.#goOn(label, section, { next, upper, budget }));
			}
			const all = next.labels().sort((one, other) => one.least - other.least);
			for (const label of all.slice(width)) dropped = Math.min(dropped, label.least);
			layer = all.slice(0, width);
		}
		const [first = null] = layer;
		return { label: first, dropped };
	}

	/** The hands on the way to this label. */
	pathTo(label: Label): readonly Int16Array[] {
		const { sectionCount } = this.#graph.seating;
		const hands = this.#seats.map(() => new Int16Array(sectionCount));
		let section = sectionCount - 1;
		for (let at: Label | null = label; at?.before; at = at.before, section -= 1) {
			hands.forEach((mine, member) => {
				mine[section] = (at as Label).hands[member] as number;
			});
		}
		return hands;
	}

	/** What the group can do from this label, the best of it; gives back what the rest could cost at the least. */
	#goOn(label: Label, section: number, { next, upper, budget }: Aim): number {
		const rest = new Float64Array(this.#seats.length + 1);
		const all = this.#seats.map((_, member) => this.#stepsFrom(label, section, member));
		const lists = all.map((steps, member) => this.#excusable(steps, { all, member, section }));
		for (let member = lists.length - 1; member >= 0; member -= 1) {
			const [first] = lists[member] as StepsFrom;
			if (first === undefined) return Number.POSITIVE_INFINITY;
			rest[member] = (rest[member + 1] as number) + first.least;
		}
		let dropped = Number.POSITIVE_INFINITY;
		let isAny = false;
		const overdrawn = OVERDRAWN + (budget.isAnewInEach === true ? Math.min(0, budget.left) : 0);
		const choose = (member: number, least: number): void => {
			if (member === lists.length) {
				budget.left -= ARRIVAL;
				if (this.#arrive(label, section, { next, upper })) isAny = true;
				return;
			}
			for (const { step, least: own } of lists[member] as StepsFrom) {
				budget.left -= 1;
				const sum = least + own;
				const atLeast = sum + (rest[member + 1] as number);
				if (atLeast >= upper) break;
				// What the beam has no room for, or the budget, is left out, and bounds what was lost by it.
				if (atLeast >= next.limit || budget.left <= (isAny ? 0 : overdrawn)) {
					dropped = Math.min(dropped, atLeast);
					break;
				}
				const to = this.#steps[member]?.to[step] as number;
				const instrument = this.#seats[member]?.instrumentOf[to] as number;
				if (instrument >= 0) {
					if ((this.#holder[instrument] as number) >= 0) continue;
					this.#holder[instrument] = member;
				}
				this.#chosen[member] = step;
				choose(member + 1, sum);
				if (instrument >= 0) this.#holder[instrument] = -1;
			}
		};
		choose(0, label.cost);
		return dropped;
	}

	/** The steps without those that no step of somebody else can make right: doing without what nobody can have. */
	#excusable(
		steps: StepsFrom,
		at: { readonly all: readonly StepsFrom[]; readonly member: number; readonly section: number },
	): StepsFrom {
		const { all, member, section } = at;
		const { takenBy, flags } = this.#steps[member] as Steps;
		const mayHave = (instrument: number): boolean =>
			this.#group.mayBeOutside(instrument, section) ||
			all.some((others, other) => {
				if (other === member) return false;
				const { to } = this.#steps[other] as Steps;
				const { instrumentOf } = this.#seats[other] as Seat;
				return others.some(({ step }) => instrumentOf[to[step] as number] === instrument);
			});
		return steps.filter(({ step }) => {
			const taken = takenBy[step] as number;
			if (taken >= 0 && !mayHave(taken)) return false;
			if (((flags[step] as number) & IS_MISSING) === 0) return true;
			const { slots, instrumentOf } = this.#seats[member] as Seat;
			const { primary, others } = slots[section] as Seat['slots'][number];
			const wanted = primary < 0 ? others : [primary, ...others];
			return wanted.every((hand) => mayHave(instrumentOf[hand] as number));
		});
	}

	/**
	 * The steps of one member, each with the least that it and all after it cost this one. Whoever else tunes
	 * an instrument as this one wants it pays for that at least as much as it spares.
	 */
	#stepsFrom({ hands, tunings }: Label, section: number, member: number): StepsFrom {
		const { size, first, to, flags } = this.#steps[member] as Steps;
		const { instrumentOf, tuningOf } = this.#seats[member] as Seat;
		const toGo = this.#group.toGo[member] as CostToGo;
		const costs = this.#costs[member] as Float64Array;
		const mine = this.#possible[this.#group.seats[member] as number] as Uint8Array;
		const row = section * size;
		const from = row + (hands[member] as number);
		const found: { step: number; least: number }[] = [];
		for (let step = first[from] as number; step < (first[from + 1] as number); step += 1) {
			const hand = to[step] as number;
			if (mine[row + hand] === 0) continue;
			let least = costs[step] as number;
			const isBegun = ((flags[step] as number) & BEGINS) !== 0;
			const track = isBegun ? (this.#trackOf[instrumentOf[hand] as number] as number) : -1;
			const tuned = track < 0 ? 0 : (tunings[track] as number);
			const tuning = (tuningOf[hand] as number) + 1;
			if (track >= 0 && tuned !== tuning && this.#group.countedBy[track] === member) {
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
	#arrive(label: Label, section: number, { next, upper }: Omit<Aim, 'budget'>): boolean {
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
		for (let member = 0; member < seats.length; member += 1) {
			const { to, flags } = this.#steps[member] as Steps;
			const step = chosen[member] as number;
			const hand = to[step] as number;
			hands[member] = hand;
			cost += (this.#costs[member] as Float64Array)[step] as number;
			if (((flags[step] as number) & BEGINS) === 0) continue;
			const { instrumentOf, tuningOf } = seats[member] as Seat;
			const instrument = instrumentOf[hand] as number;
			const own = handOverSeconds[instrument] as number;
			seconds.push(own);
			if (own > gap) apart += 1;
			const track = this.#trackOf[instrument] as number;
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
		for (let member = 0; member < this.#seats.length; member += 1) {
			const steps = this.#steps[member] as Steps;
			const step = this.#chosen[member] as number;
			const taken = steps.takenBy[step] as number;
			const isFirm = ((steps.flags[step] as number) & IS_GIVEN_UP) === 0;
			if (taken >= 0 && !this.#isElsewhere(taken, { section, member, isFirm })) return false;
			if (((steps.flags[step] as number) & IS_MISSING) === 0) continue;
			const seat = this.#seats[member] as Seat;
			const slot = seat.slots[section] as Seat['slots'][number];
			if (slot.primary >= 0) {
				const instrument = seat.instrumentOf[slot.primary] as number;
				if (!this.#isElsewhere(instrument, { section, member, isFirm: true })) return false;
			}
			for (const hand of slot.others) {
				const instrument = seat.instrumentOf[hand] as number;
				if (!this.#isElsewhere(instrument, { section, member, isFirm: false })) return false;
			}
		}
		return true;
	}

	#isElsewhere(
		instrument: number,
		{ section, member, isFirm }: { section: number; member: number; isFirm: boolean },
	): boolean {
		const holder = this.#holder[instrument] as number;
		if (holder < 0 || holder === member) return this.#group.mayBeOutside(instrument, section);
		const flags = this.#steps[holder]?.flags[this.#chosen[holder] as number] as number;
		return !isFirm || (flags & IS_FIRM) !== 0;
	}

	#leastFrom(section: number, hands: Int16Array, found: Uint8Array): number {
		let sum = 0;
		for (let member = 0; member < hands.length; member += 1) {
			const toGo = this.#group.toGo[member] as CostToGo;
			const hand = hands[member] as number;
			sum += leastFrom(toGo, { section, hand, found, retuning: this.#retuning });
		}
		return sum;
	}
}

type Aim = { readonly next: Layer; readonly upper: number; readonly budget: Budget };

type StepsFrom = readonly { readonly step: number; readonly least: number }[];

/** What is reached in one section, without what is dominated. */
class Layer {
	/** What costs as much at the least has no room any more. */
	limit = Number.POSITIVE_INFINITY;
	readonly #retuning: number;
	readonly #width: number;
	readonly #byHands = new Map<string | number, Label[]>();
	/** The least costs of the best that were added, the greatest of them on top: a binary heap. */
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
		const key = label.hands.length === 1 ? (label.hands[0] as number) : label.hands.join();
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
		const heap = this.#best;
		if (heap.length < this.#width) {
			let place = heap.push(least) - 1;
			for (
				let above = (place - 1) >> 1;
				place > 0 && (heap[above] as number) < least;
				above = (place - 1) >> 1
			) {
				heap[place] = heap[above] as number;
				place = above;
			}
			heap[place] = least;
		} else if (least < (heap[0] as number)) {
			let place = 0;
			for (let below = 1; below < heap.length; below = 2 * place + 1) {
				if ((heap[below + 1] ?? Number.NEGATIVE_INFINITY) > (heap[below] as number)) below += 1;
				if ((heap[below] as number) <= least) break;
				heap[place] = heap[below] as number;
				place = below;
			}
			heap[place] = least;
		}
		if (heap.length === this.#width) this.limit = heap[0] as number;
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
