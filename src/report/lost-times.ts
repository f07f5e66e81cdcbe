// Where a night lost time: what each part of it took beyond what was planned, with what happened in it.

import { cleanText } from '../base/clean-text.ts';
import type { NightMs } from '../journal/entry.ts';
import { findSong } from '../session/find.ts';
import type { Session, SongItem } from '../session/session.ts';
import { gapBetween } from '../showfile/gap-between.ts';
import { songTitle } from '../showfile/shown-names.ts';
import { runsInOrder, type SongNight } from './report-songs.ts';
import { type ReportTime, secondsOf } from './report-time.ts';

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
