// A night's report for other programs.

import type { NightReport } from './night-report.ts';

/** One JSON document with a newline at its end: the report's data under `format` `rackside-report/1`. */
export function reportJson(report: NightReport): string {
	return `${JSON.stringify({ format: 'rackside-report/1', ...report }, null, 2)}\n`;
}
