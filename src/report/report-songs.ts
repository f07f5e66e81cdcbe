// The songs of a night for its report: what was planned, when each was on, what became of the list, and the time that was
// lost on the way.

import { cuePoints } from '../../machines/song.ts';
import { cleanText } from '../base/clean-text.ts';
import { tenths } from '../base/show-clock.ts';
import type { NightMs, SongEnd } from '../journal/entry.ts';
import { findSong, positionOf } from '../session/find.ts';
import type { Run, Session, SongItem } from '../session/session.ts';
import { gapBetween } from '../showfile/gap-between.ts';
import { runningOrder } from '../showfile/running-order.ts';
import type { Show } from '../showfile/show.ts';
import { songTitle } from '../showfile/shown-names.ts';
import type { NightStep } from './night-steps.ts';
import type { ReportTime } from './report-time.ts';

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
	/** Moved to another place of the list by hand. */
	readonly isMoved: boolean;
	/** Each time it was on, oldest first. */
	readonly runs: readonly ReportRun[];
};

/** See `songsGone`. */
export type SongGone = Pick<SongTimes, 'item' | 'song' | 'title'> & {
	readonly planned: PlannedSong;
};

/** Cues of a song that counts as played which nobody stepped to. */
export type MissedCues = {
	/** When the song ended. */
	readonly at: ReportTime;
	readonly item: string;
	readonly position: number | null;
	readonly song: string;
	readonly cues: readonly string[];
	/** Ids of the players whose boards one of them changes. */
	readonly playerIds: readonly string[];
};

/** Time that a part of the night took beyond what was planned for it. */
export type LostTime = {
	/** Before the first song, before a song, an interval, or a song itself. */
	readonly where: 'start' | 'gap' | 'interval' | 'song';
	/** When it began to be lost: the planned end of that part. */
	readonly at: ReportTime;
	/** Key and title of the song, or of the one that it was before. */
	readonly item: string;
	readonly song: string;
	readonly seconds: number;
	/** Numbers of the incidents in that part; none where the journal holds no reason. */
	readonly incidents: readonly number[];
	/** Places among the hand-overs, from 0, of those that were late for that song. */
	readonly lateHandOvers: readonly number[];
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

/** The cues of each playing that counts as played which were never reached, by the journal. */
export function missedCues({ show, steps, last, timeAt }: SongNight): readonly MissedCues[] {
	const all: MissedCues[] = [];
	let reached = new Set<number>();
	for (const { entry, before } of steps) {
		if (entry.k === 'song-began') reached = new Set();
		if (entry.k === 'cue-reached') reached.add(entry.index);
		if (entry.k !== 'song-ended' || entry.how !== 'played') continue;
		const item = before.list.find(({ key }) => key === before.current);
		const song = item?.kind === 'song' ? findSong(before, item.song) : null;
		if (item?.kind !== 'song' || song === null) continue;
		const points = cuePoints(song).filter(({ index }) => index > 0 && !reached.has(index));
		const cues = points.map(({ at }) => cleanText(at));
		const playerIds = [
			...new Set(points.flatMap(({ index }) => Object.keys(song.cues[index - 1]?.boards ?? {}))),
		];
		if (cues.length === 0) continue;
		all.push({
			at: timeAt(entry.at),
			item: item.key,
			position: positionOf(last.list, item) || null,
			song: cleanText(songTitle(show, item.song)),
			cues,
			playerIds,
		});
	}
	return all;
}

/** What each part of the night took beyond its plan, in order of time; `seconds` above 0. */
export function lostTimes(
	night: SongNight,
	incidents: readonly { readonly id: number; readonly at: ReportTime }[],
	lateFor: (item: string) => readonly number[],
): readonly LostTime[] {
	const { show, last, plannedZeroMs, timeAt } = night;
	const runs = runsInOrder(last);
	return runs.flatMap(({ item, run }, place): LostTime[] => {
		const { song: id, key } = item;
		const between = (fromMs: NightMs, toMs: NightMs): readonly number[] =>
			incidents.filter(({ at }) => at.atMs >= fromMs && at.atMs <= toMs).map((one) => one.id);
		const part = (
			where: LostTime['where'],
			span: { readonly fromMs: NightMs; readonly toMs: NightMs; readonly plannedSeconds: number },
		): LostTime[] => {
			const { fromMs, toMs, plannedSeconds } = span;
			const seconds = secondsOf(toMs - fromMs - plannedSeconds * 1000);
			if (seconds <= 0) return [];
			return [
				{
					where,
					at: timeAt(fromMs + plannedSeconds * 1000),
					item: key,
					song: cleanText(songTitle(show, id)),
					seconds,
					incidents: between(where === 'start' ? -Infinity : fromMs, toMs),
					lateHandOvers: where === 'song' ? [] : lateFor(key),
				},
			];
		};
		const song = findSong(last, id);
		const ended = runs[place - 1];
		const began = run.beganAtMs;
		const wait =
			ended?.run.endedAtMs == null
				? place === 0 && plannedZeroMs !== null
					? part('start', { fromMs: plannedZeroMs, toMs: began, plannedSeconds: 0 })
					: []
				: part(intervalBetween(last, ended.item, item) === null ? 'gap' : 'interval', {
						fromMs: ended.run.endedAtMs,
						toMs: began,
						plannedSeconds: plannedWait(last, ended.item, item),
					});
		const itself =
			run.endedAtMs === null || song?.lengthSeconds == null
				? []
				: part('song', { fromMs: began, toMs: run.endedAtMs, plannedSeconds: song.lengthSeconds });
		return [...wait, ...itself];
	});
}

function intervalBetween({ list }: Session, before: SongItem, item: SongItem): number | null {
	const place = ({ key }: SongItem): number => list.findIndex((one) => one.key === key);
	const between = list.slice(place(before) + 1, Math.max(0, place(item)));
	return between.find((one) => one.kind === 'interval')?.seconds ?? null;
}

function plannedWait(session: Session, before: SongItem, item: SongItem): number {
	return (
		intervalBetween(session, before, item) ??
		gapBetween({
			given: item.gapSeconds,
			before: findSong(session, before.song) ?? { ends: 'stop' },
			isEncoreBegin: item.isEncore && !before.isEncore,
		})
	);
}

/** Every playing in order of time. */
export function runsInOrder({
	list,
}: Session): readonly { readonly item: SongItem; readonly run: Run }[] {
	return list
		.flatMap((item) => (item.kind === 'song' ? item.runs.map((run) => ({ item, run })) : []))
		.sort((one, other) => one.run.beganAtMs - other.run.beganAtMs);
}

function secondsOf(ms: number): number {
	return tenths(ms / 1000);
}
