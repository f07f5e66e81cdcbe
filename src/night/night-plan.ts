// The plan of a night under way, made when it is asked for and kept while it still holds; what people
// are told by it, recorded with the step that led to it; and what ways out of a break come to.

import type { Entry } from '../journal/entry.ts';
import type { RecordId } from '../journal/record.ts';
import type { CostsAsked } from '../plan/backups/stand-in-costs.ts';
import type { Moment } from '../plan/demand/sections-ahead.ts';
import { toldEntries } from '../plan/demand/told.ts';
import { makePlan } from '../plan/make-plan.ts';
import type { Plan } from '../plan/plan.ts';
import type { WithoutClock } from '../plan/timed-choice/choose-without-clock.ts';
import type { Session } from '../session/session.ts';
import type { NightUnderWay } from './night-under-way.ts';

/** A plan this old is still that of the step just made: for what is said of it and the frame that shows it. */
export const FRAME_MS = 50;

/**
 * Keys act on the plan that is on the screen, which is not quite a tick old; a key that changes nothing of the
 * night, as each letter of a text, would else make one anew.
 */
export const SHOWN_MS = 999;

/** What is asked of a player's ways out, and the answers so far. */
type Asked = { readonly asked: CostsAsked; readonly answers: Map<Weigher<unknown>, unknown> };

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
	/** Records a step, with what people are told otherwise by the plan that it leads to; gives the step's record. */
	readonly recordStep: (entries: readonly Entry[]) => RecordId;
	/** Asked for by several rows and keys of one screen; answered once for each plan. */
	readonly weigh: <Answer>(asked: Weighed<Answer>) => Answer;
};

/** The planning of the night under way. */
export function nightPlan({ session, clock, plannedZeroMs, record }: NightUnderWay): NightPlan {
	/** `isTold`: what it tells anew was recorded since: made once more it may differ where it is not proved the best. */
	let planned: { session: Session; nowMs: number; plan: Plan; isTold: boolean } | null = null;
	let chosen: { session: Session; known: WithoutClock } | null = null;
	let weighed: { plan: Plan; of: Map<string, Asked> } | null = null;

	const momentAt = (nowMs: number, of = session()): Moment => ({
		session: of,
		nowMs,
		plannedZeroMs: plannedZeroMs(of),
	});

	/** The same as if it were made from nothing: a plan that goes by what is kept only here would be another one after a restart. */
	function planAt(moment: Moment): Plan {
		if (chosen?.session !== moment.session) chosen = { session: moment.session, known: new Map() };
		return makePlan(moment, { known: chosen.known });
	}

	function plan(olderMs = 0): Plan {
		const nowMs = clock.nowMs();
		const isKnown =
			planned?.session === session() &&
			nowMs - planned.nowMs <= olderMs &&
			!(planned.isTold && olderMs === 0);
		if (planned === null || !isKnown) {
			planned = { session: session(), nowMs, plan: planAt(momentAt(nowMs)), isTold: false };
		}
		return planned.plan;
	}

	function recordStep(entries: readonly Entry[]): RecordId {
		// What was done comes first: whatever planning what comes of it may do, it is kept.
		const recorded = record(entries);
		if (session().zeroAtMs === null) return recorded;
		const moment = momentAt(clock.nowMs());
		const made = planAt(moment);
		const news = toldEntries(moment, made);
		if (news.length > 0) record(news.map((one) => ({ ...one, of: recorded })));
		// The picture that follows shows what was told, word for word.
		planned = { session: session(), nowMs: moment.nowMs, plan: made, isTold: news.length > 0 };
		return recorded;
	}

	function weigh<Answer>({ made, player, of }: Weighed<Answer>): Answer {
		if (weighed?.plan !== made) weighed = { plan: made, of: new Map() };
		const known = weighed.of.get(player) ?? {
			asked: { ...momentAt(planned?.nowMs ?? clock.nowMs()), plan: made, player },
			answers: new Map(),
		};
		weighed.of.set(player, known);
		if (!known.answers.has(of)) known.answers.set(of, of(known.asked));
		return known.answers.get(of) as Answer;
	}

	return { moment: () => momentAt(clock.nowMs()), plan, recordStep, weigh };
}
