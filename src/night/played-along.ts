// A rehearsal whose band plays by itself: songs end and begin when they should, once the first was begun by a key.

import { findSong, findSongItem, nextSongItem, songOnNow } from '../session/find.ts';
import type { Session } from '../session/session.ts';
import { gapBetween } from '../showfile/gap-between.ts';
import { songSeconds } from '../showfile/song-length.ts';
import { THE_BAND } from '../words/program.ts';
import type { Night } from './night.ts';
import type { Submission } from './submit.ts';

/** The night; with each tick the band does what is due. */
export function playedAlong(night: Night): Night {
	return {
		...night,
		tick: () => {
			night.tick();
			const due = dueOfBand(night.session(), night.nowMs());
			if (due !== null) night.submit(due, THE_BAND);
		},
	};
}

/** What the band does now by the lengths of the show; null where it plays on, waits, or has not begun. */
function dueOfBand(session: Session, nowMs: number): Submission | null {
	const { phaseSinceMs } = session;
	if (phaseSinceMs === null) return null;
	const seconds = phaseSeconds(session);
	if (seconds === null || nowMs < phaseSinceMs + seconds * 1000) return null;
	return songOnNow(session) === null ? { do: 'step' } : { do: 'finish-song' };
}

function phaseSeconds(session: Session): number | null {
	const { show, list, next, phase } = session;
	const on = songOnNow(session);
	if (on !== null) return songSeconds(show, on.song);
	const coming = nextSongItem(session);
	if (coming === null) return null;
	// What is next stands behind the interval that is on.
	const interval = list[list.findIndex(({ key }) => key === next) - 1];
	if (phase.value === 'interval') return interval?.kind === 'interval' ? interval.seconds : null;
	const before = findSongItem(session, session.current);
	const song = before && findSong(session, before.song);
	return gapBetween({
		given: coming.gapSeconds,
		before: song ?? { ends: 'stop' },
		isEncoreBegin: coming.isEncore && before?.isEncore !== true,
	});
}
