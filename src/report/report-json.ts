// A night's report for other programs.

import type { NightReport } from './night-report.ts';

/** What a report's data says of its own form. */
export const REPORT_FORMAT = 2;

/** One JSON document with a newline at its end: the report's data under `format` 2. */
export function reportJson(report: NightReport): string {
	return `${JSON.stringify({ format: REPORT_FORMAT, ...report }, null, 2)}\n`;
}
