// The night as it would be after a command, planned: for looking before leaping.

import { NEW } from '../../journal/record.ts';
import { applyAll } from '../../session/apply.ts';
import type { Command } from '../../session/command.ts';
import { decide } from '../../session/decide.ts';
import type { Refusal } from '../../session/refusal.ts';
import type { Session } from '../../session/session.ts';
import type { Moment } from '../demand/sections-ahead.ts';
import type { Later, Plan, Section } from '../plan.ts';
import type { WithoutClock } from '../timed-choice/choose-without-clock.ts';
import { planCore } from '../timed-choice/plan-core.ts';
import { curfewWarnings } from './curfew-warnings.ts';
import { laterCost, type Troubled } from './later-cost.ts';

export type ChangedNight = { readonly session: Session; readonly plan: Plan };

/** `why`: the command would be refused. */
export type WhatIf =
	| ({ readonly ok: true } & ChangedNight)
	| { readonly ok: false; readonly why: Refusal };

/**
 * The session after the command, and its plan without warnings.
 *
 * @example
 * whatIf({ session, nowMs: 0, plannedZeroMs: 0 }, { do: 'drop-song', item: '2' }).plan.sections.map(({ song }) => song) // => ['harbour', 'gravel']
 */
export function whatIf(moment: Moment, command: Command, known?: WithoutClock): WhatIf {
	const decision = decide(moment.session, command, moment.nowMs);
	if (!decision.ok) return decision;
	const session = applyAll(moment.session, decision.entries);
	return { ok: true, ...plannedAt(moment, session, known) };
}

/**
 * What the night of this session is like as of the moment; `known` where it was planned before.
 *
 * @example
 * plannedAt({ nowMs: 0, plannedZeroMs: 0 }, session).plan.sections.length // => 3
 */
export function plannedAt(
	{ nowMs, plannedZeroMs }: Omit<Moment, 'session'>,
	session: Session,
	known?: WithoutClock,
): ChangedNight {
	const how = known && { known };
	return { session, plan: planCore({ session, nowMs, plannedZeroMs }, how).plan };
}

/**
 * The session after these commands one after the other; null where one of them would be refused.
 *
 * @example
 * sessionAfter({ session, nowMs: 0 }, [{ do: 'drop-song', item: '2' }]).list[1].isDropped // => true
 */
export function sessionAfter(
	{ session, nowMs }: Pick<Moment, 'session' | 'nowMs'>,
	commands: readonly Command[],
): Session | null {
	let after = session;
	for (const [place, command] of commands.entries()) {
		const decision = decide(after, command, nowMs);
		if (!decision.ok) return null;
		// As each would have a record of its own.
		after = applyAll(after, decision.entries, place === 0 ? NEW : `${NEW}.${place}`);
	}
	return after;
}

/** What a change of the night makes worse, and what it mends. */
export type ChangeCost = { readonly worse: readonly Later[]; readonly mended: readonly Later[] };

/**
 * The night as it stands against the changed one: who has nothing to play, what is late, which gaps are
 * too short, and the curfew. `except`: an item of the list whose own change is told elsewhere.
 *
 * @example
 * changeCost({ session, plan, nowMs: 0, plannedZeroMs: 0 }, { session, plan }) // => { worse: [], mended: [] }
 */
export function changeCost(
	{ session, plannedZeroMs, plan }: Moment & { readonly plan: Plan },
	after: ChangedNight,
	except?: string,
): ChangeCost {
	const { show } = after.session;
	const zeroMs = session.zeroAtMs ?? plannedZeroMs;
	const curfewNow = curfewWarnings(show, plan.sections, plannedZeroMs);
	const curfewThen = curfewWarnings(show, after.plan.sections, plannedZeroMs);
	// What does not come any more is not mended by that.
	const come = new Set(after.plan.sections.map(({ item }) => item));
	const isTold = ({ section: { item } }: { readonly section: Section }): boolean =>
		item !== except && come.has(item);
	const told = ({ slots, handOvers, work }: Plan): Troubled => ({
		slots: slots.filter(isTold),
		handOvers: handOvers.filter(isTold),
		work: work.filter(isTold),
	});
	const [now, then] = [told(plan), told(after.plan)];
	const worse = laterCost({ show, zeroMs, without: now, with: then }).later;
	const mended = laterCost({ show, zeroMs, without: then, with: now }).later;
	return {
		worse: [...worse, ...(curfewNow.length === 0 ? curfewThen : [])],
		mended: [...mended, ...(curfewThen.length === 0 ? curfewNow : [])],
	};
}
