// When each song still to come is expected to begin and end. What has happened is exact; the song on
// now ends at its estimate or now, whichever is later, and everything after it moves along.

import { cueIndex, cuePoints } from '../../../machines/song.ts';
import type { NightMs } from '../../journal/entry.ts';
import { findSong, findSongItem, positionOf, songOnNow, songsOf } from '../../session/find.ts';
import { plannedGap } from '../../session/planned-gap.ts';
import type { Session, SongItem } from '../../session/session.ts';
import { comingItems } from '../../session/set-places.ts';
import type { Show, Song } from '../../showfile/show.ts';
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

/** What the clock has come to on the way through the list. */
type Reached = {
	/** The end of the song before; null before the first. */
	readonly endMs: NightMs | null;
	readonly before: SongItem | null;
	/** Seconds of the intervals since that song; null when there was none. */
	readonly intervalSeconds: number | null;
};

/**
 * The sections on and ahead, in playing order: the song on now from its present section, then the list
 * from what is next. A song with hand-overs at cues is one section up to each and one after the last.
 *
 * @example
 * sectionsAhead({ session, nowMs: 0, plannedZeroMs: 0 }).map(({ startMs }) => startMs / 1000) // => [0, 255, 480]
 */
export function sectionsAhead({ session, nowMs, plannedZeroMs }: Moment): readonly Section[] {
	const sections: Section[] = [...sectionsNow(session, nowMs)];
	const places = new Map(songsOf(session.list).map(({ key }, index) => [key, index + 1]));
	let reached = reachedSoFar(session, sections.at(-1) ?? null);
	for (const item of session.phase.value === 'packed' ? [] : comingItems(session)) {
		if (item.kind === 'interval') {
			reached = { ...reached, intervalSeconds: (reached.intervalSeconds ?? 0) + item.seconds };
			continue;
		}
		const song = findSong(session, item.song);
		if (song === null) continue;
		const { endMs: previousEndMs, intervalSeconds } = reached;
		const seconds = intervalSeconds ?? plannedGap(session, item, reached.before);
		const planned = previousEndMs === null ? plannedZeroMs : previousEndMs + seconds * 1000;
		const beganMs = Math.max(planned, nowMs);
		const hasRoomForAll =
			intervalSeconds !== null || reached.before === null || previousEndMs === null;
		const ofSong = sectionsOf(session.show, song, {
			item: item.key,
			position: places.get(item.key) ?? 0,
			beganMs,
			nowMs,
			reachedPoint: null,
			previousEndMs,
			gapSeconds: hasRoomForAll ? null : (beganMs - previousEndMs) / 1000,
			isAfterInterval: intervalSeconds !== null,
		});
		sections.push(...ofSong);
		reached = { endMs: sections.at(-1)?.endMs ?? beganMs, before: item, intervalSeconds: null };
	}
	return sections;
}

/** The sections of the song on now: the present one, and those after hand-overs still to come in it. */
function sectionsNow(session: Session, nowMs: NightMs): readonly Section[] {
	const on = songOnNow(session);
	if (on === null) return [];
	const beganMs = on.item.runs.at(-1)?.beganAtMs ?? session.phaseSinceMs ?? nowMs;
	const previousEndMs = lastEndBefore(session, beganMs);
	return sectionsOf(session.show, on.song, {
		item: on.item.key,
		position: positionOf(session.list, on.item),
		beganMs,
		nowMs,
		reachedPoint: (session.song && cueIndex(session.song)) ?? cuePoints(on.song).length,
		previousEndMs,
		gapSeconds: previousEndMs === null ? null : (beganMs - previousEndMs) / 1000,
		isAfterInterval: false,
	});
}

/** When the song before the one that began at `beganMs` ended; null for the night's first. */
function lastEndBefore({ list }: Session, beganMs: NightMs): NightMs | null {
	const ends = list
		.flatMap((item) => (item.kind === 'song' ? item.runs : []))
		.flatMap(({ endedAtMs }) => (endedAtMs !== null && endedAtMs <= beganMs ? [endedAtMs] : []));
	return ends.length === 0 ? null : Math.max(...ends);
}

/** Where the clock stands before the list ahead: after the song on now, or in the wait between songs. */
function reachedSoFar(session: Session, now: Section | null): Reached {
	const before = findSongItem(session, session.current);
	if (now !== null) return { endMs: now.endMs, before, intervalSeconds: null };
	const endMs = before?.runs.at(-1)?.endedAtMs ?? null;
	if (session.phase.value !== 'interval') return { endMs, before, intervalSeconds: null };
	const next = session.list.findIndex(({ key }) => key === session.next);
	const isAhead = session.list[next]?.kind === 'interval';
	const under = session.list.slice(0, next).findLast((item) => item.kind === 'interval');
	return {
		endMs: endMs ?? session.phaseSinceMs,
		before,
		intervalSeconds: isAhead ? 0 : (under?.seconds ?? 0),
	};
}

type SongAt = Pick<
	Section,
	'item' | 'position' | 'previousEndMs' | 'gapSeconds' | 'isAfterInterval'
> & {
	/** When it began or is to begin. */
	readonly beganMs: NightMs;
	readonly nowMs: NightMs;
	/** The cue point that it has come to; null where it has not begun. */
	readonly reachedPoint: number | null;
};

/** A song's sections from the present one on; what has not happened is not over before now. */
function sectionsOf(show: Show, song: Song, at: SongAt): readonly Section[] {
	const { item, position, beganMs, nowMs, reachedPoint } = at;
	const lengthSeconds = songSeconds(show, song);
	const starts = sectionStarts(song, lengthSeconds);
	const atMs = (seconds: number) => Math.max(beganMs + seconds * 1000, nowMs);
	const present = starts.findLastIndex(({ point }) => point <= (reachedPoint ?? 0));
	return starts.slice(present).map(({ point, seconds }, index): Section => {
		const hasBegun = reachedPoint !== null && index === 0;
		const startMs = hasBegun ? Math.min(beganMs + seconds * 1000, nowMs) : atMs(seconds);
		const beginsSong = point === 0;
		return {
			item,
			song: song.id,
			point,
			position,
			startMs,
			endMs: atMs(starts[present + index + 1]?.seconds ?? lengthSeconds),
			gapSeconds: beginsSong ? at.gapSeconds : null,
			previousEndMs: beginsSong ? at.previousEndMs : startMs,
			isAfterInterval: beginsSong && at.isAfterInterval,
			hasBegun,
		};
	});
}

export type SectionStart = {
	/** The cue point, counted from the song's start, which is 0. */
	readonly point: number;
	/** From the song's start. */
	readonly seconds: number;
};

/**
 * The song's start and every cue with hand-overs, in order: at the cue's own estimate, else at equal
 * parts of the song; never before the one before it, never after the song's end.
 *
 * @example
 * sectionStarts(bridgeSong, 240).map(({ seconds }) => seconds) // => [0, 120]
 */
export function sectionStarts(song: Song, lengthSeconds: number): readonly SectionStart[] {
	const cues = cuePoints(song).filter(({ hand }) => Object.keys(hand).length > 0);
	let latest = 0;
	return [
		{ point: 0, seconds: 0 },
		...cues.map(({ index, nearSeconds }, place): SectionStart => {
			const estimate = nearSeconds ?? (lengthSeconds * (place + 1)) / (cues.length + 1);
			latest = Math.min(Math.max(estimate, latest), lengthSeconds);
			// Moments of a night are whole milliseconds: a third of a song would not be met by what ends at it.
			return { point: index, seconds: Math.round(latest * 1000) / 1000 };
		}),
	];
}
