// The night as it would be after a command, planned: for looking before leaping.

import { apply } from '../session/apply.ts';
import type { Command } from '../session/command.ts';
import { decide } from '../session/decide.ts';
import type { Session } from '../session/session.ts';
import type { Plan, Warning } from './plan.ts';
import { planCore } from './plan-core.ts';
import type { Moment } from './timeline.ts';
import { warningsNow } from './warnings.ts';

export type ChangedNight = { readonly session: Session; readonly plan: Plan };

/** `why`: a whole sentence; the command would be refused. */
export type WhatIf =
	| ({ readonly ok: true } & ChangedNight)
	| { readonly ok: false; readonly why: string };

/**
 * The session after the command, and its plan without warnings.
 *
 * @example
 * whatIf({ session, nowMs: 0, plannedZeroMs: 0 }, { do: 'drop-song', item: '2' }).plan.sections.map(({ song }) => song) // => ['harbour', 'gravel']
 */
export function whatIf(moment: Moment, command: Command): WhatIf {
	const decision = decide(moment.session, command, moment.nowMs);
	if (!decision.ok) return decision;
	const session = decision.entries.reduce(apply, moment.session);
	return { ok: true, session, plan: planCore({ ...moment, session }).plan };
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
	for (const command of commands) {
		const decision = decide(after, command, nowMs);
		if (!decision.ok) return null;
		after = decision.entries.reduce(apply, after);
	}
	return after;
}

/**
 * What would have to be told of the changed night that need not be told now, the numbers in the words
 * left aside.
 *
 * @example
 * newWarnings({ session, nowMs: 0, plannedZeroMs: 0 }, { session, plan }) // => []
 */
export function newWarnings(now: Moment, after: ChangedNight): readonly Warning[] {
	const warned = (session: Session): readonly Warning[] => {
		const moment = { ...now, session };
		return warningsNow({ ...moment, ...planCore(moment) });
	};
	const about = ({ code, song, player, instrument }: Warning) =>
		[code, song, player, instrument].join(' ');
	const told = new Set(warned(now.session).map(about));
	return warned(after.session).filter((one) => !told.has(about(one)));
}
