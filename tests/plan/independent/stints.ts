// What a section's moves make of hands and tunings, and what they cost apart from the clock.

import { type Counts, plus } from './cost.ts';
import type { Hold, Numbered } from './holds.ts';
import type { Section } from './live-state.ts';
import { countsOfSlots, type Hands, hasInHands, type Joint } from './moves.ts';

/** All that later counts depend on. */
export type Standing = {
	readonly hands: Hands;
	/** By instrument, the number of the tuning it is in. */
	readonly tunings: readonly number[];
	/** By player, that the next stint is their first, or the first after an interval. */
	readonly isFirst: readonly boolean[];
};

export type Stint = { readonly player: number; readonly hold: Hold };

export type Step = {
	readonly counts: Counts;
	readonly next: Standing;
	/** Stints that begin here: the hand-overs. */
	readonly begun: readonly Stint[];
};

/** With less room than this the player cannot move a capo. */
const CAPO_MOVES_IN = 10;

/** How things stand before the first section. */
export function firstStanding({ state, holdOf, tuningOf }: Numbered): Standing {
	const isInterval = state.sections[0]?.isAfterInterval ?? false;
	return {
		hands: state.players.map(({ holds, putDown }) => {
			const has = holds ?? (isInterval ? putDown : null);
			return has === null ? null : holdOf(has);
		}),
		tunings: state.gear.map(({ open }) => tuningOf(open)),
		isFirst: state.players.map(({ hasBegun }) => !hasBegun),
	};
}

/** One section played so. */
export function stepOf(model: Numbered, index: number, standing: Standing, joint: Joint): Step {
	const { state } = model;
	const section = state.sections[index]!;
	const room = roomBefore(section);
	const taken = new Set(joint.flatMap(({ hold }) => hold?.instrument ?? []));
	const hands: (Hold | null)[] = [];
	const tunings = [...standing.tunings];
	// In an interval that is on, who was given something since it began has had their first.
	const isFirst = standing.isFirst.map((is) => is || (index > 0 && section.isAfterInterval));
	const begun: Stint[] = [];
	let [backup, handOvers, retunings] = [0, 0, 0];
	for (const [player, move] of joint.entries()) {
		const held = hasInHands(model, index, player) ? standing.hands[player]! : null;
		const stays = state.whenMissing === 'keeps' && move.how === 'missing' && held !== null;
		const hold = stays && !taken.has(held.instrument) ? held : move.hold;
		hands.push(hold);
		const isRestrung =
			move.how !== 'kept' && hold === move.hold && isBrokenBefore(model, hold, index);
		if (hold === null || (goesOn(held, hold, room) && !isRestrung)) continue;
		begun.push({ player, hold });
		backup += move.backup;
		if (!isFirst[player]) handOvers += 1;
		isFirst[player] = false;
		if (tunings[hold.instrument] !== hold.tuning) retunings += 1;
		tunings[hold.instrument] = hold.tuning;
	}
	const seconds = begun.map(({ hold }) => secondsOf(model, hold));
	const over = section.gap === null || section.isCue ? 0 : overGap(seconds, section.gap);
	return {
		counts: plus(countsOfSlots(joint), [0, 0, over, 0, backup, handOvers, retunings, 0]),
		next: { hands, tunings, isFirst },
		begun,
	};
}

/** Seconds that players have before a section to move a capo. */
export function roomBefore({ isCue, gap }: Section): number {
	return isCue ? 0 : (gap ?? Number.POSITIVE_INFINITY);
}

/** Seconds of handing this over. */
export function secondsOf({ state }: Numbered, hold: Hold): number {
	return state.gear[hold.instrument]!.instrument.times.handOver;
}

/** Whether its strings were down up to here, so that it cannot simply stay in hands. */
function isBrokenBefore({ state }: Numbered, hold: Hold | null, index: number): boolean {
	const gear = hold && state.gear[hold.instrument];
	return gear !== null && gear!.stringsDown > 0 && index <= (gear!.restrungFor ?? Infinity);
}

/** Whether a stint goes on from one section to the next, with so many seconds for moving a capo between. */
export function goesOn(held: Hold | null, hold: Hold, room: number): boolean {
	if (held === null || held.instrument !== hold.instrument) return false;
	return held.tuning === hold.tuning && (held.capo === hold.capo || room >= CAPO_MOVES_IN);
}

/** How many of these hand-overs do not fit into the gap, the shortest put into it first. */
function overGap(seconds: readonly number[], gap: number): number {
	if (gap === 0) return seconds.length;
	let filled = 0;
	let fitting = 0;
	for (const one of [...seconds].sort((a, b) => a - b)) {
		filled += one;
		if (filled <= gap) fitting += 1;
	}
	return seconds.length - fitting;
}
