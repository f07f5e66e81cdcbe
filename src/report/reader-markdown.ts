// The page of a player, of production or of a hire firm as Markdown.

import { markdownSection, markdownTable } from './markdown-blocks.ts';
import { markdownCell, markdownText as text } from './markdown-text.ts';
import type { PagePart, ReaderPage } from './reader-page.ts';

/** The whole page, every text escaped, a newline at its end. */
export function readerMarkdown({ heading, place, parts }: ReaderPage): string {
	return `${[
		`# ${text(heading)}`,
		...(place === null ? [] : ['', text(place)]),
		...parts.flatMap(partLines),
	].join('\n')}\n`;
}

function partLines({ title, lines, items, table }: PagePart): string[] {
	const blocks = [
		...lines.map((line) => [text(line)]),
		items.map((item) => `- ${text(item)}`),
		table === null
			? []
			: markdownTable(
					table.names,
					table.rows.map((row) => row.map(markdownCell)),
				),
	].filter((block) => block.length > 0);
	const body = blocks.flatMap((block, place) => (place === 0 ? block : ['', ...block]));
	return title === null ? ['', ...body] : markdownSection(text(title), body);
}
