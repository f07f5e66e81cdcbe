// The report of a night that was pressed through the real keys.

import { join } from 'node:path';
import { type NightReport, nightReport } from '../../src/report/night-report.ts';
import { nightSteps } from '../../src/report/night-steps.ts';
import type { Show } from '../../src/showfile/show.ts';
import { playedNight, ZERO_MS } from '../report/script-night.ts';
import { loadShow } from './load-show.ts';

/** The keys of a script pressed at their times, and the report as it then stands. */
export function reportOf(showName: string, script: string): NightReport {
	return reportOfShow(loadShow(join(import.meta.dirname, 'shows', `${showName}.yaml`)), script);
}

/** The same for any show. */
export function reportOfShow(show: Show, script: string): NightReport {
	return nightReport({
		show,
		night: 'pressed',
		isRehearsal: true,
		...nightSteps(show, playedNight(show, script).records),
		plannedZeroMs: ZERO_MS,
		dayOffsetMinutes: 0,
		damage: [],
	});
}
