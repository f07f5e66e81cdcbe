// For which song something is handed or kept, and when, in the same cells however long that is.

import { cuePoints } from '../../machines/song.ts';
import { fitWidth } from '../base/display-width.ts';
import type { Section } from '../plan/plan.ts';
import { songTitle } from '../showfile/shown-names.ts';
import { durationWords } from './duration-words.ts';
import { songOf, songPlace } from './named-in-show.ts';
import type { ScreenState } from './screen-state.ts';

/** `for 7 Lantern`, or `for solo in Lantern` at a cue. */
export function forWords({ session }: ScreenState, section: Section): string {
	const { show } = session;
	const song = songOf(show, section.song);
	const point = song ? cuePoints(song)[section.point] : undefined;
	const { place } = songPlace(session, section.item);
	const where = section.point > 0 ? `${point?.at ?? 'a cue'} in ` : `${place} `;
	return `for ${where}${songTitle(show, section.song)}`;
}

/** `in    2:33`, `now   0:12`. */
export function whenWords(untilSeconds: number): string {
	const long = fitWidth(durationWords(Math.abs(untilSeconds)), 6, { align: 'right' });
	return `${untilSeconds >= 0 ? 'in ' : 'now'} ${long}`;
}
