// The evening's state as the list decides it: what stands next, and what follows when the list changes.

import { advance } from '../../machines/advance.ts';
import { type Ahead, type ShowEvent, showLaw } from '../../machines/show.ts';
import type { NightMs } from '../journal/entry.ts';
import { findItem, findSongItem, keyAfter, nextSongItem } from './find.ts';
import { NONE_STAYING } from './open-session.ts';
import type { ListItem, Session } from './session.ts';

/** What stands after the song just ended, given what comes next on the list. */
export function ahead(session: Session): Ahead {
	const next = findItem(session, session.next);
	// An interval that nothing follows is none.
	if (next === null || nextSongItem(session) === null) return 'over';
	if (next.kind === 'interval') return 'interval';
	const current = findSongItem(session, session.current);
	return next.isEncore && !current?.isEncore ? 'encore' : 'changeover';
}

/** The session after an event of the evening; the same where the evening does not take it. */
export function moveShow(session: Session, event: ShowEvent): Session {
	const after = advance(showLaw, session.phase, event);
	return after ? { ...session, phase: after } : session;
}

/** The session after an entry, divided where an interval began with it: nobody stays on anything past one. */
export function divided(before: Session, after: Session, atMs: NightMs): Session {
	const isBegun = after.phase.value === 'interval' && before.phase.value !== 'interval';
	return isBegun ? { ...after, intervalBeganMs: atMs, staying: NONE_STAYING } : after;
}

/** The session with what comes after what stands now: an interval is on as soon as nothing comes before it. */
export function nextAfter(session: Session, stands: Ahead): string | null {
	if (stands === 'over' || session.next === null) return null;
	return stands === 'interval' ? keyAfter(session.list, session.next) : session.next;
}

/** The session with another list and another next item; between songs, in the state that then stands. */
export function withList(
	session: Session,
	list: readonly ListItem[],
	next: string | null,
): Session {
	const changed = { ...session, list, next };
	const { value } = session.phase;
	if (value === 'before' || value === 'song' || value === 'packed') return changed;
	const stands = ahead(changed);
	// Who is in an interval already stays in it, whatever is to come after.
	if (value === 'interval' && stands !== 'over') return changed;
	return moveShow(
		{ ...changed, next: nextAfter(changed, stands) },
		{ type: 'nextChosen', ahead: stands },
	);
}
