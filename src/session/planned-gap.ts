// How long the gap before a song of the list is to be, however long it has gone on.

import { gapBetween } from '../showfile/gap-between.ts';
import { isSegue } from './segue.ts';
import type { Session, SongItem } from './session.ts';

/**
 * Seconds between the song before, null for none, and this one.
 *
 * @example
 * plannedGap(session, lantern, harbour) // => 15
 */
export function plannedGap(session: Session, item: SongItem, before: SongItem | null): number {
	if (before === null) return 0;
	return gapBetween({
		given: item.gapSeconds,
		before: { ends: isSegue(session, before, item) ? 'segue' : 'stop' },
		isEncoreBegin: item.isEncore && !before.isEncore,
	});
}
