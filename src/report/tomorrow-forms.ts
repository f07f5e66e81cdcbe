// The list for the next show as Markdown, as a table for a spreadsheet, and as data.

import { cleanText } from '../base/clean-text.ts';
import { yesOrNo } from '../words/report.ts';
import { lineWithWhy, TOMORROW, TOMORROW_KINDS } from '../words/tomorrow.ts';
import { markdownText as text } from './markdown-text.ts';
import { csvText } from './report-csv.ts';
import { lineWords, type TomorrowKind, type TomorrowLine } from './tomorrow-line.ts';

export type TomorrowPage = {
	/** The show's title and day. */
	readonly night: string;
	readonly lines: readonly TomorrowLine[];
	/** By `tickOf`. */
	readonly ticked: ReadonlySet<string>;
};

/** The kinds in order. */
export const KINDS = Object.keys(TOMORROW_KINDS) as readonly TomorrowKind[];

/** By what a line is known to have been ticked off: another reason leaves it done, another thing to do does not. */
export function tickOf({ kind, instrument, name, text: words }: TomorrowLine): string {
	return JSON.stringify([kind, instrument ?? name, words]);
}

/** Tasks under the titles of their kinds (GitHub's task lists), a newline at the end. */
export function tomorrowMarkdown({ night, lines, ticked }: TomorrowPage): string {
	const sections = KINDS.flatMap((kind) => {
		const own = lines.filter((line) => line.kind === kind);
		if (own.length === 0) return [];
		const tasks = own.map(
			(line) =>
				`- [${ticked.has(tickOf(line)) ? 'x' : ' '}] ${text(lineWithWhy(lineWords(line), line.why))}`,
		);
		return ['', `## ${TOMORROW_KINDS[kind]}`, '', ...tasks];
	});
	const body = sections.length === 0 ? ['', TOMORROW.nothing] : sections;
	return `${[`# ${text(TOMORROW.title(night))}`, ...body].join('\n')}\n`;
}

/** A row for each line under a row of names. */
export function tomorrowCsv({ lines, ticked }: TomorrowPage): string {
	return csvText([
		TOMORROW.cells,
		...lines.map((line) => [
			...[line.kind, line.instrument, line.slot, line.name, line.text, line.why],
			yesOrNo(ticked.has(tickOf(line))),
		]),
	]);
}

/** One JSON document with a newline at its end. */
export function tomorrowJson({ lines }: TomorrowPage): string {
	return `${JSON.stringify({ lines })}\n`;
}

/** The page's title on one line. */
export function tomorrowTitle({ night }: TomorrowPage): string {
	return cleanText(TOMORROW.title(night));
}
