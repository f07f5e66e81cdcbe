// The steps that one of several players may take from where they are, by what each adds to what all of it
// comes to at least: nothing for the one that they would take alone.

import type { Alone } from './choose-alone.ts';
import type { SeatWays } from './seat-ways.ts';

export type StepOptions = Options;

/**
 * The options of a player, whose own instruments' tunings stand in `tunings` from `from` on. A re-tuning
 * weighs `retuning`.
 *
 * @example
 * stepOptions(alone, { tunings: new Int32Array(0), from: 0, retuning: 9 }).count // => 0
 */
export function stepOptions(alone: Alone, where: Where): StepOptions {
	return new Options(alone, where);
}

type Where = {
	readonly tunings: Int32Array;
	readonly from: number;
	readonly retuning: number;
};

class Options {
	count = 0;
	/** The steps by their numbers among the player's ways, that with the least to add first. */
	readonly steps: Int32Array;
	readonly adds: Float64Array;
	readonly ways: SeatWays;
	/** What each step cost and each place was asked for when the player was taken alone. */
	readonly costs: Float64Array;
	readonly prices: Float64Array;
	readonly #alone: Alone;
	readonly #where: Where;
	readonly #bytes: Uint8Array;

	constructor(alone: Alone, where: Where) {
		const { ways, costs } = alone.hubWays;
		const { firstStep } = ways;
		let most = 0;
		for (let place = 1; place < firstStep.length; place += 1) {
			most = Math.max(most, (firstStep[place] ?? 0) - (firstStep[place - 1] ?? 0));
		}
		this.steps = new Int32Array(most);
		this.adds = new Float64Array(most);
		this.ways = ways;
		this.costs = costs;
		this.prices = alone.prices;
		this.#alone = alone;
		this.#where = where;
		this.#bytes = new Uint8Array(where.tunings.buffer, 4 * where.from);
	}

	/** Lists the steps from this place, its tunings being as they are now; gives back what the rest comes to at least. */
	list(place: number): number {
		const { tunings, from, retuning } = this.#where;
		const { firstStep, to, own, tuning } = this.ways;
		const rest = this.#alone.restFrom(place, tunings, from);
		const end = firstStep[place + 1] ?? 0;
		this.count = 0;
		for (let step = firstStep[place] ?? 0; step < end; step += 1) {
			const byte = own[step] ?? -1;
			const before = this.#bytes[byte] ?? 0;
			const next = to[step] ?? 0;
			let added = (this.costs[step] ?? 0) + (this.prices[next] ?? 0) - rest;
			if (byte >= 0 && before !== tuning[step]) {
				added += retuning;
				this.#bytes[byte] = tuning[step] ?? 0;
			}
			added += this.#alone.restFrom(next, tunings, from);
			if (byte >= 0) this.#bytes[byte] = before;
			if (added < Number.POSITIVE_INFINITY) this.#insert(step, added);
		}
		return rest;
	}

	#insert(step: number, added: number): void {
		let at = this.count;
		for (; at > 0 && added < (this.adds[at - 1] ?? 0); at -= 1) {
			this.adds[at] = this.adds[at - 1] ?? 0;
			this.steps[at] = this.steps[at - 1] ?? 0;
		}
		this.adds[at] = added;
		this.steps[at] = step;
		this.count += 1;
	}
}
