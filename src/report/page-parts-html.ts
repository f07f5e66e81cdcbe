// The parts of a reader's page as HTML: headings, sentences, lists, and tables that a phone shows as lines of words.

import { displayWidth } from '../base/display-width.ts';
import { PLANNED_AT } from '../words/report.ts';
import { type Content, element, named } from './html-page.ts';
import type { PagePart, PageTable } from './reader-page.ts';

/** A part with its heading. */
export function partContent({ title, lines, items, table }: PagePart): Content {
	const content = [
		title === null ? null : element('h2', {}, named(title)),
		lines.map((line) => element('p', {}, said(line))),
		items.length === 0
			? null
			: element(
					'ul',
					{},
					items.map((item) => element('li', {}, said(item))),
				),
		table === null ? null : tableContent(table),
	];
	return element('section', {}, content);
}

/** Words longer than this are cut where they must be, so that no table is wider than its page. */
const LONGEST_WORD = 14;

/** On a phone the cells of a row follow one another like words. */
function tableContent({ names, rows }: PageTable): Content {
	// A column in which nothing stands takes room from the others.
	const filled = names.map(
		(_, column) => rows.length === 0 || rows.some((row) => (row[column] ?? '') !== ''),
	);
	const isFilled = (_: string, column: number): boolean => filled[column] === true;
	const head = names.filter(isFilled).map((name) => element('th', { scope: 'col' }, name));
	const body = rows.map((row) => element('tr', {}, row.filter(isFilled).map(cellContent)));
	return element('table', { class: 'rows' }, [
		element('thead', {}, element('tr', {}, head)),
		element('tbody', {}, body),
	]);
}

function cellContent(cell: string): Content {
	const isLong = cell.split(' ').some((word) => displayWidth(word) > LONGEST_WORD);
	return element('td', { class: isLong ? 'long' : DAY.test(cell) ? 'day' : null }, said(cell));
}

const DAY = /^\d{4}-\d\d-\d\d$/;

/** Names as they are written; whatever could be in another direction moves nothing beside it. */
function said(text: string): Content {
	return ONE_DIRECTION.test(text) ? text : named(text);
}

const ONE_DIRECTION = /^[\x20-\u02ff\u2010-\u2027]*$/;

/** How parts look, beside what all pages share. */
export const PART_STYLES = `
h1 { font-size: 1.6rem; margin: .2rem 0; }
h2 { font-size: 1.1rem; margin: 1.4rem 0 .3rem;
	border-bottom: 2px solid var(--line); }
p { margin: .4rem 0; max-width: 46rem; }
.place { color: var(--quiet); }
ul { padding-left: 1.1rem; margin: .3rem 0; }
li { margin: .15rem 0; }
summary { cursor: pointer; padding: .3rem 0; }
.rows { overflow-wrap: normal; }
.long { overflow-wrap: anywhere; }
.day { white-space: nowrap; }
@media print {
	.rows { font-size: 9.5pt; }
}
@media (max-width: 40rem) {
	.rows thead { position: absolute; clip-path: inset(50%); width: 1px; height: 1px; overflow: hidden; }
	.rows tr { display: block; padding: .25rem 0; border-bottom: 1px solid var(--line); }
	.rows td { display: inline; border: 0; padding: 0; overflow-wrap: anywhere; }
	.rows td:empty { display: none; }
	.rows td:not(:first-child)::before { content: " · "; }
	.planned td:last-child:not(:empty)::before { content: " · ${PLANNED_AT.toLowerCase()} "; }
}
`;
