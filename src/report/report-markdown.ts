// The technician's report as Markdown, to read and to send.

import type { NightReport } from './night-report.ts';
import { readerMarkdown } from './reader-markdown.ts';
import { techPage } from './tech-page.ts';

/** The whole page, every text from outside escaped, a newline at its end. */
export function reportMarkdown(report: NightReport): string {
	return readerMarkdown(techPage(report));
}
