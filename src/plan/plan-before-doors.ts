// The plan made before the doors open, from the show file alone.

import type { Session } from '../session/session.ts';
import type { Show } from '../showfile/show.ts';
import { type SlotStandIns, slotStandIns } from './backups/slot-stand-ins.ts';
import type { Plan, Warning } from './plan.ts';
import { momentBefore, readyAtZero } from './timed-choice/before-doors.ts';
import { planCore } from './timed-choice/plan-core.ts';
import { gapWarnings } from './warnings/gap-warnings.ts';
import { lateness } from './warnings/ready-warnings.ts';
import { missingWarnings } from './warnings/warnings.ts';
import { curfewWarnings } from './what-if/curfew-warnings.ts';

/** Before the doors there is time to look further: some tenths of a second at the most. */
const BUDGET = 1_000_000;
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

function warningsBefore(session: Session, plan: Plan): readonly Warning[] {
	const { show } = session;
	const played = slotStandIns(session, {
		plan,
		costs: 'none',
		isAsked: ({ instrument, isMissing }) => instrument !== null || isMissing,
	});
	const backups = new Map(played.map(({ slot, standIns: [best] }) => [slot, best?.instrument]));
	const alone = Map.groupBy(
		// What has nothing at all is said as missing.
		played.filter(({ slot, standIns }) => standIns.length === 0 && slot.instrument !== null),
		({ slot: { player, instrument } }) => JSON.stringify([player, instrument]),
	);
	const late = plan.work.filter(({ slackSeconds }) => slackSeconds < 0).map(lateness);
	return [
		...missingWarnings(plan, (slot) => backups.get(slot)),
		...late,
		...[...alone.values()].flatMap(aloneWarning),
		...gapWarnings(plan, plan.sections),
		...curfewWarnings(show, plan.sections, 0),
	];
}

/** What nothing could take over from, with the songs in which nothing can. */
function aloneWarning(all: readonly SlotStandIns[]): readonly Warning[] {
	const [first] = all;
	const { player = '', instrument = null } = first?.slot ?? {};
	if (first === undefined || instrument === null) return [];
	const songs = [...new Set(all.map(({ slot: { section } }) => section.song))];
	return [{ code: 'no-stand-in', player, instrument, leftOut: first.leftOut, songs }];
}
