// The facts of the gear journal: what was measured at the bench, and which instruments are one. Its lines are
// those of a night; once released, a kind of entry keeps its meaning for ever.

import type { GearId } from './gear-id.ts';

/** One measuring at the bench. */
export type Measured = {
	readonly k: 'set-up-measured';
	/** Wall clock, milliseconds since 1970. */
	readonly at: number;
	readonly gear: GearId;
	/** What it was then; left out by version 1. */
	readonly body?: GearBody;
	/** The tuning it was in, its canonical name. */
	readonly tuning: string;
	/** String 1 first, as they are labelled. */
	readonly gauges: readonly string[];
	/** Millimetres by what was measured; bass side first where there are two. */
	readonly measures: Readonly<Record<string, readonly number[]>>;
	/** Cents at the 12th fret, highest-numbered string first. */
	readonly at12?: readonly number[];
};

/** What tells one instrument from another. */
export type GearBody = {
	readonly kind: string;
	readonly scaleMillimetres: number | null;
	readonly strings: number;
};

/** Whether what was measured on `other` was this instrument: asked once, and answered. */
export type GearCompared = {
	readonly k: 'gear-compared';
	readonly at: number;
	readonly gear: GearId;
	readonly other: GearId;
	readonly isSame: boolean;
};

/** It rang through the loudspeakers at this frequency. */
export type Rang = {
	readonly k: 'feedback-noted';
	readonly at: number;
	readonly gear: GearId;
	readonly hertz: number;
	/** The night and its record in which it was noted; left out at the bench. */
	readonly note?: string;
};

/** What was noted in that record of a night was undone there. */
export type RangNot = {
	readonly k: 'feedback-withdrawn';
	readonly at: number;
	readonly gear: GearId;
	readonly note: string;
};

export type GearEntry = Measured | GearCompared | Rang | RangNot;
