// For which song something is handed or kept, and at which moment of it.

import { cuePoints } from '../../machines/song.ts';
import type { Section } from '../plan/plan.ts';
import { songTitle } from '../showfile/shown-names.ts';
import { forCue, forSong } from '../words/stage.ts';
import { songOf, songPlace } from './named-in-show.ts';
import type { ScreenState } from './screen-state.ts';

/** `for 7 Lantern`, or `for solo in Lantern` at a cue. */
export function forWords({ session }: ScreenState, section: Section): string {
	const { show } = session;
	const song = songOf(show, section.song);
	const point = song ? cuePoints(song)[section.point] : undefined;
	const title = songTitle(show, section.song);
	return section.point > 0
		? forCue(point?.at ?? null, title)
		: forSong(songPlace(session, section.item).place, title);
}

/** The moment at which a section's hand-overs are made. */
export function momentOf({ item, point }: Section): string {
	return `${item}.${point}`;
}
