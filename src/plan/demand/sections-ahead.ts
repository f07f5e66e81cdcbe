// When each song still to come is expected to begin and end. What has happened is exact; the song on
// now ends at its estimate or now, whichever is later, and everything after it moves along.

import { cueIndex, cuePoints } from '../../../machines/song.ts';
import type { NightMs } from '../../journal/entry.ts';
import { findSong, positionOf, songOnNow, songsOf } from '../../session/find.ts';
import { isSegue } from '../../session/segue.ts';
import type { ListItem, Session, SongItem } from '../../session/session.ts';
import { comingItems } from '../../session/set-places.ts';
import { gapBetween } from '../../showfile/gap-between.ts';
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
export function sectionsAhead(moment: Moment): readonly Section[] {
	const { session, nowMs } = moment;
	const sections: Section[] = [...sectionsNow(session, nowMs)];
	const places = new Map(songsOf(session.list).map(({ key }, index) => [key, index + 1]));
	let reached: Reached = reachedSoFar(session, sections.at(-1) ?? null);
	for (const item of itemsAhead(session)) {
		if (item.kind === 'interval') {
			reached = { ...reached, intervalSeconds: (reached.intervalSeconds ?? 0) + item.seconds };
			continue;
		}
		const song = findSong(session, item.song);
		if (song === null) continue;
		const gap = gapBefore(session, item, reached);
		const planned =
			reached.endMs === null ? moment.plannedZeroMs : reached.endMs + gap.seconds * 1000;
		const startMs = Math.max(planned, nowMs);
		const endMs = startMs + songSeconds(session.show, song) * 1000;
		sections.push(
			...splitSong({
				item,
				song,
				position: places.get(item.key) ?? 0,
				startMs,
				endMs,
				previousEndMs: reached.endMs,
				hasRoomForAll: gap.hasRoomForAll,
				isAfterInterval: reached.intervalSeconds !== null,
			}),
		);
		reached = { endMs, before: item, intervalSeconds: null };
	}
	return sections;
}

/** What stands ahead on the list, what was passed over left out. */
function itemsAhead(session: Session): readonly ListItem[] {
	return session.phase.value === 'packed' ? [] : comingItems(session);
}

/** Where the clock stands before the list ahead: after the song on now, or in the wait between songs. */
function reachedSoFar(session: Session, now: Section | null): Reached {
	const before = session.list.find(({ key }) => key === session.current);
	const current = before?.kind === 'song' ? before : null;
	if (now !== null) return { endMs: now.endMs, before: current, intervalSeconds: null };
	const endMs = current?.runs.at(-1)?.endedAtMs ?? null;
	if (session.phase.value !== 'interval') return { endMs, before: current, intervalSeconds: null };
	const next = session.list.findIndex(({ key }) => key === session.next);
	const isAhead = session.list[next]?.kind === 'interval';
	const under = session.list.slice(0, next).findLast((item) => item.kind === 'interval');
	return {
		endMs: endMs ?? session.phaseSinceMs,
		before: current,
		intervalSeconds: isAhead ? 0 : (under?.seconds ?? 0),
	};
}

function gapBefore(
	session: Session,
	item: SongItem,
	reached: Reached,
): { readonly seconds: number; readonly hasRoomForAll: boolean } {
	if (reached.intervalSeconds !== null) {
		return { seconds: reached.intervalSeconds, hasRoomForAll: true };
	}
	if (reached.before === null) return { seconds: 0, hasRoomForAll: true };
	const seconds = gapBetween({
		given: item.gapSeconds,
		before: { ends: isSegue(session, reached.before, item) ? 'segue' : 'stop' },
		isEncoreBegin: item.isEncore && !reached.before.isEncore,
	});
	return { seconds, hasRoomForAll: false };
}

type SongTimes = {
	readonly item: SongItem;
	readonly song: Song;
	readonly position: number;
	readonly startMs: NightMs;
	readonly endMs: NightMs;
	readonly previousEndMs: NightMs | null;
	readonly hasRoomForAll: boolean;
	readonly isAfterInterval: boolean;
};

function splitSong(times: SongTimes): readonly Section[] {
	const { item, song, position, startMs, endMs, previousEndMs } = times;
	const starts = sectionStarts(song, (endMs - startMs) / 1000);
	return starts.map(({ point, seconds }, index): Section => {
		const next = starts[index + 1];
		const beginsSong = index === 0;
		const sectionStartMs = startMs + seconds * 1000;
		return {
			item: item.key,
			song: song.id,
			point,
			position,
			startMs: sectionStartMs,
			endMs: next === undefined ? endMs : startMs + next.seconds * 1000,
			gapSeconds:
				beginsSong && !times.hasRoomForAll && previousEndMs !== null
					? (startMs - previousEndMs) / 1000
					: null,
			previousEndMs: beginsSong ? previousEndMs : sectionStartMs,
			isAfterInterval: beginsSong && times.isAfterInterval,
			hasBegun: false,
		};
	});
}

/** The sections of the song on now: the present one, and those after hand-overs still to come in it. */
function sectionsNow(session: Session, nowMs: NightMs): readonly Section[] {
	const on = songOnNow(session);
	if (on === null) return [];
	const beganMs = on.item.runs.at(-1)?.beganAtMs ?? session.phaseSinceMs ?? nowMs;
	const lengthSeconds = songSeconds(session.show, on.song);
	const endMs = Math.max(beganMs + lengthSeconds * 1000, nowMs);
	const reachedPoint = (session.song && cueIndex(session.song)) ?? cuePoints(on.song).length;
	const starts = sectionStarts(on.song, lengthSeconds);
	const present = starts.findLastIndex(({ point }) => point <= reachedPoint);
	const previousEndMs = lastEndBefore(session, beganMs);
	return starts.slice(present).map(({ point, seconds }, index): Section => {
		const estimateMs = beganMs + seconds * 1000;
		const next = starts[present + index + 1];
		const isPresent = index === 0;
		const startMs = isPresent ? Math.min(estimateMs, nowMs) : Math.max(estimateMs, nowMs);
		return {
			item: on.item.key,
			song: on.song.id,
			point,
			position: positionOf(session.list, on.item),
			startMs,
			endMs: next === undefined ? endMs : Math.max(beganMs + next.seconds * 1000, nowMs),
			gapSeconds: point === 0 && previousEndMs !== null ? (beganMs - previousEndMs) / 1000 : null,
			previousEndMs: point === 0 ? previousEndMs : startMs,
			isAfterInterval: false,
			hasBegun: isPresent,
		};
	});
}

/** When the song before the one that began at `beganMs` ended; null for the night's first. */
function lastEndBefore(session: Session, beganMs: NightMs): NightMs | null {
	const ends = session.list.flatMap((item) =>
		item.kind === 'song'
			? item.runs.flatMap(({ endedAtMs }) =>
					endedAtMs !== null && endedAtMs <= beganMs ? [endedAtMs] : [],
				)
			: [],
	);
	return ends.length === 0 ? null : Math.max(...ends);
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
