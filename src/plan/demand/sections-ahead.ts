// When each song still to come is expected to begin and end. What has happened is exact; the song on
// now ends at its estimate or now, whichever is later, and everything after it moves along.

import { cueIndex, cuePoints } from '../../../machines/song.ts';
import type { NightMs } from '../../journal/entry.ts';
import { findSong, findSongItem, positionOf, songOnNow } from '../../session/find.ts';
import { plannedGap } from '../../session/planned-gap.ts';
import type { Session, SongItem } from '../../session/session.ts';
import { comingItems } from '../../session/set-places.ts';
import type { Song } from '../../showfile/show.ts';
import { songSeconds } from '../../showfile/song-length.ts';
import type { Section } from '../plan.ts';

/** A night at a moment. `plannedZeroMs`: when the first song is to begin, as long as it has not. */
export type Moment = {
	readonly session: Session;
	readonly nowMs: NightMs;
	readonly plannedZeroMs: NightMs;
};

/**
 * Seconds since the first song began, negative before it: the present show time.
 *
 * @example
 * showSeconds({ session, nowMs: 60000, plannedZeroMs: 0 }) // => 60
 */
export function showSeconds({ session, nowMs, plannedZeroMs }: Moment): number {
	return (nowMs - (session.zeroAtMs ?? plannedZeroMs)) / 1000;
}

/**
 * The sections on and ahead, in playing order: the song on now from its present section, then the list
 * from what is next. A song with hand-overs at cues is one section up to each and one after the last.
 *
 * @example
 * sectionsAhead({ session, nowMs: 0, plannedZeroMs: 0 }).map(({ startMs }) => startMs / 1000) // => [0, 255, 480]
 */
export function sectionsAhead({ session, nowMs, plannedZeroMs }: Moment): readonly Section[] {
	const sections: Section[] = [];
	let before = findSongItem(session, session.current);
	let endMs = before?.runs.at(-1)?.endedAtMs ?? null;
	let interval = intervalUnderWay(session);
	if (interval !== null) endMs ??= session.phaseSinceMs;
	const on = songOnNow(session);
	if (on !== null) {
		const beganMs = on.item.runs.at(-1)?.beganAtMs ?? session.phaseSinceMs ?? nowMs;
		const reachedPoint = (session.song && cueIndex(session.song)) ?? cuePoints(on.song).length;
		const previousEndMs = lastEndBefore(session, beganMs);
		const at = { beganMs, nowMs, previousEndMs, isAfterInterval: false, reachedPoint };
		sections.push(...sectionsOf(session, on, at));
		endMs = sections.at(-1)?.endMs ?? nowMs;
	}
	for (const item of session.phase.value === 'packed' ? [] : comingItems(session)) {
		if (item.kind === 'interval') {
			interval = (interval ?? 0) + item.seconds;
			continue;
		}
		const song = findSong(session, item.song);
		if (song === null) continue;
		const gapMs = (interval ?? plannedGap(session, item, before)) * 1000;
		const beganMs = Math.max(endMs === null ? plannedZeroMs : endMs + gapMs, nowMs);
		const isAfterInterval = interval !== null;
		const at = { beganMs, nowMs, previousEndMs: endMs, isAfterInterval, reachedPoint: null };
		sections.push(...sectionsOf(session, { item, song }, at));
		endMs = sections.at(-1)?.endMs ?? beganMs;
		before = item;
		interval = null;
	}
	return sections;
}

/** Seconds of the interval that is on, as far as the list ahead does not hold it itself; null where none is. */
function intervalUnderWay({ phase, list, next }: Session): number | null {
	if (phase.value !== 'interval') return null;
	const place = list.findIndex(({ key }) => key === next);
	if (list[place]?.kind === 'interval') return 0;
	return list.slice(0, place).findLast((item) => item.kind === 'interval')?.seconds ?? 0;
}

/** When the song before the one that began at `beganMs` ended; null for the night's first. */
function lastEndBefore({ list }: Session, beganMs: NightMs): NightMs | null {
	const ends = list
		.flatMap((item) => (item.kind === 'song' ? item.runs : []))
		.flatMap(({ endedAtMs }) => (endedAtMs !== null && endedAtMs <= beganMs ? [endedAtMs] : []));
	return ends.length === 0 ? null : Math.max(...ends);
}

type SongAt = Pick<Section, 'previousEndMs' | 'isAfterInterval'> & {
	/** When it began or is to begin. */
	readonly beganMs: NightMs;
	readonly nowMs: NightMs;
	/** The cue point that it has come to; null where it has not begun. */
	readonly reachedPoint: number | null;
};

/** A song's sections from the present one on; what has not happened is not over before now. */
function sectionsOf(
	{ show, list }: Session,
	{ item, song }: { readonly item: SongItem; readonly song: Song },
	{ beganMs, nowMs, previousEndMs, isAfterInterval, reachedPoint }: SongAt,
): readonly Section[] {
	const lengthSeconds = songSeconds(show, song);
	const starts = sectionStarts(song, lengthSeconds);
	const atMs = (seconds: number) => Math.max(beganMs + seconds * 1000, nowMs);
	const present = starts.findLastIndex(({ point }) => point <= (reachedPoint ?? 0));
	return starts.slice(present).map(({ point, seconds }, index): Section => {
		const hasBegun = reachedPoint !== null && index === 0;
		const startMs = hasBegun ? Math.min(beganMs + seconds * 1000, nowMs) : atMs(seconds);
		const beginsSong = point === 0;
		const hasRoomForAll = !beginsSong || isAfterInterval || previousEndMs === null;
		return {
			item: item.key,
			song: song.id,
			point,
			position: positionOf(list, item),
			startMs,
			endMs: atMs(starts[present + index + 1]?.seconds ?? lengthSeconds),
			gapSeconds: hasRoomForAll ? null : (beganMs - previousEndMs) / 1000,
			previousEndMs: beginsSong ? previousEndMs : startMs,
			isAfterInterval: beginsSong && isAfterInterval,
			hasBegun,
		};
	});
}

/**
 * The song's start, point 0, and every cue with hand-overs, in seconds from its start: at the cue's own estimate,
 * else at equal parts of the song; never before the one before it, never after the song's end.
 */
function sectionStarts(song: Song, lengthSeconds: number) {
	const cues = cuePoints(song).filter(({ hand }) => Object.keys(hand).length > 0);
	let latest = 0;
	return [
		{ point: 0, seconds: 0 },
		...cues.map(({ index, nearSeconds }, place) => {
			const estimate = nearSeconds ?? (lengthSeconds * (place + 1)) / (cues.length + 1);
			latest = Math.min(Math.max(estimate, latest), lengthSeconds);
			// Moments of a night are whole milliseconds: a third of a song would not be met by what ends at it.
			return { point: index, seconds: Math.round(latest * 1000) / 1000 };
		}),
	];
}
