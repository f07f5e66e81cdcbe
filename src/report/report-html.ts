// A night's report as a page that one looks at: what its reader is told, the picture of the night, the songs as a table.

import * as say from '../words/report.ts';
import { TIMELINE } from '../words/timeline.ts';
import { element, htmlPage, named } from './html-page.ts';
import type { NightReport } from './night-report.ts';
import { PART_STYLES, partContent } from './page-parts-html.ts';
import { forReader, type Reader } from './reader.ts';
import {
	isAboutFrom,
	type PagePart,
	type PageTable,
	type ReaderPage,
	readerPage,
	songsGoneAltogether,
} from './reader-page.ts';
import { songTable, techPage } from './tech-page.ts';
import { wallClock } from './timeline.ts';
import { timelineFor } from './timeline-of-night.ts';
import { TIMELINE_STYLES } from './timeline-styles.ts';
import { timelineFigure } from './timeline-svg.ts';

/** The whole file for this reader, a newline at its end. */
export function reportHtml(report: NightReport, reader: Reader): string {
	const own = forReader(report, reader);
	return reader.who === 'tech'
		? nightPage(techPage(own), own, reader)
		: nightPage(readerPage(report, reader), own, reader);
}

function nightPage(
	{ heading, place, parts }: ReaderPage,
	report: NightReport,
	reader: Reader,
): string {
	// A hire firm looks for its items, however many firms there are.
	const isHire = reader.who === 'hire';
	const first = isHire ? parts : parts.slice(0, 1);
	const others = isHire ? [] : parts.slice(1);
	const hasSongs = others.some(({ title }) => title === say.SECTIONS.songs);
	return htmlPage({
		title: heading,
		foot: [heading, report.date].filter((one) => one !== null).join(', '),
		styles: PART_STYLES + TIMELINE_STYLES,
		paper: null,
		body: element('main', {}, [
			element('h1', {}, named(heading)),
			place === null ? null : element('p', { class: 'place' }, named(place)),
			first.map(partContent),
			element('h2', {}, TIMELINE.title),
			timelineFigure(timelineFor(report, reader), 'table'),
			hasSongs
				? null
				: element('div', { class: reader.who === 'production' ? 'planned' : null }, [
						partContent({
							...NOTHING,
							title: say.SECTIONS.songs,
							table: readerSongs(report, reader),
						}),
					]),
			others.filter(({ title }) => title !== say.SECTIONS.incidents).map(partContent),
		]),
	});
}

/** From a song's number to its length; of what comes after, the note alone is for everybody. */
const SONG_COLUMNS = 6;

/** The songs as this reader asks of them: when, and for a player on what. */
function readerSongs(report: NightReport, reader: Reader): PageTable {
	const whole = songTable(report);
	const own = (row: readonly string[]): readonly string[] => [
		...row.slice(0, SONG_COLUMNS),
		row.at(-1) ?? '',
	];
	const names = own(whole.names);
	const rows = whole.rows.map(own);
	if (reader.who === 'hire') return { names, rows };
	const each = [
		...report.songs.flatMap(({ planned, runs }) =>
			(runs.length === 0 ? [null] : runs).map((run) => ({ planned, run })),
		),
		...songsGoneAltogether(report).map(({ planned }) => ({ planned, run: null })),
	];
	const isPlayer = reader.who === 'player';
	return {
		names: [...names, isPlayer ? say.PLAYED_ON : say.PLANNED_AT],
		rows: rows.map((row, place) => {
			const { run = null, planned = null } = each[place] ?? {};
			const began = planned?.began;
			const last = isPlayer
				? playedOn(report, run)
				: began == null
					? ''
					: say.plannedCell(
							wallClock(began.atMs, report.dayOffsetMinutes),
							isAboutFrom(report, planned?.position ?? 0),
						);
			return [...row, last];
		}),
	};
}

type Run = NightReport['songs'][number]['runs'][number];

/** What the page's player had in hands while a song was on, in order, each once. */
function playedOn({ lanes, instruments }: NightReport, run: Run | null): string {
	if (run === null) return '';
	const spans = Object.values(lanes.players).flat();
	const toMs = run.ended?.atMs ?? lanes.toMs;
	const had = spans
		.filter((span) => span.instrument !== null && span.toMs > run.began.atMs && span.fromMs < toMs)
		.map(({ instrument, tuning, capo }) => {
			const name = instruments.find(({ id }) => id === instrument)?.instrument ?? instrument ?? '';
			return say.inTuning(name, tuning, capo ?? 0);
		});
	return [...new Set(had)].join('; ');
}

const NOTHING: PagePart = { title: null, lines: [], items: [], table: null };
