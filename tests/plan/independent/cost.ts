// What makes one plan better than another, in the order of the model; numbers only.

/** The criteria of a plan before the doors, first of all the first. */
export const PLAN_CRITERIA = [
	'missing',
	'substituted',
	'overGap',
	'lateness',
	'backup',
	'handOvers',
	'retunings',
	'preference',
] as const;

/** The criteria of a plan during the night: slots that differ from what people were told come after lateness. */
export const LIVE_CRITERIA = [
	'missing',
	'substituted',
	'overGap',
	'lateness',
	'changed',
	'backup',
	'handOvers',
	'retunings',
	'preference',
] as const;

export type Criterion = (typeof LIVE_CRITERIA)[number];

/** Lateness in seconds to the millisecond; all others whole numbers. `changed` is 0 before the doors. */
export type Cost = Readonly<Record<Criterion, number>>;

/** The criteria that the clock has no part in, each by its place in a `Counts`. */
export const COUNTED = [
	'missing',
	'substituted',
	'overGap',
	'changed',
	'backup',
	'handOvers',
	'retunings',
	'preference',
] as const;

/** One number for each of `COUNTED`. */
export type Counts = readonly number[];

/** Nothing of anything. */
export const NO_COUNTS: Counts = COUNTED.map(() => 0);

/** One added to the other, number by number. */
export function plus(one: Counts, other: Counts): Counts {
	return one.map((n, i) => n + other[i]!);
}

/** Below 0 where the first cost is better by these criteria, above 0 where it is worse. */
export function compareCosts(one: Cost, other: Cost, criteria: readonly Criterion[]): number {
	for (const criterion of criteria) {
		const difference = one[criterion] - other[criterion];
		if (difference !== 0) return difference;
	}
	return 0;
}

/** A cost from its counts and its lateness in milliseconds. */
export function costOf(counts: Counts, latenessMs: number): Cost {
	const counted = Object.fromEntries(COUNTED.map((name, i) => [name, counts[i]!]));
	return { ...counted, lateness: latenessMs / 1000 } as Cost;
}
