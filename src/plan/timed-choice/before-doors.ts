// The night as it is before the doors: what a plan made from the show file alone begins with.

import { openSession } from '../../session/open-session.ts';
import type { Session } from '../../session/session.ts';
import type { Show } from '../../showfile/show.ts';
import type { Moment } from '../demand/sections-ahead.ts';

/** The technician is free for this long before the first song: common practice, no source. */
const BEFORE_ZERO_MS = 3_600_000;

/**
 * An hour before a night that is to begin at zero.
 *
 * @example
 * momentBefore(session).nowMs // => -3600000
 */
export function momentBefore(session: Session): Moment {
	return { session, nowMs: -BEFORE_ZERO_MS, plannedZeroMs: 0 };
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
