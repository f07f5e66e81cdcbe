// The plan made before the doors open, from the show file alone.

import { openSession } from '../session/open-session.ts';
import type { Session } from '../session/session.ts';
import type { Show } from '../showfile/show.ts';
import type { Plan } from './plan.ts';
import { planCore } from './plan-core.ts';

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
	return planCore({ session: readyAtZero(show), nowMs: -BEFORE_ZERO_MS, plannedZeroMs: 0 }).plan;
}

/**
 * A night that has not begun, with everything on the rack marked ready at zero.
 *
 * @example
 * readyAtZero(show).instruments.A1.context.readyAtMs // => 0
 */
export function readyAtZero(show: Show): Session {
	const session = openSession(show);
	return {
		...session,
		instruments: Object.fromEntries(
			Object.entries(session.instruments).map(([id, { value, context }]) => [
				id,
				{ value, context: { ...context, readyAtMs: 0 } },
			]),
		),
	};
}
