// What a player, production and a hire firm read: a page of a few sentences and tables, in whatever form it is then
// written. The technician's page is the whole report.

import { incidentKindWords } from '../words/entry-words.ts';
import { plannedCell, SECTIONS } from '../words/report.ts';
import * as say from '../words/report-readers.ts';
import { lineWithWhy } from '../words/tomorrow.ts';
import { stuckUntil } from './incident-line.ts';
import type { LostTime } from './lost-times.ts';
import type { NightReport } from './night-report.ts';
import { forReader, hireFirms, type Reader } from './reader.ts';
import type { ReportInstrument } from './report-gear.ts';
import type { ReportIncident } from './report-incidents.ts';
import { hoursMinutes } from './report-time.ts';
import { lineWords } from './tomorrow-line.ts';

export type PageTable = {
	readonly names: readonly string[];
	readonly rows: readonly (readonly string[])[];
};

export type PagePart = {
	/** Null for what stands right under the heading. */
	readonly title: string | null;
	/** Sentences, a paragraph each. */
	readonly lines: readonly string[];
	/** Items of a list. */
	readonly items: readonly string[];
	readonly table: PageTable | null;
};

/** Plain texts; whoever writes them into a form escapes them. */
export type ReaderPage = {
	readonly heading: string;
	/** Venue and date, where the file gives them. */
	readonly place: string | null;
	readonly parts: readonly PagePart[];
};

/** The page of everybody but the technician. */
export function readerPage(
	report: NightReport,
	reader: Exclude<Reader, { readonly who: 'tech' }>,
): ReaderPage {
	const own = forReader(report, reader);
	return {
		...pageHead(report),
		parts: [
			...(reader.who === 'player'
				? playerParts(own, reader.id)
				: reader.who === 'hire'
					? hireParts(own)
					: productionParts(own)),
			...closing(report),
		],
	};
}

/** What stands at the top of every reader's page. */
export function pageHead({
	title,
	isRehearsal,
	venue,
	date,
}: NightReport): Pick<ReaderPage, 'heading' | 'place'> {
	const place = [venue, date].filter((one) => one !== null).join(', ');
	return { heading: say.heading(title, isRehearsal), place: place === '' ? null : place };
}

/** What somebody added, and who signs. */
function closing({ remark, signed }: NightReport): PagePart[] {
	const lines = [remark, signed === null ? null : say.signedBy(signed)].filter(
		(one) => one !== null,
	);
	return lines.length === 0 ? [] : [part(null, lines)];
}

function part(
	title: string | null,
	lines: readonly string[],
	items: readonly string[] = [],
): PagePart {
	return { title, lines, items, table: null };
}

// The player.

function playerParts(report: NightReport, id: string): PagePart[] {
	const name = report.players[0]?.name ?? id;
	const spans = report.lanes.players[id] ?? [];
	const songs = report.songs.filter(({ runs }) =>
		runs.some(({ began, ended, how }) =>
			spans.some(
				({ instrument, fromMs, toMs }) =>
					instrument !== null &&
					how !== 'skipped' &&
					toMs > began.atMs &&
					fromMs < (ended?.atMs ?? Infinity),
			),
		),
	);
	const given = report.handOvers.filter(({ instrument }) => instrument !== null);
	const first = say.playerThanks({
		name,
		songs: songs.length,
		instruments: new Set(spans.flatMap(({ instrument }) => instrument ?? [])).size,
		handOvers: given.length,
		late: given.filter(({ isLate }) => isLate === true).length,
		isAllKnown: given.every(({ isLate }) => isLate !== null),
	});
	const { incidents, missedCues } = report;
	const pack = report.packs.findLast(({ what }) => what === 'changed');
	const second = [
		...(incidents.length === 0 ? [say.NOTHING_NOTED] : incidents.map(incidentSentence)),
		...missedCues.map(({ song, cues }) => say.cuesMissedIn(song, cues)),
		...(pack === undefined ? [] : [say.packNow(pack.pack, hoursMinutes(pack.at), pack.from)]),
		...(report.tomorrow.length === 0 ? [] : [say.beforeNext(report.tomorrow)]),
	].join(' ');
	return [part(null, [first, second])];
}

function incidentSentence(one: ReportIncident): string {
	return say.incidentSentence({
		...one,
		kindWords: incidentKindWords(one.kind),
		until: stuckUntil(one),
	});
}

// Production.

/** Less of a delay is of no use to anybody: it is in the sum alone. */
const SHOWN_LOST_SECONDS = 15;
const MOST_LOST = 6;

