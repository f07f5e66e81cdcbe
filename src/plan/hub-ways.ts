// One seat's ways with fewer steps: as what a hand-over costs hardly depends on what was in hands before,
// the hand-overs into a section go through one place more, its hub, from wherever that comes to the same.

import type { SeatWays } from './seat-ways.ts';
import { BEGINS } from './steps.ts';

/** The places of the ways keep their numbers; the hub into section `s` has the number `hubs + s`. */
export type HubWays = {
	readonly ways: SeatWays;
	/** What each step of the ways costs. */
	readonly costs: Float64Array;
	readonly hubs: number;
	/** All places and hubs, each before those that it leads to. */
	readonly order: Int32Array;
	/** The steps from place `p` are numbered from `first[p]` up to `end[p]`. */
	readonly first: Int32Array;
	readonly end: Int32Array;
	readonly to: Int32Array;
	readonly cost: Float64Array;
	readonly own: Int16Array;
	readonly tuning: Uint8Array;
	/** For each place what coming there is taken to cost more than its steps, for re-tunings. */
	readonly more: Float64Array;
};

/**
 * These ways at these costs, through hubs. `more` is for the places without the hubs.
 *
 * @example
 * hubWays(ways, ways.cost).order.length // => 8
 */
export function hubWays(
	ways: SeatWays,
	costs: Float64Array,
	more: Float64Array = new Float64Array(ways.handOf.length),
): HubWays {
	return new Building(ways, costs).built(more);
}

class Building {
	readonly #ways: SeatWays;
	readonly #costs: Float64Array;
	readonly #order: number[] = [];
	readonly #first: Int32Array;
	readonly #end: Int32Array;
	readonly #to: number[] = [];
	readonly #cost: number[] = [];
	/** For each step its number among those of the ways; -1 for one to a hub. */
	readonly #step: number[] = [];
	/** For each place what coming to it from its hub costs; infinite where the hub does not lead there. */
	readonly #fromHub: Float64Array;

	constructor(ways: SeatWays, costs: Float64Array) {
		this.#ways = ways;
		this.#costs = costs;
		const count = ways.handOf.length + ways.firstPlace.length;
		this.#first = new Int32Array(count);
		this.#end = new Int32Array(count);
		this.#fromHub = new Float64Array(count).fill(Number.POSITIVE_INFINITY);
	}

	built(more: Float64Array): HubWays {
		const { firstPlace, handOf } = this.#ways;
		const moreAt = new Float64Array(this.#first.length).fill(Number.POSITIVE_INFINITY);
		moreAt.set(more);
		for (let section = 0, place = 0; section < firstPlace.length; section += 1) {
			const end = firstPlace[section] ?? 0;
			const hub = handOf.length + section;
			const size = this.#addHub(place, end, hub);
			for (; place < end; place += 1) {
				this.#addPlace(place, hub, size);
				moreAt[hub] = Math.min(moreAt[hub] ?? 0, moreAt[place] ?? 0);
			}
			this.#order.push(hub);
		}
		const own = new Int16Array(this.#step.length);
		const tuning = new Uint8Array(this.#step.length);
		for (let at = 0; at < own.length; at += 1) {
			const step = this.#step[at] ?? -1;
			own[at] = this.#ways.own[step] ?? -1;
			tuning[at] = this.#ways.tuning[step] ?? 0;
		}
		return {
			ways: this.#ways,
			costs: this.#costs,
			hubs: handOf.length,
			order: Int32Array.from(this.#order),
			first: this.#first,
			end: this.#end,
			to: Int32Array.from(this.#to),
			cost: Float64Array.from(this.#cost),
			own,
			tuning,
			more: moreAt,
		};
	}

	/** Takes in all hand-overs whose costs differ only by the place that they come from; gives back how many. */
	#addHub(from: number, end: number, hub: number): number {
		const start = this.#to.length;
		this.#first[hub] = start;
		for (let place = from; place < end && end - from > 1; place += 1) {
			let less = this.#to.length === start ? 0 : Number.POSITIVE_INFINITY;
			this.#eachBegun(place, (to, cost) => {
				if (this.#leadsTo(to)) less = cost - (this.#fromHub[to] ?? 0);
			});
			if (less === Number.POSITIVE_INFINITY) continue;
			this.#eachBegun(place, (to, cost, step) => {
				if (this.#leadsTo(to)) return;
				this.#fromHub[to] = cost - less;
				this.#add(to, cost - less, step);
			});
		}
		this.#end[hub] = this.#to.length;
		return this.#to.length - start;
	}

	#addPlace(place: number, hub: number, size: number): void {
		const { firstStep, flags, to } = this.#ways;
		this.#order.push(place);
		this.#first[place] = this.#to.length;
		const toHub = size === 0 ? null : this.#costToHub(place, size);
		for (let step = firstStep[place] ?? 0; step < (firstStep[place + 1] ?? 0); step += 1) {
			if (toHub !== null && ((flags[step] ?? 0) & BEGINS) !== 0) continue;
			this.#add(to[step] ?? 0, this.#costs[step] ?? 0, step);
		}
		if (toHub !== null) this.#add(hub, toHub, -1);
		this.#end[place] = this.#to.length;
	}

	/** What going to the hub has to cost for all hand-overs from a place to come to the same; null where nothing does that. */
	#costToHub(place: number, size: number): number | null {
		const { firstStep, flags, to } = this.#ways;
		let cost: number | null = null;
		let isSame = true;
		let reached = 0;
		this.#eachBegun(place, (next, itself) => {
			const toHub = itself - (this.#fromHub[next] ?? 0);
			cost ??= toHub;
			if (toHub !== cost || !this.#leadsTo(next)) isSame = false;
			reached += 1;
		});
		if (cost === null || !isSame) return null;
		// What stays in hands is no hand-over: the hub leads there too, and must not be the cheaper way.
		for (let step = firstStep[place] ?? 0; step < (firstStep[place + 1] ?? 0); step += 1) {
			const next = to[step] ?? 0;
			if (((flags[step] ?? 0) & BEGINS) !== 0 || !this.#leadsTo(next)) continue;
			if ((this.#costs[step] ?? 0) <= cost + (this.#fromHub[next] ?? 0)) reached += 1;
		}
		return reached === size ? cost : null;
	}

	#leadsTo(place: number): boolean {
		return this.#fromHub[place] !== Number.POSITIVE_INFINITY;
	}

	#eachBegun(place: number, visit: (to: number, cost: number, step: number) => void): void {
		const { firstStep, flags, to } = this.#ways;
		for (let step = firstStep[place] ?? 0; step < (firstStep[place + 1] ?? 0); step += 1) {
			if (((flags[step] ?? 0) & BEGINS) === 0) continue;
			visit(to[step] ?? 0, this.#costs[step] ?? 0, step);
		}
	}

	#add(to: number, cost: number, step: number): void {
		this.#to.push(to);
		this.#cost.push(cost);
		this.#step.push(step);
	}
}
