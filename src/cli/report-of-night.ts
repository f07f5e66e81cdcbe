// A recorded night's report, from what is on disk.

import { plannedZero } from '../night/planned-zero.ts';
import { type NightReport, nightReport, type ReportParts } from '../report/night-report.ts';
import type { NightStep } from '../report/night-steps.ts';
import { nightSteps } from '../report/night-steps.ts';
import type { Show } from '../showfile/show.ts';
import { nightFindingWords } from '../words/night-file.ts';
import { localOffsetMinutes } from './local-offset.ts';
import type { NightOnDisk } from './night-on-disk.ts';

/** What the night's report is made from, told with this show. */
export function partsOfNight(night: NightOnDisk, show: Show): ReportParts {
	const { startedAtMs } = night;
	const dayOffsetMinutes = localOffsetMinutes(beganMs(night));
	return {
		...{ show, night: night.id, isRehearsal: night.isRehearsal },
		...nightSteps(show, night.records),
		plannedZeroMs:
			show.startMinutes === null || startedAtMs === null
				? null
				: plannedZero(show, startedAtMs, dayOffsetMinutes),
		dayOffsetMinutes,
		damage: night.findings.map(nightFindingWords),
	};
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
