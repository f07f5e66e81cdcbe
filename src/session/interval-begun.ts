// What the beginning of an interval records, whatever it began with.

import type { Entry } from '../journal/entry.ts';
import { applyAll } from './apply.ts';
import type { Session } from './session.ts';

/** The entries, and where an interval begins with them, everything in hands come back to the rack. */
export function withIntervalBegun(session: Session, entries: readonly Entry[]): readonly Entry[] {
	const after = applyAll(session, entries);
	const at = entries.at(-1)?.at;
	const hasBegun = session.phase.value !== 'interval' && after.phase.value === 'interval';
	if (!hasBegun || at === undefined) return entries;
	const back = Object.values(after.players).flatMap(({ holds }): Entry[] =>
		holds === null ? [] : [{ k: 'came-back', at, instrument: holds }],
	);
	return [...entries, ...back];
}
