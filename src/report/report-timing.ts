// Whether a night ran to time: its planned and real beginning and end, and the house's curfew.

import { dayTimeText, tenths } from '../base/show-clock.ts';
import type { NightMs } from '../journal/entry.ts';
import { runningOrder } from '../showfile/running-order.ts';
import type { LostTime } from './lost-times.ts';
import { runsInOrder, type SongNight } from './report-songs.ts';
import { type ReportTime, secondsOf } from './report-time.ts';

export type ReportTiming = {
	/** By the show file; null where it gives no start. */
	readonly plannedStart: ReportTime | null;
	readonly plannedEnd: ReportTime | null;
	/** Of the file's whole list, gaps and intervals in it. */
	readonly plannedSeconds: number;
	/** From the first song's beginning to the last one's end; null while the show is not over. */
	readonly seconds: number | null;
	/** Negative where it began early; null where one of the two is not known. */
	readonly startLateSeconds: number | null;
	/** Real end less planned end; negative where it ended early. */
	readonly endLateSeconds: number | null;
	/** Real seconds less planned ones, whenever it began. */
	readonly overrunSeconds: number | null;
	readonly curfew: ReportCurfew | null;
	/** Parts that took longer than planned, in order of time. */
	readonly lost: readonly LostTime[];
};

export type ReportCurfew = {
	/** `22:45`, as the file gives it. */
	readonly clock: string;
	/** Null where no start tells on which day it was. */
	readonly at: ReportTime | null;
	/** The last song's end less it; negative where there was time left; null where either is not known. */
	readonly overSeconds: number | null;
	readonly isMet: boolean | null;
};

/** See `ReportTiming`. */
export function reportTiming(night: SongNight, lost: readonly LostTime[]): ReportTiming {
	const { opened, last, isOver, plannedZeroMs, timeAt } = night;
	const plannedSeconds = tenths(runningOrder(opened.show).at(-1)?.endSeconds ?? 0);
	const runs = runsInOrder(last);
	const beganMs = last.zeroAtMs;
	const ends = runs.flatMap(({ run }) => run.endedAtMs ?? []);
	const endedMs = isOver && ends.length > 0 ? Math.max(...ends) : null;
	const plannedEndMs = plannedZeroMs === null ? null : plannedZeroMs + plannedSeconds * 1000;
	const seconds = beganMs === null || endedMs === null ? null : secondsOf(endedMs - beganMs);
	return {
		plannedStart: plannedZeroMs === null ? null : timeAt(plannedZeroMs),
		plannedEnd: plannedEndMs === null ? null : timeAt(plannedEndMs),
		plannedSeconds,
		seconds,
		startLateSeconds: apart(beganMs, plannedZeroMs),
		endLateSeconds: apart(endedMs, plannedEndMs),
		overrunSeconds: seconds === null ? null : tenths(seconds - plannedSeconds),
		curfew: curfewOf(night, endedMs),
		lost,
	};
}

function curfewOf(
	{ opened, last, plannedZeroMs, timeAt }: SongNight,
	endedMs: NightMs | null,
): ReportCurfew | null {
	const { curfewMinutes } = last.show;
	// The planned start is that of the show as the night began.
	const { startMinutes } = opened.show;
	if (curfewMinutes === null) return null;
	const atMs =
		plannedZeroMs === null || startMinutes === null
			? null
			: plannedZeroMs + (curfewMinutes - startMinutes) * 60_000;
	const overSeconds = apart(endedMs, atMs);
	return {
		clock: dayTimeText(curfewMinutes * 60_000, 0).slice(0, -3),
		at: atMs === null ? null : timeAt(atMs),
		overSeconds,
		isMet: overSeconds === null ? null : overSeconds <= 0,
	};
}

function apart(oneMs: NightMs | null, otherMs: NightMs | null): number | null {
	return oneMs === null || otherMs === null ? null : secondsOf(oneMs - otherMs);
}
