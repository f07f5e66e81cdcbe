// Stand-ins with what each of them costs later: the rest of the night planned again with it. One order
// before a break and after it, so that what was looked at beforehand still holds when a string goes.
// Apart from the stand-ins themselves, since it takes a plan for each.

import { applyAll } from '../../session/apply.ts';
import { openBreak, openBreakOf } from '../../session/find.ts';
import type { Session } from '../../session/session.ts';
import type { Budget } from '../choice/beam-search.ts';
import { isLarge } from '../demand/large-night.ts';
import type { Moment } from '../demand/sections-ahead.ts';
import { toldEntries } from '../demand/told.ts';
import type { Later, StandIn } from '../plan.ts';
import { planCore } from '../timed-choice/plan-core.ts';
import { costAgainst, LATER_BUDGET, type LaterCost } from '../what-if/later-cost.ts';
import { withPartInstead } from '../what-if/part-instead.ts';
import { sessionAfter } from '../what-if/what-if.ts';
import type { Replaceable, StandInsAsked } from './stand-ins.ts';
import { rackNow, rankStandIns, UNKNOWN } from './stand-ins.ts';

export type CostsAsked = StandInsAsked & Pick<Moment, 'plannedZeroMs'>;

/**
 * The stand-ins for what a player holds or is about to get, best first, as if it broke now where it has
 * not. The first handful say what they cost later, against a night in which nothing had to be replaced.
 *
 * @example
 * standInsWithCosts({ session, plan, nowMs: 0, plannedZeroMs: 0, player: 'ash' })[0].later // => []
 */
export function standInsWithCosts(asked: CostsAsked): readonly StandIn[] {
	const { session, player } = asked;
	const rack = rackNow(asked);
	if (rack === null) return [];
	const replaced = rack.sound.replaced?.id ?? null;
	if (openBreak(session)?.player === player) {
		const costOf = costsOf(asked, replaced);
		return rankStandIns(rack, (hand) => costOf(sessionAfter(asked, [{ do: 'stand-in', ...hand }])));
	}
	// While a later break is asked first, nobody knows yet what the night looks like in which this one is answered.
	if (openBreakOf(session, player) !== null) return rankStandIns(rack);
	const isHeld = replaced !== null && session.players[player]?.holds === replaced;
	return isHeld ? ifItBroke(asked, replaced) : ifNotToBeHad(asked, rack);
}

/** What one will be told when the instrument in hands breaks now, the plan that this leads to having been told. */
function ifItBroke(asked: CostsAsked, instrument: string): readonly StandIn[] {
	const broken = sessionAfter(asked, [{ do: 'report-break', instrument }]);
	if (broken === null) return [];
	const { plan } = planCore({ ...asked, session: broken });
	const news =
		broken.zeroAtMs === null ? [] : toldEntries({ session: broken, nowMs: asked.nowMs }, plan);
	return standInsWithCosts({ ...asked, session: applyAll(broken, news), plan });
}

/** Not in hands yet, it is out of reach as long as a restring takes, and another is handed over instead. */
function ifNotToBeHad(asked: CostsAsked, rack: Replaceable): readonly StandIn[] {
	const { session } = asked;
	const { slot, sound } = rack;
	if (slot === null) return rankStandIns(rack);
	const replaced = sound.replaced?.id ?? null;
	const isWhole = session.instruments[replaced ?? '']?.context.stringsDown.length === 0;
	const broken =
		replaced !== null && isWhole
			? sessionAfter(asked, [{ do: 'report-break', instrument: replaced }])
			: session;
	const costOf = costsOf(asked, replaced);
	return rankStandIns(rack, (hand) => costOf(withPartInstead(broken ?? session, slot, hand)));
}

/**
 * What it costs later to play on with the broken one: nothing takes its place until the song has ended.
 *
 * @example
 * playOnCost({ session, plan, nowMs: 0, plannedZeroMs: 0, player: 'ash' }) // => []
 */
export function playOnCost(asked: CostsAsked): readonly Later[] {
	const { session } = asked;
	const replaced = session.players[asked.player]?.holds ?? null;
	const after = sessionAfter(asked, [{ do: 'play-on' }]) ?? session;
	return costsOf(asked, replaced)(after)?.later ?? UNKNOWN;
}

/** What a night that could be costs; null where there is no time for planning it. */
type CostOf = (after: Session | null) => LaterCost | null;

/** Steps of all plans that answer one key: those of every way out of a real show. In a large one the first alone would keep it waiting. */
const STEPS = 100_000;

/** Held against the night in which this had not broken: planned once for all that is asked of one break. */
function costsOf(asked: CostsAsked, replaced: string | null): CostOf {
	const isAbove = isLarge(asked.session.show, asked.plan.sections);
	const from: Budget = { left: STEPS };
	const costOf = costAgainst(asked, { without: whole(asked.session, replaced), from });
	// What is planned at all is planned as far as any.
	return (after) => (isAbove || from.left < LATER_BUDGET ? null : costOf(after));
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
