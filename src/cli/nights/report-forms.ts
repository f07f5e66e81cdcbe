// What a report can be written as, for whom, and the files of all readers at once.

import { cleanText } from '../../base/clean-text.ts';
import type { Problem } from '../../base/problem.ts';
import { slug } from '../../base/slug.ts';
import type { NightReport } from '../../report/night-report.ts';
import { forReader, hireFirms, type Reader } from '../../report/reader.ts';
import { readerMarkdown } from '../../report/reader-markdown.ts';
import { readerPage } from '../../report/reader-page.ts';
import { TABLE_NAMES, type TableName, tableCsv } from '../../report/report-csv.ts';
import { reportHtml } from '../../report/report-html.ts';
import { reportJson } from '../../report/report-json.ts';
import { reportMarkdown } from '../../report/report-markdown.ts';
import { timelineFor } from '../../report/timeline-of-night.ts';
import { timelineText } from '../../report/timeline-text.ts';
import type { Show } from '../../showfile/show.ts';
import { NO_PLAYER, NO_SUCH_FIRM, NO_SUCH_READER } from '../../words/requests.ts';
import { TIMELINE } from '../../words/timeline.ts';
import { notAmong } from '../not-among.ts';

export type ReportForm = {
	/** Of the file's name. */
	readonly ending: string;
	/** A page is written for each reader; a table or data once. */
	readonly isPage: boolean;
	readonly text: (report: NightReport, reader: Reader) => string | Promise<string>;
	/** What follows the text on a terminal. */
	readonly picture?: (report: NightReport, reader: Reader, isAscii: boolean) => string;
};

const ofWhole =
	(text: (report: NightReport) => string): ReportForm['text'] =>
	(report, reader) =>
		text(forReader(report, reader));

const table = (name: TableName): ReportForm => ({
	ending: `-${name}.csv`,
	isPage: false,
	text: ofWhole((report) => tableCsv(name, report)),
});

/** By the name that is typed. */
export const REPORT_FORMS: Readonly<Record<string, ReportForm>> = {
	markdown: { ending: '.md', isPage: true, text: markdownOf, picture: pictureOf },
	html: { ending: '.html', isPage: true, text: htmlOf },
	json: { ending: '.json', isPage: false, text: ofWhole(reportJson) },
	...Object.fromEntries(TABLE_NAMES.map((name) => [name, table(name)])),
};

function markdownOf(report: NightReport, reader: Reader): string {
	return reader.who === 'tech'
		? reportMarkdown(report)
		: readerMarkdown(readerPage(report, reader));
}

/** What draws the picture is as large as all the rest, and read where it is drawn. */
function htmlOf(report: NightReport, reader: Reader): string {
	return reportHtml(report, reader);
}

function pictureOf(report: NightReport, reader: Reader, isAscii: boolean): string {
	const lines = timelineText(timelineFor(report, reader), isAscii);
	return ['', `## ${TIMELINE.title}`, '', ...lines, ''].join('\n');
}

const TECH: Reader = { who: 'tech' };
const READERS = ['tech', 'production', 'hire', 'hire=FIRM', 'player=ID'];

/** The reader that was asked for, by id or name, of the people and firms of this show. */
export function readReader(text: string, show: Show): { reader: Reader } | { problem: Problem } {
	const [who = '', ...rest] = text.split('=');
	const named = rest.join('=').trim();
	if (who === 'tech' || who === 'production') {
		if (rest.length === 0) return { reader: { who } };
	} else if (who === 'hire') {
		const firms = [...new Set(show.instruments.flatMap(({ hiredFrom }) => hiredFrom ?? []))];
		if (rest.length === 0) return { reader: { who, firm: null } };
		const firm = firms.find((one) => one.toLowerCase() === named.toLowerCase());
		if (firm !== undefined) return { reader: { who, firm: cleanText(firm) } };
		return { problem: notAmong({ code: 'no-firm', what: NO_SUCH_FIRM, found: named }, firms) };
	} else if (who === 'player') {
		const player =
			show.players.find(({ id }) => id === named) ??
			show.players.find(({ name }) => name.toLowerCase() === named.toLowerCase());
		if (player) return { reader: { who, id: player.id } };
		const names = show.players.map(({ id }) => id);
		return { problem: notAmong({ code: 'no-player', what: NO_PLAYER, found: named }, names) };
	}
	const unknown = { code: 'unknown-reader', what: NO_SUCH_READER, found: text };
	return { problem: notAmong(unknown, READERS) };
}

/** What a file for this reader is called, before its ending; empty for the technician's own. */
export function readerName(reader: Reader): string {
	if (reader.who === 'tech') return '';
	if (reader.who === 'player') return `player-${slug(reader.id)}`;
	if (reader.who === 'hire' && reader.firm !== null) return `hire-${slug(reader.firm)}`;
	return reader.who;
}

export type ReportFile = { readonly name: string; readonly text: string };

/** A page for every reader in each form that has pages, and every table and the data once; no name twice. */
export async function everyFile(report: NightReport): Promise<readonly ReportFile[]> {
	const readers: readonly Reader[] = [
		TECH,
		{ who: 'production' },
		...report.players.map(({ id }): Reader => ({ who: 'player', id })),
		...hireFirms(report).map((firm): Reader => ({ who: 'hire', firm })),
	];
	const files: ReportFile[] = [];
	for (const { isPage, ending, text } of Object.values(REPORT_FORMS)) {
		if (isPage) {
			for (const reader of readers) {
				const name = `${readerName(reader) || 'tech'}${ending}`;
				files.push({ name, text: await text(report, reader) });
			}
		} else {
			const name = ending.replace(/^-|^(?=\.)/, (mark) => (mark === '-' ? '' : 'report'));
			files.push({ name, text: await text(report, TECH) });
		}
	}
	const taken = new Map<string, number>();
	return files.map(({ name, text }) => {
		const count = (taken.get(name) ?? 0) + 1;
		taken.set(name, count);
		return { name: count === 1 ? name : name.replace(/(?=\.[^.]*$)/, `-${count}`), text };
	});
}