function productionParts(report: NightReport): PagePart[] {
	const { timing, incidents } = report;
	const count = (states: readonly string[]): number =>
		report.songs.filter(({ state }) => states.includes(state)).length;
	const left = [
		...report.songs.filter(({ whyNotPlayed }) => whyNotPlayed !== null),
		...songsGoneAltogether(report),
	];
	const titles = (songs: readonly { readonly title: string }[]): readonly string[] =>
		songs.map(({ title }) => title);
	return [
		part(null, [
			ranSentence(report),
			say.curfewSentence(timing.curfew),
			say.songsSentence({
				played: count(['played']),
				cutShort: count(['cut-short']),
				skipped: titles(report.songs.filter(({ state }) => state === 'skipped').filter(wasOn)),
				added: titles(report.songs.filter(({ isAdded }) => isAdded).filter(wasOn)),
				moved: titles(report.songs.filter(({ isMoved }) => isMoved).filter(wasOn)),
				left: titles(left),
			}),
		]),
		part(
			say.PRODUCTION_PARTS.lost,
			[say.lostSum(timing.lost.reduce((sum, { seconds }) => sum + seconds, 0))],
			lostSentences(report),
		),
		part(
			say.PRODUCTION_PARTS.incidents,
			incidents.length === 0 ? [say.NO_INCIDENT] : [],
			incidents.map((one) => `${hoursMinutes(one.at)}: ${incidentSentence(one)}`),
		),
		part(
			say.PRODUCTION_PARTS.tomorrow,
			report.tomorrow.length === 0 ? [say.nothingTomorrow(hangsOtherwise(report))] : [],
			report.tomorrow,
		),
		...forNextParts({
			...report,
			// Production needs no telling what its own page says.
			forNext: report.forNext.filter(
				({ kind, name }) => kind === 'buy' || (kind === 'tell' && name !== report.title),
			),
		}),
	];
}

function wasOn({ runs }: NightReport['songs'][number]): boolean {
	return runs.length > 0;
}

/** Songs that were planned and are no more on the list, under whatever key. */
export function songsGoneAltogether({ songs, songsGone }: NightReport): NightReport['songsGone'] {
	return songsGone.filter((gone) => !songs.some(({ song }) => song === gone.song));
}

/** Instruments that stand otherwise than the show file gives them, as the technician's own list has them. */
function hangsOtherwise({ forNext }: NightReport): number {
	const carried = forNext.filter(({ kind }) => kind === 'carry-over');
	return new Set(carried.map(({ instrument }) => instrument)).size;
}

/** What to buy, whom to tell, how the next show finds things: a list each, where there is any. */
export function forNextParts({ forNext }: Pick<NightReport, 'forNext'>): readonly PagePart[] {
	const kinds = [
		['buy', SECTIONS.buy],
		['tell', SECTIONS.tell],
		['carry-over', SECTIONS.carry],
	] as const;
	return kinds.flatMap(([kind, title]) => {
		const items = forNext
			.filter((line) => line.kind === kind)
			.map((line) => lineWithWhy(lineWords(line), line.why));
		return items.length === 0 ? [] : [part(title, [], items)];
	});
}

/** Whether what is planned at this place of the list comes behind a song whose length nobody gave. */
export function isAboutFrom({ songs, songsGone }: NightReport, position: number): boolean {
	return [...songs, ...songsGone].some(
		({ planned }) => planned !== null && !planned.isLengthGiven && planned.position < position,
	);
}

/** Whether it ran to time. */
export function ranSentence(report: NightReport): string {
	const { began, ended, isOver, timing } = report;
	return say.ranWords({
		began: began && hoursMinutes(began),
		ended: ended && hoursMinutes(ended),
		plannedEnd:
			timing.plannedEnd &&
			plannedCell(hoursMinutes(timing.plannedEnd), isAboutFrom(report, Number.POSITIVE_INFINITY)),
		startLateSeconds: timing.startLateSeconds,
		endLateSeconds: timing.endLateSeconds,
		seconds: timing.seconds,
		plannedSeconds: timing.plannedSeconds,
		isOver,
	});
}

/** The parts that lost most, in order of time, each with why. */
export function lostSentences(report: NightReport): readonly string[] {
	return report.timing.lost
		.filter(({ seconds }) => seconds >= SHOWN_LOST_SECONDS)
		.sort((one, other) => other.seconds - one.seconds)
		.slice(0, MOST_LOST)
		.sort((one, other) => one.at.atMs - other.at.atMs)
		.map((one) => say.lostWords({ ...one, why: whyLost(one, report) }));
}

function whyLost(lost: LostTime, { incidents, handOvers }: NightReport): readonly string[] {
	return [
		...incidents
			.filter(({ id }) => lost.incidents.includes(id))
			.map(({ kind, instrument }) => say.lostByIncident(incidentKindWords(kind), instrument)),
		...lost.lateHandOvers.flatMap((place) => {
			const late = handOvers[place];
			return late === undefined ? [] : [say.lostByHandOver(late.player)];
		}),
	];
}

// The hire firm.

function hireParts(report: NightReport): PagePart[] {
	const firms = hireFirms(report);
	if (firms.length === 0) return [part(null, [say.NOTHING_HIRED])];
	return firms.map((firm) => {
		const items = report.instruments.filter(({ hiredFrom }) => hiredFrom === firm);
		const broke = report.incidents.filter(({ instrumentId }) =>
			items.some(({ id }) => id === instrumentId),
		);
		return {
			title: firm,
			lines: broke.length === 0 ? [say.NOTHING_BROKE] : [],
			items: broke.map((one) => {
				const said = say.itemIncident({
					...one,
					kindWords: incidentKindWords(one.kind),
					until: stuckUntil(one),
				});
				return `${hoursMinutes(one.at)}: ${said}`;
			}),
			table: {
				names: say.HIRE_TABLE,
				rows: items.map((one) => [
					one.instrument,
					one.serial ?? '',
					one.owner ?? '',
					say.hoursCell(one.secondsInHands),
					conditionOf(one),
				]),
			},
		};
	});
}

function conditionOf({ stringsDown, faults, place, restrings }: ReportInstrument): string {
	return say.conditionWords({ stringsDown, faults, isOut: place === 'out', restrings });
}
