// The facts of the gear journal: what was measured at the bench, by instrument, whatever show it hangs
// in. Its lines are those of a night; once released, a kind of entry keeps its meaning for ever.

import type { JournalRecord } from './record.ts';

export type GearEntry = {
	readonly k: 'set-up-measured';
	/** Wall clock, milliseconds since 1970. */
	readonly at: number;
	readonly instrument: string;
	/** The tuning it was in, its canonical name. */
	readonly tuning: string;
	/** String 1 first, as they are labelled. */
	readonly gauges: readonly string[];
	/** Millimetres by what was measured; bass side first where there are two. */
	readonly measures: Readonly<Record<string, readonly number[]>>;
	/** Cents at the 12th fret, highest-numbered string first. */
	readonly at12?: readonly number[];
};

/** The file's name in the gear folder, before its ending. */
export const GEAR_ID = 'gear';

/** What was measured on an instrument, the newest first. */
export function measuredOn(
	records: readonly JournalRecord[],
	instrument: string,
): readonly GearEntry[] {
	return records
		.flatMap(({ e }) => e as readonly GearEntry[])
		.filter((entry) => entry.k === 'set-up-measured' && entry.instrument === instrument)
		.toReversed();
}
