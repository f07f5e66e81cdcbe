// Which test comes next. To find the cause: the least expected seconds, exactly by dynamic programming over the sets
// of suspects that are left while these are few, and before that the most information a second. To have sound
// again: the tests that restore it, by chance over seconds.

import type { FaultTest } from './fault-tests.ts';

export type Search = {
	/** Suspects' ids with their chances. */
	readonly suspects: readonly { readonly id: string; readonly chance: number }[];
	readonly tests: readonly FaultTest[];
};

export type NextTest = {
	readonly test: FaultTest;
	/** Expected seconds until the cause is known, or until there is sound, this test among them. */
	readonly expectedSeconds: number;
};

/** Up to as many suspects all sets of them are weighed: 2^10 sets take some milliseconds. */
const EXACT = 10;
/** As many bits as a set has; a longer rig is searched by its likeliest parts first. */
const MOST_SUSPECTS = 30;
/** Two times that differ by less are the same. */
const SAME_SECONDS = 1e-9;

/**
 * The test with the least expected seconds to the cause; null where no test tells the suspects apart.
 *
 * @example
 * nextToCause({ suspects: [], tests: [] }) // => null
 */
export function nextToCause({ suspects, tests }: Search): NextTest | null {
	const likely = suspects
		.filter(({ chance }) => chance > 0)
		.sort((one, other) => other.chance - one.chance)
		.slice(0, MOST_SUSPECTS);
	const chances = likely.map(({ chance }) => chance);
	const masks = tests.map(({ clears }) =>
		likely.reduce((mask, { id }, at) => (clears.includes(id) ? mask | (1 << at) : mask), 0),
	);
	const search = new Sets(
		chances,
		tests.map(({ seconds }, at) => ({ mask: masks[at] ?? 0, seconds })),
	);
	const best = search.best((1 << likely.length) - 1);
	const test = best === null ? undefined : tests[best.test];
	if (test === undefined || best === null) return null;
	return { test, expectedSeconds: best.seconds };
}

type Best = {
	/** Its place among the tests. */
	readonly test: number;
	readonly seconds: number;
};

/** Sets of suspects as bits; chances are relative to the set. */
class Sets {
	readonly #chances: readonly number[];
	readonly #tests: readonly { readonly mask: number; readonly seconds: number }[];
	readonly #known = new Map<number, Best | null>();

	constructor(
		chances: readonly number[],
		tests: readonly { readonly mask: number; readonly seconds: number }[],
	) {
		this.#chances = chances;
		this.#tests = tests;
	}

	/** The best test of a set, with the expected seconds from there; null where none parts it. */
	best(set: number): Best | null {
		const known = this.#known.get(set);
		if (known !== undefined) return known;
		const found = bitsOf(set) <= EXACT ? this.#least(set) : this.#mostTold(set);
		this.#known.set(set, found);
		return found;
	}

	#least(set: number): Best | null {
		let least: Best | null = null;
		for (const [test, { mask }] of this.#tests.entries()) {
			if (!parts(set, mask)) continue;
			const seconds = this.#withTest(set, test);
			if (least === null || seconds < least.seconds - SAME_SECONDS) least = { test, seconds };
		}
		return least;
	}

	/** Information gain a second, the usual rule of thumb where all sets are too many. */
	#mostTold(set: number): Best | null {
		let most: { readonly test: number; readonly told: number } | null = null;
		for (const [test, { mask, seconds }] of this.#tests.entries()) {
			if (!parts(set, mask)) continue;
			const told = entropy(this.#share(set, mask)) / Math.max(seconds, SAME_SECONDS);
			if (most === null || told > most.told) most = { test, told };
		}
		return most === null ? null : { test: most.test, seconds: this.#withTest(set, most.test) };
	}

	#withTest(set: number, at: number): number {
		const { mask = 0, seconds = 0 } = this.#tests[at] ?? {};
		const inside = this.#share(set, mask);
		const after = (rest: number) => this.best(rest)?.seconds ?? 0;
		return seconds + inside * after(set & mask) + (1 - inside) * after(set & ~mask);
	}

	/** How likely the cause is in the mask, given that it is in the set. */
	#share(set: number, mask: number): number {
		const all = this.#sum(set);
		return all > 0 ? this.#sum(set & mask) / all : 0;
	}

	#sum(set: number): number {
		let sum = 0;
		for (const [at, chance] of this.#chances.entries()) if (set & (1 << at)) sum += chance;
		return sum;
	}
}

function parts(set: number, mask: number): boolean {
	return (set & mask) !== 0 && (set & ~mask) !== 0;
}

function bitsOf(set: number): number {
	let count = 0;
	for (let rest = set; rest !== 0; rest &= rest - 1) count += 1;
	return count;
}

function entropy(chance: number): number {
	const part = (p: number) => (p > 0 ? -p * Math.log2(p) : 0);
	return part(chance) + part(1 - chance);
}

/**
 * The test that has sound back soonest, by chance over seconds, and again for what is left after each that does
 * not help: for causes that no two tests share this order is the best there is (the rule of sequential search,
 * checked against every order). Null where none restores it.
 *
 * @example
 * nextToSound({ suspects: [], tests: [] }) // => null
 */
export function nextToSound({ suspects, tests }: Search): NextTest | null {
	const restoring = tests.filter(({ restores }) => restores);
	const left = new Map(suspects.map(({ id, chance }) => [id, chance]));
	let first: FaultTest | null = null;
	let spent = 0;
	let expected = 0;
	let open = suspects.reduce((sum, { chance }) => sum + chance, 0);
	const tried = new Set<FaultTest>();
	for (;;) {
		const chanceOf = ({ clears }: FaultTest) =>
			clears.reduce((sum, id) => sum + (left.get(id) ?? 0), 0);
		const best = restoring
			.filter((test) => !tried.has(test) && chanceOf(test) > 0)
			.map((test) => ({ test, rate: chanceOf(test) / Math.max(test.seconds, SAME_SECONDS) }))
			.reduce<{ readonly test: FaultTest; readonly rate: number } | null>(
				(most, one) => (most === null || one.rate > most.rate ? one : most),
				null,
			);
		if (best === null) break;
		const { test } = best;
		first ??= test;
		tried.add(test);
		spent += test.seconds;
		const chance = chanceOf(test);
		expected += chance * spent;
		open -= chance;
		for (const id of test.clears) left.set(id, 0);
	}
	return first === null
		? null
		: { test: first, expectedSeconds: expected + Math.max(0, open) * spent };
}
