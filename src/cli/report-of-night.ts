// A recorded night's report, from what is on disk.

import { plannedZero } from '../night/planned-zero.ts';
import { type NightReport, nightReport } from '../report/night-report.ts';
import { type NightStep, nightSteps } from '../report/night-steps.ts';
import type { Show } from '../showfile/show.ts';
import { nightFindingWords } from '../words/night-file.ts';
import { localOffsetMinutes } from './local-offset.ts';
import type { NightOnDisk } from './night-on-disk.ts';

export type ReportedNight = {
	readonly report: NightReport;
	readonly steps: readonly NightStep[];
	readonly startedAtMs: number;
	/** Add to UTC for the time of day where it was. */
	readonly dayOffsetMinutes: number;
};

/** The night's report, told with this show. */
export function reportOfNight(night: NightOnDisk, show: Show): ReportedNight {
	// When a night without its beginning began, its first record is the nearest to.
	const startedAtMs = night.startedAtMs ?? night.records[0]?.t ?? 0;
	const dayOffsetMinutes = localOffsetMinutes(startedAtMs);
	const told = nightSteps(show, night.records);
	const report = nightReport({
		...{ show, night: night.id, isRehearsal: night.isRehearsal, ...told, dayOffsetMinutes },
		plannedZeroMs:
			show.startMinutes === null || night.startedAtMs === null
				? null
				: plannedZero(show, night.startedAtMs, dayOffsetMinutes),
		damage: night.findings.map(nightFindingWords),
	});
	return { report, steps: told.steps, startedAtMs, dayOffsetMinutes };
}
