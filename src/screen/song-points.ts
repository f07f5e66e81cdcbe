// The point of the song that is on, and the next one.

import { type CuePoint, cueIndex, cuePoints } from '../../machines/song.ts';
import { songFrom, songOf } from './named-in-show.ts';
import type { ScreenState } from './screen-state.ts';

/** The cue point we are at, or null between songs. */
export function pointNow(state: ScreenState): CuePoint | null {
	return pointAt(state, 0);
}

/** The next cue point of the song that is on, or null when there is none. */
export function pointNext(state: ScreenState): CuePoint | null {
	return pointAt(state, 1);
}

function pointAt({ session }: ScreenState, ahead: number): CuePoint | null {
	const index = session.song === null ? null : cueIndex(session.song);
	const item = songFrom(session, session.current);
	const song = item === null ? null : songOf(session.show, item.song);
	if (index === null || song === null) return null;
	return cuePoints(song)[index + ahead] ?? null;
}
