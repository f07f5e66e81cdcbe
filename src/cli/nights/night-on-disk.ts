// A recorded night for those who only look at it: its show, its records, and how it stands.

import type { NightSummary } from '../../disk/nights-folder.ts';
import { lookAtNight } from '../../disk/open-night-file.ts';
import { realDisk } from '../../disk/real-disk.ts';
import type { Entry } from '../../journal/entry.ts';
import type { Finding } from '../../journal/findings.ts';
import type { JournalRecord } from '../../journal/record.ts';
import { inOrder } from '../../journal/record-order.ts';
import { openSession } from '../../session/open-session.ts';
import type { Session } from '../../session/session.ts';
import {
	effectiveRecords,
	extend,
	openTimeline,
	sessionOf,
	takenBack,
} from '../../session/timeline.ts';
import type { Show } from '../../showfile/show.ts';
import { keptShow } from '../../showfile/show-record.ts';

export type NightOnDisk = {
	readonly id: string;
	/** The night's own copy of the show; null when it cannot be read. */
	readonly show: Show | null;
	readonly title: string | null;
	/** Absolute path of its show file; empty where there was none. */
	readonly showPath: string;
	readonly isRehearsal: boolean;
	readonly startedAtMs: number | null;
	readonly records: readonly JournalRecord<Entry>[];
	/** What was noticed about the night's files. */
	readonly findings: readonly Finding[];
	readonly isThere: boolean;
};

/** The night with this id in these folders; `isThere` false where there is none. */
export function nightOnDisk(folders: readonly string[], id: string): NightOnDisk {
	const night = lookAtNight({ disk: realDisk, folders }, { id });
	const { header, findings } = night;
	return {
		id: night.id,
		show: keptShow(header?.show),
		title: header?.title ?? null,
		showPath: header?.showPath ?? '',
		isRehearsal: header?.isRehearsal ?? false,
		startedAtMs: night.startedAtMs,
		records: inOrder(night.records()) as readonly JournalRecord<Entry>[],
		findings,
		isThere: !findings.some((finding) => finding.code === 'night-missing'),
	};
}

/** How a night stands after all that was recorded; null where its show cannot be read. */
export function standsAt({ show, records }: NightOnDisk): Session | null {
	return show && sessionOf(records.reduce(extend, openTimeline(openSession(show))));
}

/** The newest of these nights in which a song began: one that was only looked at has nothing to tell. */
export function lastPlayed(
	folders: readonly string[],
	nights: readonly NightSummary[],
): NightOnDisk | null {
	for (const { id } of nights) {
		const night = nightOnDisk(folders, id);
		const isPlayed = effectiveRecords(night.records).some(
			({ record, isTakenBack }) => !isTakenBack && record.e.some(({ k }) => k === 'song-began'),
		);
		if (isPlayed) return night;
	}
	return null;
}

/** Whether these records, the night's last, say that its show was ended and stays so. */
export function isFinished(lastRecords: readonly JournalRecord[]): boolean {
	const aside = takenBack(lastRecords);
	return lastRecords.some(
		(record) => !aside.has(record.id) && record.e.some((entry) => entry.k === 'show-ended'),
	);
}
