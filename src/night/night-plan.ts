// The plan of a night under way, made when it is asked for and kept while it still holds; and what ways
// out of a break come to, each of which takes a handful of plans.

import { makePlan } from '../plan/make-plan.ts';
import type { Plan } from '../plan/plan.ts';
import type { CostsAsked } from '../plan/stand-in-costs.ts';
import type { Moment } from '../plan/timeline.ts';
import type { Session } from '../session/session.ts';
import type { NightDesk } from './night-desk.ts';

/** What ways out of a break come to. */
export type Weigher<Answer> = (asked: CostsAsked) => Answer;

export type Weighed<Answer> = {
	/** The plan that the ways out are held against. */
	readonly made: Plan;
	readonly player: string;
	readonly of: Weigher<Answer>;
};

export type NightPlan = {
	/** This very moment of the night. */
	readonly moment: () => Moment;
	/** The plan as of now, or one of this session that is at most so many milliseconds older. */
	readonly plan: (olderMs?: number) => Plan;
	/** Asked for by several rows and keys of one screen; answered once for each plan. */
	readonly weigh: <Answer>(asked: Weighed<Answer>) => Answer;
};

/** The planning at this desk. */
export function nightPlan({ session, clock, plannedZeroMs }: NightDesk): NightPlan {
	let planned: { session: Session; nowMs: number; plan: Plan } | null = null;
	let weighed: { plan: Plan; known: Map<Weigher<unknown>, Map<string, unknown>> } | null = null;

	const momentAt = (nowMs: number): Moment => ({
		session: session(),
		nowMs,
		plannedZeroMs: plannedZeroMs(),
	});

	function plan(olderMs = 0): Plan {
		const nowMs = clock.nowMs();
		if (planned?.session !== session() || nowMs - planned.nowMs > olderMs) {
			// Of the journal and the time alone: a plan kept only here would be another one after a restart.
			planned = { session: session(), nowMs, plan: makePlan(momentAt(nowMs)) };
		}
		return planned.plan;
	}

	function weigh<Answer>({ made, player, of }: Weighed<Answer>): Answer {
		if (weighed?.plan !== made) weighed = { plan: made, known: new Map() };
		const byPlayer = weighed.known.get(of) ?? new Map<string, unknown>();
		weighed.known.set(of, byPlayer);
		if (byPlayer.has(player)) return byPlayer.get(player) as Answer;
		const answer = of({ ...momentAt(planned?.nowMs ?? clock.nowMs()), plan: made, player });
		byPlayer.set(player, answer);
		return answer;
	}

	return { moment: () => momentAt(clock.nowMs()), plan, weigh };
}
