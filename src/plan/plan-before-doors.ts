// The plan made before the doors open, from the show file alone.

import { minutesSeconds } from '../base/duration.ts';
import { openSession } from '../session/open-session.ts';
import type { Session } from '../session/session.ts';
import type { Show } from '../showfile/show.ts';
import { songTitle } from '../showfile/shown-names.ts';
import { gapWarnings } from './gap-warnings.ts';
import type { Plan, Warning } from './plan.ts';
import { planCore } from './plan-core.ts';
import { sentence } from './sentence.ts';
import { slotStandIns } from './slot-stand-ins.ts';
import { noStandInWords } from './stand-in-warnings.ts';
import type { Moment } from './timeline.ts';
import { curfewWarnings, missingWarnings } from './warnings.ts';

/** Before the doors there is time to look further: some tenths of a second at the most. */
const BUDGET = 800_000;
/** The technician is free for this long before the first song: common practice, no source. */
const BEFORE_ZERO_MS = 3_600_000;

/**
 * The plan with marks in milliseconds of the show clock, whose zero is the first song's start. At zero
 * every instrument is on the rack, wiped, without a capo, in the tuning that the file gives, and just
 * made ready.
 *
 * @example
 * planBeforeDoors(show).sections.map(({ startMs }) => startMs) // => [0, 255000, 480000]
 */
export function planBeforeDoors(show: Show): Plan {
	const session = readyAtZero(show);
	const { plan } = planCore(momentBefore(session), { budget: BUDGET });
	return { ...plan, warnings: warningsBefore(session, plan) };
}

/**
 * An hour before a night that is to begin at zero.
 *
 * @example
 * momentBefore(session).nowMs // => -3600000
 */
export function momentBefore(session: Session): Moment {
	return { session, nowMs: -BEFORE_ZERO_MS, plannedZeroMs: 0 };
}

function warningsBefore(session: Session, plan: Plan): readonly Warning[] {
	const { show } = session;
	const said = new Set<string>();
	const alone = slotStandIns(session, { plan, costs: 'none' }).flatMap(
		({ slot, standIns }): readonly Warning[] => {
			const instrument = slot.instrument ?? slot.named;
			if (standIns.length > 0 || instrument === null || said.has(instrument)) return [];
			said.add(instrument);
			return [
				{
					code: 'no-stand-in',
					player: slot.player,
					instrument,
					...sentence(show, (call) => noStandInWords(instrument, call)),
				},
			];
		},
	);
	const late = plan.work.flatMap(
		({ section, player, instrument, slackSeconds }): readonly Warning[] => {
			if (slackSeconds >= 0) return [];
			const late = `${minutesSeconds(-slackSeconds)} late for ${songTitle(show, section.song)}`;
			const said = sentence(show, (call) => `${call(instrument)} is ${late}`);
			return [{ code: 'late', song: section.song, player, instrument, ...said }];
		},
	);
	return [
		...missingWarnings(show, plan),
		...late,
		...alone,
		...gapWarnings(show, plan, plan.sections),
		...curfewWarnings(show, plan.sections, 0),
	];
}

/**
 * A night that has not begun, with everything on the rack marked ready at zero.
 *
 * @example
 * readyAtZero(show).instruments.A1.context.readyAtMs // => 0
 */
export function readyAtZero(show: Show): Session {
	const made = readyOf.get(show);
	if (made) return made;
	const session = openSession(show);
	const ready = {
		...session,
		instruments: Object.fromEntries(
			Object.entries(session.instruments).map(([id, { value, context }]) => [
				id,
				{ value, context: { ...context, readyAtMs: 0 } },
			]),
		),
	};
	readyOf.set(show, ready);
	return ready;
}

const readyOf = new WeakMap<Show, Session>();
