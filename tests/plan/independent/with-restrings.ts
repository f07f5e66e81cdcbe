// Strings that are down: which restring is wanted by which slot, and the plan that is made with them.

import { bestLive } from './best-live.ts';
import { numbered } from './holds.ts';
import { type Job, leastWorst } from './least-worst.ts';
import type { LiveState, Section } from './live-state.ts';
import { orderShown } from './order-shown.ts';
import { boardWindows, type Piece } from './pieces.ts';
import type { Best, Plan } from './search.ts';
import { type WorkingClock, workingClock } from './working-clock.ts';

export type WithRestrings = {
	/** The state with `restrungFor` set for every restring that a slot wants. */
	readonly state: LiveState;
	readonly best: Best;
	/** Instruments whose restring no slot wants: last in the list, without a time. */
	readonly untimed: readonly string[];
};

/**
 * The plan with every restring offered. First it is made without what has strings down. Then each of these
 * instruments, in the order of the file, is offered to the slots in their order that name it (and do not
 * keep what they have) or that need something like it and would be missing: wanted by the first at which a
 * plan that plays it there can have it done in time, no other work being late, or later than it was. What
 * `state.worked` says stands first counts in this test as worked on since then. The plan itself counts all of
 * its seconds from now, so that it may be late where nobody has marked it. With a slot found the instrument
 * can be had from its section on, and the next restring is offered on top of that plan.
 */
export function withRestrings(given: LiveState): WithRestrings {
	let state: LiveState = {
		...given,
		gear: given.gear.map((one) => ({ ...one, restrungFor: null })),
	};
	let best = bestLive(state);
	const untimed: string[] = [];
	for (const [i, { instrument, canBeHad, stringsDown }] of state.gear.entries()) {
		if (!canBeHad || stringsDown === 0) continue;
		const offered = firstInTime(state, best, i);
		if (offered === null) untimed.push(instrument.id);
		else ({ state, best } = offered);
	}
	return { state, best, untimed };
}

type Offered = { readonly state: LiveState; readonly best: Best };

function firstInTime(state: LiveState, best: Best, broken: number): Offered | null {
	const before = best.plans[0]!;
	const id = state.gear[broken]!.instrument.id;
	for (const [index, section] of state.sections.entries()) {
		for (const [p, { id: player }] of state.players.entries()) {
			const slot = before.slots[index * state.players.length + p]!;
			if (!wants({ state, section, player, slot, id })) continue;
			const gear = state.gear.map((one, i) =>
				i === broken ? { ...one, restrungFor: index } : one,
			);
			const offered = { ...state, gear };
			const then = bestLive(offered);
			const plan = then.plans.find(
				({ slots }) => slots[index * state.players.length + p]!.played?.instrument === id,
			);
			if (plan && isInTime({ state, before, plan, id, index }))
				return { state: offered, best: then };
		}
	}
	return null;
}

type Wanting = {
	readonly state: LiveState;
	readonly section: Section;
	readonly player: string;
	readonly slot: Plan['slots'][number];
	readonly id: string;
};

function wants({ state, section, player, slot, id }: Wanting): boolean {
	const demand = section.cells[player]?.demand;
	if (demand?.kind === 'named' && demand.instrument === id) {
		const goesBack = section.isAfterInterval && slot.played?.instrument !== id;
		return slot.how !== 'kept' || goesBack;
	}
	if (demand?.kind !== 'needs' || slot.how !== 'missing') return false;
	const ways = numbered(state).choices(demand, player);
	return ways.some(({ played }) => played.instrument === id);
}

type Test = {
	readonly state: LiveState;
	readonly before: Plan;
	readonly plan: Plan;
	readonly id: string;
	readonly index: number;
};

function isInTime({ state, before, plan, id, index }: Test): boolean {
	const clock = clockOf(state, plan);
	const finishes = finishesOf(state, before);
	const isTheirs = (piece: Piece): boolean => piece.instrument === id && piece.section === index;
	const jobs = plan.pieces.map((piece): Job => {
		const { wanted } = piece;
		const was = finishes.get(keyOf(piece)) ?? wanted;
		const { from, seconds } = worked(state, piece, plan.pieces, clock);
		return { from, seconds, wanted: isTheirs(piece) ? wanted : Math.max(wanted, was) };
	});
	const theirs = plan.pieces.filter(isTheirs);
	const isStillAhead = theirs.length > 0 && theirs.every(({ wanted }) => state.now < wanted);
	return isStillAhead && leastWorst(jobs, clock) <= 0.0005;
}

/** What stands first in the list, with what may have been done of it taken off. */
function worked(
	state: LiveState,
	piece: Piece,
	pieces: readonly Piece[],
	clock: WorkingClock,
): Pick<Piece, 'from' | 'seconds'> {
	const theirs = pieces.filter(({ instrument }) => instrument === state.worked?.instrument);
	if (state.worked === null || theirs[0] !== piece) return piece;
	const done = clock.workedAt(state.now) - clock.workedAt(state.worked.since);
	return { from: piece.from, seconds: Math.max(0, piece.seconds - done) };
}

function finishesOf(state: LiveState, plan: Plan): ReadonlyMap<string, number> {
	const clock = clockOf(state, plan);
	const shown = orderShown(plan.pieces, { now: state.now, clock, intervalEnds: null });
	return new Map(shown.map(({ piece, finish }) => [keyOf(piece), finish]));
}

function clockOf(state: LiveState, plan: Plan): WorkingClock {
	return workingClock([...boardWindows(state.sections), ...plan.busy]);
}

function keyOf({ instrument, section, part }: Piece): string {
	return `${instrument} ${section} ${part}`;
}
