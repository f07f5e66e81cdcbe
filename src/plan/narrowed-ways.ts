// A seat's ways without the places that lead to too much: each way is gone again from the beginning, only
// as far as it and its rest, which is known, stay below a limit.

import type { Budget } from './board.ts';
import type { Alone } from './choose-alone.ts';
import { comeTo } from './choose-alone.ts';
import { labelPool } from './label-pool.ts';
import type { SeatWays } from './seat-ways.ts';
import { tuningsAt } from './seat-ways.ts';

export type NarrowedWays = {
	readonly ways: SeatWays;
	/** For each place what coming there costs more than without re-tunings. */
	readonly more: Float64Array;
};

/** To look at a step takes this share of looking at one way for several players together, to hold it against another that. */
const STEP = 0.125;
const OTHER = 0.0625;

/**
 * The ways on which the player alone may come to less than the limit; null where there are none.
 *
 * @example
 * narrowedWays(alone, 0, { left: 10 }) // => null
 */
export function narrowedWays(alone: Alone, limit: number, budget: Budget): NarrowedWays | null {
	if (alone.bound >= limit) return null;
	const come = comeWithin(alone, limit, budget);
	const numbers = new Int32Array(come.length).fill(-1);
	const places: number[] = [];
	come.forEach((cost, place) => {
		if (cost === Number.POSITIVE_INFINITY) return;
		numbers[place] = places.length;
		places.push(place);
	});
	const roughly = comeTo(alone.hubWays, alone.prices);
	const more = Float64Array.from(places, (place) => (come[place] ?? 0) - (roughly[place] ?? 0));
	const isSame = places.length === come.length;
	return { ways: isSame ? alone.hubWays.ways : rebuilt(alone.hubWays.ways, places, numbers), more };
}

/** For each place what coming there costs at least on such ways; infinite where none leads there. */
function comeWithin(alone: Alone, limit: number, budget: Budget): Float64Array {
	const { prices, retuning } = alone;
	const { ways, costs } = alone.hubWays;
	const { handOf, firstStep, firstPlace, to, own, tuning } = ways;
	const come = new Float64Array(handOf.length).fill(Number.POSITIVE_INFINITY);
	const pool = labelPool(1, 8);
	const at = new Int16Array(1);
	const tunings = alone.tunings.slice();
	const bytes = new Uint8Array(tunings.buffer);
	pool.clear(tunings.length);
	pool.add(at, tunings, { cost: 0, reach: 0, parent: -1, retuningWeight: retuning });
	come[0] = 0;
	for (let section = 0; section + 1 < firstPlace.length; section += 1) {
		const labels = pool.alive();
		pool.beginSection();
		for (const label of labels) {
			const place = pool.hands[label] ?? 0;
			const end = firstStep[place + 1] ?? 0;
			for (let step = firstStep[place] ?? 0; step < end; step += 1) {
				const next = to[step] ?? 0;
				let cost = (pool.cost[label] ?? 0) + (costs[step] ?? 0) + (prices[next] ?? 0);
				if (cost + alone.leastFrom(next) >= limit) continue;
				budget.left -= STEP;
				for (let word = 0; word < tunings.length; word += 1) {
					tunings[word] = pool.tunings[label * tunings.length + word] ?? 0;
				}
				const byte = own[step] ?? -1;
				if (byte >= 0 && byte < bytes.length) {
					if (bytes[byte] !== tuning[step]) cost += retuning;
					bytes[byte] = tuning[step] ?? 0;
				}
				if (cost + alone.restFrom(next, tunings, 0) >= limit) continue;
				if (cost < (come[next] ?? 0)) come[next] = cost;
				at[0] = next;
				const found = { cost, reach: 0, parent: label, retuningWeight: retuning };
				budget.left -= OTHER * pool.add(at, tunings, found);
			}
		}
	}
	return come;
}

/** Only these places, which get new numbers. */
function rebuilt(ways: SeatWays, places: readonly number[], numbers: Int32Array): SeatWays {
	const steps: number[] = [];
	const firstStep = new Int32Array(places.length + 1);
	for (const [number, place] of places.entries()) {
		const end = ways.firstStep[place + 1] ?? 0;
		for (let step = ways.firstStep[place] ?? 0; step < end; step += 1) {
			if ((numbers[ways.to[step] ?? 0] ?? -1) >= 0) steps.push(step);
		}
		firstStep[number + 1] = steps.length;
	}
	const count = steps.length;
	const picked = {
		to: new Int32Array(count),
		flags: new Uint8Array(count),
		cost: new Float64Array(count),
		aloneCost: new Float64Array(count),
		own: new Int16Array(count),
		tuning: new Uint8Array(count),
	};
	for (let at = 0; at < count; at += 1) {
		const step = steps[at] ?? 0;
		picked.to[at] = numbers[ways.to[step] ?? 0] ?? 0;
		picked.flags[at] = ways.flags[step] ?? 0;
		picked.cost[at] = ways.cost[step] ?? 0;
		picked.aloneCost[at] = ways.aloneCost[step] ?? 0;
		picked.own[at] = ways.own[step] ?? 0;
		picked.tuning[at] = ways.tuning[step] ?? 0;
	}
	let before = 0;
	const firstPlace = ways.firstPlace.map((first) => {
		while ((places[before] ?? first) < first) before += 1;
		return before;
	});
	const placeOf = ways.placeOf.map((place) => (place < 0 ? -1 : (numbers[place] ?? -1)));
	const handOf = Int16Array.from(places, (place) => ways.handOf[place] ?? 0);
	const canBeIn = tuningsAt({ ...picked, handOf, firstStep }, ways.ownCount);
	return { ...ways, ...picked, firstPlace, placeOf, handOf, firstStep, canBeIn };
}
