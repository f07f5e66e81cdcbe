// A recorded night's report, from what is on disk.

import { plannedZero } from '../../night/planned-zero.ts';
import { type NightReport, nightReport, type ReportParts } from '../../report/night-report.ts';
import type { NightStep } from '../../report/night-steps.ts';
import { nightSteps } from '../../report/night-steps.ts';
import type { Show } from '../../showfile/show.ts';
import { nightFindingWords } from '../../words/night-file.ts';
import { localOffsetMinutes } from '../local-offset.ts';
import type { NightOnDisk } from './night-on-disk.ts';

/** What the night's report is made from, told with this show. */
export function partsOfNight(night: NightOnDisk, show: Show): ReportParts {
	const openedMs = beganMs(night);
	const told = nightSteps(show, night.records);
	const firstSongMs = told.steps.at(-1)?.after.zeroAtMs ?? null;
	return {
		...{ show, night: night.id, isRehearsal: night.isRehearsal },
		...told,
		plannedZeroMs: plannedStart(show, firstSongMs ?? (openedMs || null)),
		dayOffsetMinutes: localOffsetMinutes(openedMs),
		damage: night.findings.map(nightFindingWords),
	};
}

const MS_A_DAY = 86_400_000;

/** When the first song was meant to start, on the day on which it did; null where nothing says so. */
function plannedStart(show: Show, nearMs: number | null): number | null {
	if (show.startMinutes === null || nearMs === null) return null;
	const zeroMs = plannedZero(show, nearMs, localOffsetMinutes(nearMs));
	// Of a show that began after midnight the hour was the day before's.
	return zeroMs + Math.round((nearMs - zeroMs) / MS_A_DAY) * MS_A_DAY;
}

/** When a night without its beginning began, its first record is the nearest to. */
function beganMs({ startedAtMs, records }: NightOnDisk): number {
	return startedAtMs ?? records[0]?.t ?? 0;
}

export type ReportedNight = {
	readonly report: NightReport;
	readonly steps: readonly NightStep[];
	readonly startedAtMs: number;
	/** Add to UTC for the time of day where it was. */
	readonly dayOffsetMinutes: number;
};

/** The night's report with its steps. */
export function reportOfNight(night: NightOnDisk, show: Show): ReportedNight {
	const parts = partsOfNight(night, show);
	const { steps, dayOffsetMinutes } = parts;
	return { report: nightReport(parts), steps, startedAtMs: beganMs(night), dayOffsetMinutes };
}
