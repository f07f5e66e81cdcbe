// What a plan costs, in the order in which plans are compared.

import type { Choice } from './choices.ts';
import type { Outlook } from './outlook.ts';
import type { Cost, PlannedHandOver, Section, Work } from './plan.ts';
import type { Stint } from './stints.ts';

/** All that a cost is counted from. */
export type Counted = {
	readonly choices: readonly Choice[];
	readonly stints: readonly Stint[];
	readonly handOvers: readonly PlannedHandOver[];
	readonly work: readonly Work[];
};

/**
 * The six figures: slots with nothing playable, hand-overs that do not fit their gap, the seconds by
 * which the latest work is late, stints but each player's first and first after an interval,
 * re-tunings, and points against what was chosen.
 *
 * @example
 * costOf(outlook, { choices, stints, handOvers, work }) // => { missing: 0, overGap: 0, lateness: 0, handOvers: 2, retunings: 0, preference: 0 }
 */
export function costOf(outlook: Outlook, { choices, stints, handOvers, work }: Counted): Cost {
	return {
		missing: choices.filter(({ why, isSettled }) => why !== null && !isSettled).length,
		overGap: handOvers.filter(({ fits }) => !fits).length,
		lateness: Math.max(0, ...work.map(({ slackSeconds }) => -slackSeconds)),
		handOvers: stints.length - firstStints(outlook, stints),
		retunings: stints.filter(({ isRetuned }) => isRetuned).length,
		preference: choices.reduce((sum, { preference }) => sum + preference, 0),
	};
}

/** Stints that cost no hand-over: a player's first, and the first after each interval. */
function firstStints(outlook: Outlook, stints: readonly Stint[]): number {
	const halves = halvesOf(outlook.sections);
	const seen = new Set<string>();
	let count = 0;
	for (const { choice } of stints) {
		const half = halves.get(choice.section) ?? 0;
		const key = `${half} ${choice.player}`;
		const isFirst = half > 0 || outlook.firstStints.has(choice.player);
		if (isFirst && !seen.has(key)) count += 1;
		seen.add(key);
	}
	return count;
}

/** How many of the intervals still to begin stand before each section. */
function halvesOf(sections: readonly Section[]): ReadonlyMap<Section, number> {
	let half = 0;
	return new Map(
		sections.map((section, place) => {
			if (section.isAfterInterval && place > 0) half += 1;
			return [section, half];
		}),
	);
}
