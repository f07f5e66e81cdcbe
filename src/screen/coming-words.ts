// For which song something is handed or kept, and at which moment of it.

import { cuePoints } from '../../machines/song.ts';
import type { Section } from '../plan/plan.ts';
import { songTitle } from '../showfile/shown-names.ts';
import { forCue, forSong } from '../words/stage.ts';
import { songOf, songPlace } from './named-in-show.ts';
import type { ScreenState } from './screen-state.ts';
import type { Coming } from './what-comes.ts';

/** `for 7 Lantern`, or `for solo in Lantern` at a cue; and the same without the number, where room is short. */
export function forWords(
	{ session }: ScreenState,
	section: Section,
): Pick<Coming, 'forWhat' | 'forTitle'> {
	const { show } = session;
	const song = songOf(show, section.song);
	const point = song ? cuePoints(song)[section.point] : undefined;
	const title = songTitle(show, section.song);
	if (section.point > 0) return { forWhat: forCue(point?.at ?? null, title) };
	const { place } = songPlace(session, section.item);
	return { forWhat: forSong(place, title), forTitle: forSong(null, title) };
}

/** The moment at which a section's hand-overs are made. */
export function momentOf({ item, point }: Section): string {
	return `${item}.${point}`;
}
