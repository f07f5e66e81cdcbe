// What is to be done now to what answers a break: it is chosen only when it is in hands, so the plan has no
// work for it, and yet it comes before all that the plan has.

import { findInstrument, holderOf, openBreakOf } from '../../session/find.ts';
import type { Moment } from '../demand/sections-ahead.ts';
import type { Plan, StandIn, Work } from '../plan.ts';
import { workNeeded } from '../schedule/work-needed.ts';

export type WorkAsked = Pick<Moment, 'session' | 'nowMs'> & {
	readonly plan: Plan;
	/** Best first, at least for whoever has a break that waits for its answer. */
	readonly standInsFor: (player: string) => readonly StandIn[];
};

/**
 * The work in the order in which to do it: on the first backup of each break that waits for its answer while
 * its song is on, wanted now, then as planned.
 *
 * @example
 * workToDo({ session, plan, nowMs: 0, standInsFor: () => [] }) // => plan.work
 */
export function workToDo(asked: WorkAsked): readonly Work[] {
	const { session, plan } = asked;
	return [...session.show.players.flatMap(({ id }) => breakWork(asked, id) ?? []), ...plan.work];
}

function breakWork({ session, plan, nowMs, standInsFor }: WorkAsked, player: string): Work | null {
	const slot = plan.slots.find((one) => one.player === player && one.section.hasBegun);
	if (slot === undefined || openBreakOf(session, player) === null) return null;
	const [best] = standInsFor(player);
	const instrument = best === undefined ? null : findInstrument(session, best.instrument);
	const state = session.instruments[best?.instrument ?? ''];
	if (best === undefined || instrument === null || state === undefined) return null;
	// What is in hands is seen to there, and what is ready is only fetched.
	const isHeld = holderOf(session, instrument.id) !== null;
	if (isHeld || best.readyInSeconds <= instrument.times.walk) return null;
	const { tuning: to, capo } = best;
	const { job, seconds } = workNeeded({ instrument, state, to: { tuning: to, capo } });
	const finishMs = nowMs + seconds * 1000;
	return {
		...{ job, instrument: instrument.id, player, section: slot.section, to, capo, seconds },
		isEarly: false,
		fromMs: nowMs,
		wantedMs: nowMs,
		startMs: nowMs,
		finishMs,
		slackSeconds: -seconds,
		shortSeconds: seconds,
		beginByMs: nowMs - seconds * 1000,
	};
}
