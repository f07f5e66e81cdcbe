// The session as it would be with another song next: for looking before leaping.

import { apply } from './apply.ts';
import { decide } from './decide.ts';
import type { Session } from './session.ts';

/** The session in which this song of the catalogue is the next; the same session when it cannot be or already is. */
export function withNextChosen(session: Session, song: string, atMs: number): Session {
	const decision = decide(session, { do: 'choose-next', song }, atMs);
	return decision.ok ? decision.entries.reduce(apply, session) : session;
}
