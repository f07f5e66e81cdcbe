// Stand-ins with what each of them costs later: the rest of the night planned again with it in hands.
// Apart from the stand-ins themselves, since it takes a plan for each.

import { openBreak } from '../session/find.ts';
import type { Session } from '../session/session.ts';
import { costAgainst } from './later-cost.ts';
import type { StandIn } from './plan.ts';
import type { StandInsAsked } from './stand-ins.ts';
import { rackNow, rankStandIns } from './stand-ins.ts';
import type { Moment } from './timeline.ts';
import { sessionAfter } from './what-if.ts';

export type CostsAsked = StandInsAsked & Pick<Moment, 'plannedZeroMs'>;

/**
 * The stand-ins for what a player holds or is about to get, best first. Once a break waits for its answer,
 * the first handful say what they cost later, against a night in which nothing had to be replaced.
 *
 * @example
 * standInsWithCosts({ session, plan, nowMs: 0, plannedZeroMs: 0, player: 'ash' })[0].later // => []
 */
export function standInsWithCosts(asked: CostsAsked): readonly StandIn[] {
	const { session, player } = asked;
	const rack = rackNow(asked);
	if (rack === null) return [];
	const replaced = rack.sound.replaced?.id ?? null;
	if (openBreak(session)?.player !== player) return rankStandIns(rack);
	const costOf = costAgainst(asked, whole(session, replaced));
	return rankStandIns(rack, (standIn) => costOf(withStandIn(asked, standIn)));
}

/**
 * What it costs later to play on with the broken one: nothing takes its place until the song has ended.
 *
 * @example
 * playOnCost({ session, plan, nowMs: 0, plannedZeroMs: 0, player: 'ash' }) // => []
 */
export function playOnCost(asked: CostsAsked): readonly string[] {
	const { session } = asked;
	const replaced = session.players[asked.player]?.holds ?? null;
	const after = sessionAfter(asked, [{ do: 'play-on' }]) ?? session;
	return costAgainst(asked, whole(session, replaced))(after).later;
}

/** The session as if no string of this instrument had broken. */
function whole(session: Session, instrument: string | null): Session {
	const state = instrument === null ? undefined : session.instruments[instrument];
	if (instrument === null || state === undefined) return session;
	const context = { ...state.context, stringsDown: [] };
	return {
		...session,
		instruments: { ...session.instruments, [instrument]: { value: state.value, context } },
	};
}

/** The session with the stand-in in hands for what broke; null where it cannot be handed over. */
function withStandIn(asked: CostsAsked, { instrument, tuning, capo }: StandIn): Session | null {
	return sessionAfter(asked, [{ do: 'stand-in', instrument, tuning, capo }]);
}
