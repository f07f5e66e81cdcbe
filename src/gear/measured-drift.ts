// What changed between the measurements of an instrument: each measure against the one before it, whichever
// records they stand in.

import type { Measured } from './gear-entry.ts';

const DAY_MS = 86_400_000;

export type MeasuredDrift = {
	/** A measure as entries name it, or `at12` for the cents of the 12th fret. */
	readonly what: string;
	/** Newest less the one before, in the measure's own order and unit. */
	readonly change: readonly number[];
	/** Whole days between the two. */
	readonly days: number;
};

/**
 * Every measure that was taken twice and came out otherwise, from entries of one instrument, the newest
 * first. Cents are compared only on strings of the same gauges in the same tuning: others read otherwise
 * without anything having moved.
 */
export function measuredDrift(past: readonly Measured[]): readonly MeasuredDrift[] {
	const names = [...new Set(past.flatMap(({ measures }) => Object.keys(measures)))];
	const measures = names.flatMap((what) =>
		change(
			what,
			past.filter((entry) => entry.measures[what] !== undefined),
			(entry) => entry.measures[what] ?? [],
		),
	);
	const read = past.filter(({ at12 }) => at12 !== undefined);
	const alike = read.filter((entry) => isAlike(entry, read[0]));
	return [...measures, ...change('at12', alike, ({ at12 = [] }) => at12)];
}

function change(
	what: string,
	[newest, before]: readonly Measured[],
	valuesOf: (entry: Measured) => readonly number[],
): readonly MeasuredDrift[] {
	if (newest === undefined || before === undefined) return [];
	const [now, then] = [valuesOf(newest), valuesOf(before)];
	// To a hundredth of what a feeler gauge can tell, or subtraction leaves dust.
	const by = now.map((value, index) => Number((value - (then[index] ?? value)).toFixed(4)));
	if (by.every((one) => one === 0)) return [];
	return [{ what, change: by, days: Math.floor((newest.at - before.at) / DAY_MS) }];
}

function isAlike(one: Measured, other: Measured | undefined): boolean {
	return one.tuning === other?.tuning && one.gauges.join() === other.gauges.join();
}
