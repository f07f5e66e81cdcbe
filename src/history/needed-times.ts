// What each piece of work really takes this technician, from many nights, beside what the plan takes for it.

import { OWN_TIMES, type OwnTimeName } from '../showfile/own-times.ts';
import type { NightFacts, Piece } from './night-facts.ts';
import { quantile } from './quantile.ts';

/** From fewer nobody can say (common practice, no source). */
const LEAST_MEASURED = 5;
/** Nine of ten are no longer. */
const HIGH = 0.9;
/** What took so many times its planned seconds was not done in one go (common practice, no source). */
const LONGEST_SHARE = 3;

export type NeededTime = {
	readonly work: OwnTimeName;
	/** Measured, those left out not among them. */
	readonly count: number;
	/** Longer than three times the plan's seconds: something came between. */
	readonly leftOut: number;
	/** The plan's, as its pieces had it: the median of them. */
	readonly usedSeconds: number;
	/** Null where fewer than five were measured. */
	readonly medianSeconds: number | null;
	readonly highSeconds: number | null;
};

/**
 * Each kind of work that was measured, in the order of the settings. What a piece took beyond its plan, or less, is put
 * down to the part that it is named for. Seconds are whole, since own times are.
 *
 * @example
 * neededTimes([{ pieces: [20, 22, 24, 26, 90].map((seconds) => ({ work: 'hand-over', usedSeconds: 15, plannedSeconds: 15, seconds })) }])[0].leftOut // => 1
 * neededTimes([{ pieces: [20, 22, 24, 26, 30].map((seconds) => ({ work: 'hand-over', usedSeconds: 15, plannedSeconds: 15, seconds })) }])[0].medianSeconds // => 24
 */
export function neededTimes(nights: readonly Pick<NightFacts, 'pieces'>[]): readonly NeededTime[] {
	const byWork = Map.groupBy(
		nights.flatMap(({ pieces }) => pieces),
		({ work }) => work,
	);
	return OWN_TIMES.flatMap(({ name }) => {
		const all = byWork.get(name);
		return all === undefined ? [] : [neededTime(name, all)];
	});
}

function neededTime(work: OwnTimeName, all: readonly Piece[]): NeededTime {
	const inOneGo = all.filter(
		({ seconds, plannedSeconds }) => seconds <= LONGEST_SHARE * plannedSeconds,
	);
	const own = inOneGo.map(({ seconds, plannedSeconds, usedSeconds }) =>
		Math.max(0, usedSeconds + seconds - plannedSeconds),
	);
	const isEnough = own.length >= LEAST_MEASURED;
	return {
		work,
		count: own.length,
		leftOut: all.length - own.length,
		usedSeconds: Math.round(
			quantile(
				all.map(({ usedSeconds }) => usedSeconds),
				0.5,
			),
		),
		medianSeconds: isEnough ? Math.round(quantile(own, 0.5)) : null,
		highSeconds: isEnough ? Math.round(quantile(own, HIGH)) : null,
	};
}
