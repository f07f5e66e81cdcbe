// When the technician presses a board cue: hands that do that do nothing else.

import { cueIndex, cuePoints } from '../../../machines/song.ts';
import type { NightMs } from '../../journal/entry.ts';
import { songOnNow } from '../../session/find.ts';
import type { Session } from '../../session/session.ts';
import type { Section } from '../plan.ts';

/** From one moment up to another. */
export type Window = { readonly fromMs: NightMs; readonly untilMs: NightMs };

/** A board cue keeps the technician this long from where the file puts it: common practice, no source. */
const CUE_MS = 5000;

/**
 * The board cues of what is on and ahead that the file gives a time.
 *
 * @example
 * cueWindows(session, plan.sections) // => []
 */
export function cueWindows(session: Session, sections: readonly Section[]): readonly Window[] {
	const songs = new Map(session.show.songs.map((song) => [song.id, song]));
	const on = songOnNow(session);
	// Not by list item: after a jump back the song that is on comes a second time.
	const begun = sections.filter(({ point, hasBegun }) => hasBegun || point === 0);
	return begun.flatMap((section) => {
		const song = songs.get(section.song);
		if (song === undefined) return [];
		const reached = section.hasBegun && session.song ? cueIndex(session.song) : 0;
		const beganMs = section.hasBegun
			? (on?.item.runs.at(-1)?.beganAtMs ?? section.startMs)
			: section.startMs;
		return cuePoints(song).flatMap(({ index, nearSeconds }): readonly Window[] => {
			const pressesBoard = Object.keys(song.cues[index - 1]?.boards ?? {}).length > 0;
			if (index <= reached || nearSeconds === null || !pressesBoard) return [];
			const fromMs = beganMs + nearSeconds * 1000;
			return [{ fromMs, untilMs: fromMs + CUE_MS }];
		});
	});
}
