// When the technician's hands are not free for work: hand-overs, and board cues that they press.

import { cueIndex, cuePoints } from '../../machines/song.ts';
import type { NightMs } from '../journal/entry.ts';
import { songOnNow } from '../session/find.ts';
import type { Session } from '../session/session.ts';
import type { PlannedHandOver, Section } from './plan.ts';

/** From one moment up to another. */
export type Window = { readonly fromMs: NightMs; readonly untilMs: NightMs };

/** A board cue keeps the technician this long from where the file puts it: common practice, no source. */
const CUE_MS = 5000;

/**
 * The windows of these cues and hand-overs in order of time, those that touch made one.
 *
 * @example
 * busyWindows(cueWindows(session, plan.sections), plan.handOvers).map(({ fromMs }) => fromMs / 1000) // => [-30, 240, 465]
 */
export function busyWindows(
	cues: readonly Window[],
	handOvers: readonly Pick<PlannedHandOver, 'section' | 'wantedMs'>[],
): readonly Window[] {
	const handing = new Map<Section, Window>();
	for (const { section, wantedMs } of handOvers) {
		handing.set(section, { fromMs: wantedMs, untilMs: section.startMs });
	}
	return joined([...handing.values(), ...cues]);
}

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
		const reached = section.hasBegun && session.song ? (cueIndex(session.song) ?? 0) : 0;
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

function joined(windows: readonly Window[]): readonly Window[] {
	const sorted = windows
		.filter(({ fromMs, untilMs }) => untilMs > fromMs)
		.sort((one, other) => one.fromMs - other.fromMs);
	const all: Window[] = [];
	for (const window of sorted) {
		const last = all.at(-1);
		if (last === undefined || window.fromMs > last.untilMs) all.push(window);
		else if (window.untilMs > last.untilMs) {
			all[all.length - 1] = { fromMs: last.fromMs, untilMs: window.untilMs };
		}
	}
	return all;
}
