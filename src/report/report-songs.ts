// The songs of a night for its report: what was planned, when each was on, and what became of the list.

import { cleanText } from '../base/clean-text.ts';
import { tenths } from '../base/show-clock.ts';
import type { NightMs, SongEnd } from '../journal/entry.ts';
import { findSong, positionOf } from '../session/find.ts';
import type { Run, Session, SongItem } from '../session/session.ts';
import { runningOrder } from '../showfile/running-order.ts';
import type { Show } from '../showfile/show.ts';
import { songTitle } from '../showfile/shown-names.ts';
import type { NightStep } from './night-steps.ts';
import { type ReportTime, secondsOf } from './report-time.ts';

export type ReportSongState = SongEnd | 'dropped' | 'on' | 'to-come';

/** Why a song was never on: taken off the list, jumped over, or the night ended before it. */
export type WhyNotPlayed = 'dropped' | 'skipped' | 'to-come';

/** What the show file's running order said of a song when the night began. */
export type PlannedSong = {
	/** Place among its songs, from 1. */
	readonly position: number;
	/** On the show clock, whose zero is the first song's start. */
	readonly startSeconds: number;
	/** By the clock on the wall; null where the file gives no start. */
	readonly began: ReportTime | null;
	readonly seconds: number;
	/** Whether the file gives a length; without one it counts as the median of the others. */
	readonly isLengthGiven: boolean;
	/** Before it; null at the first song and after an interval. */
	readonly gapSeconds: number | null;
};

export type ReportRun = {
	readonly began: ReportTime;
	readonly ended: ReportTime | null;
	readonly seconds: number | null;
	readonly how: SongEnd | null;
	/** Between the end of the song before, whichever it was, and this beginning; null for the night's first. */
	readonly gapSeconds: number | null;
};

/** What a song says of itself, but for what happened in it. */
export type SongTimes = {
	/** Key of the night's list. */
	readonly item: string;
	/** Place among the songs of the list, from 1; null for one that was dropped by hand. */
	readonly position: number | null;
	readonly song: string;
	readonly title: string;
	readonly state: ReportSongState;
	/** Null where it was on. */
	readonly whyNotPlayed: WhyNotPlayed | null;
	readonly isEncore: boolean;
	/** Null for a song that was put in tonight. */
	readonly planned: PlannedSong | null;
	readonly isAdded: boolean;
	/** By the show file, wherever the song stands; null where it gives no length. */
	readonly lengthSeconds: number | null;
	/** Moved to another place of the list by hand. */
	readonly isMoved: boolean;
	/** Each time it was on, oldest first. */
	readonly runs: readonly ReportRun[];
};

/** See `songsGone`. */
export type SongGone = Pick<SongTimes, 'item' | 'song' | 'title'> & {
	readonly planned: PlannedSong;
};

export type SongNight = {
	readonly show: Show;
	readonly opened: Session;
	readonly steps: readonly NightStep[];
	readonly last: Session;
	readonly isOver: boolean;
	readonly plannedZeroMs: NightMs | null;
	readonly timeAt: (atMs: NightMs) => ReportTime;
};

/** Every song of the list, in its order. */
export function songTimes(night: SongNight): readonly SongTimes[] {
	const { show, steps, last, isOver, timeAt } = night;
	const planned = plannedSongs(night);
	const moved = new Set(steps.flatMap(({ entry }) => (entry.k === 'song-moved' ? entry.item : [])));
	const all = runsInOrder(last);
	const songs = last.list.filter((item): item is SongItem => item.kind === 'song');
	return songs.map((item) => ({
		item: item.key,
		position: positionOf(last.list, item) || null,
		song: item.song,
		title: cleanText(songTitle(show, item.song)),
		state: songState(last, item, isOver),
		whyNotPlayed: whyNotPlayed(last, item),
		isEncore: item.isEncore,
		planned: planned.get(item.key) ?? null,
		isAdded: !planned.has(item.key),
		lengthSeconds: findSong(last, item.song)?.lengthSeconds ?? null,
		isMoved: moved.has(item.key),
		runs: item.runs.map((run) => {
			const before = all[all.findIndex((one) => one.run === run) - 1]?.run.endedAtMs;
			return {
				began: timeAt(run.beganAtMs),
				ended: run.endedAtMs === null ? null : timeAt(run.endedAtMs),
				seconds: run.endedAtMs === null ? null : secondsOf(run.endedAtMs - run.beganAtMs),
				how: run.how,
				gapSeconds: before == null ? null : secondsOf(run.beganAtMs - before),
			};
		}),
	}));
}

/** What was planned and is no more on the list, since the show file was read again without it. */
export function songsGone(night: SongNight): readonly SongGone[] {
	const { show, opened, last } = night;
	const planned = plannedSongs(night);
	return opened.list.flatMap((item): SongGone[] => {
		const plan = planned.get(item.key);
		const isThere = last.list.some(({ key }) => key === item.key);
		if (item.kind !== 'song' || plan === undefined || isThere) return [];
		const title = cleanText(songTitle(show, item.song));
		return [{ item: item.key, song: item.song, title, planned: plan }];
	});
}

/** By list key: the list of a fresh night is the file's, in its order. */
function plannedSongs({
	opened,
	plannedZeroMs,
	timeAt,
}: SongNight): ReadonlyMap<string, PlannedSong> {
	const keys = opened.list.filter(({ kind }) => kind === 'song').map(({ key }) => key);
	return new Map(
		runningOrder(opened.show).map(
			({ song, position, startSeconds, endSeconds, gapSeconds }): [string, PlannedSong] => [
				keys[position - 1] ?? '',
				{
					position,
					startSeconds,
					began: plannedZeroMs === null ? null : timeAt(plannedZeroMs + startSeconds * 1000),
					seconds: tenths(endSeconds - startSeconds),
					isLengthGiven: song.lengthSeconds !== null,
					gapSeconds,
				},
			],
		),
	);
}

function songState(session: Session, item: SongItem, isOver: boolean): ReportSongState {
	const run = item.runs.at(-1);
	if (run) return run.how ?? 'on';
	return isOver || whyNotPlayed(session, item) !== 'to-come' ? 'dropped' : 'to-come';
}

function whyNotPlayed(session: Session, item: SongItem): WhyNotPlayed | null {
	if (item.runs.length > 0) return null;
	const { list } = session;
	if (positionOf(list, item) === 0) return 'dropped';
	const at = list.findIndex((one) => one.key === item.key);
	const now = list.findIndex((one) => one.key === session.current);
	return item.isPassedOver || at < now ? 'skipped' : 'to-come';
}

/** Every playing in order of time. */
export function runsInOrder({
	list,
}: Session): readonly { readonly item: SongItem; readonly run: Run }[] {
	return list
		.flatMap((item) => (item.kind === 'song' ? item.runs.map((run) => ({ item, run })) : []))
		.sort((one, other) => one.run.beganAtMs - other.run.beganAtMs);
}
