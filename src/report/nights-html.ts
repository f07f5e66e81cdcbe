// Several nights beside one another as a page that one opens or prints.

import { element, htmlPage, named } from './html-page.ts';
import { nightsPage } from './nights-page.ts';
import type { NightsReport } from './nights-report.ts';
import { PART_STYLES, partContent } from './page-parts-html.ts';

/** The whole file, a newline at its end. */
export function nightsHtml(report: NightsReport): string {
	const { heading, parts } = nightsPage(report);
	return htmlPage({
		title: heading,
		foot: heading,
		styles: PART_STYLES,
		paper: null,
		body: element('main', {}, [element('h1', {}, named(heading)), parts.map(partContent)]),
	});
}
