// What tomorrow's technician reads: everything. First whether all went well, then what did not, then the tables, then
// what is to be done, then song by song.

import { minutesSeconds } from '../base/duration.ts';
import { MEMO } from '../words/entry-words.ts';
import * as say from '../words/report.ts';
import { curfewSentence, signedBy } from '../words/report-readers.ts';
import { incidentLine } from './incident-line.ts';
import type { NightReport, ReportLine } from './night-report.ts';
import {
	forNextParts,
	lostSentences,
	type PagePart,
	type PageTable,
	pageHead,
	type ReaderPage,
	ranSentence,
	songsGoneAltogether,
} from './reader-page.ts';
import { hoursMinutes } from './report-time.ts';

/** The whole night as a page. */
export function techPage(report: NightReport): ReaderPage {
	const { SECTIONS } = say;
	return {
		...pageHead(report),
		parts: [
			{ title: null, lines: opening(report), items: [], table: null },
			...[
				list(SECTIONS.incidents, report.incidents.map(incidentLine)),
				list(SECTIONS.wrong, wrongHolds(report)),
				list(SECTIONS.backups, onBackup(report)),
				list(SECTIONS.other, otherThanAsked(report)),
				table(SECTIONS.songs, songTable(report)),
				list(SECTIONS.lost, lostSentences(report)),
				table(SECTIONS.handOvers, handOverTable(report)),
				table(SECTIONS.work, workTable(report)),
				list(
					SECTIONS.cues,
					report.missedCues.map(({ position, song, cues }) =>
						say.cuesMissed(say.songLabel(position, song), cues),
					),
				),
				list(
					SECTIONS.packs,
					report.packs.map((one) => lineText({ at: one.at, words: say.packWords(one) })),
				),
				list(SECTIONS.tomorrow, report.tomorrow),
				...forNextParts(report),
				list(SECTIONS.strings, stringsBroken(report)),
				list(
					SECTIONS.memos,
					report.memos.map(({ at, words }) => lineText({ at, words: words.replace(MEMO, '') })),
				),
				list(SECTIONS.boards, report.boardsCorrected.map(lineText)),
				list(SECTIONS.away, report.gaps.map(lineText)),
				list(SECTIONS.record, report.damage),
				list(SECTIONS.before, report.beforeShow.map(lineText)),
				...songBySong(report),
				list(SECTIONS.cautions, report.cautions),
			].filter((part) => part !== null),
		],
	};
}

function list(title: string, items: readonly string[]): PagePart | null {
	return items.length === 0 ? null : { title, lines: [], items, table: null };
}

function table(title: string, rows: PageTable): PagePart | null {
	return rows.rows.length === 0 ? null : { title, lines: [], items: [], table: rows };
}

function opening(report: NightReport): readonly string[] {
	const night = say.nightLine({
		id: report.night,
		began: report.began && hoursMinutes(report.began),
		ended: report.ended && hoursMinutes(report.ended),
		isOver: report.isOver,
	});
	const { curfew } = report.timing;
	return [
		night,
		verdict(report),
		report.began === null ? null : ranSentence(report),
		curfew === null ? null : curfewSentence(curfew),
		report.takenBack === 0 ? null : say.takenBackWords(report.takenBack),
		report.remark,
		report.signed === null ? null : signedBy(report.signed),
	].filter((line) => line !== null);
}

function verdict(report: NightReport): string {
	if (report.isClean) return say.VERDICTS.clean;
	if (report.hasTrouble) return say.VERDICTS.look;
	if (report.isOver) return say.VERDICTS.nothingPlayed;
	return report.began ? say.VERDICTS.openSoFar : say.VERDICTS.openNothing;
}

function wrongHolds(report: NightReport): readonly string[] {
	return report.wrongHolds.map((one) => {
		const had = say.hadWords(one.player, one.held);
		return `${hoursMinutes(one.at)}: ${had} ${howLong(one.seconds)}; ${say.wantsWords(one.song, one.wanted)}`;
	});
}

function onBackup(report: NightReport): readonly string[] {
	return report.otherThanAsked.flatMap((one) =>
		one.backupFor === null ? [] : [`${playedText(one)}, ${say.backupForWords(one.backupFor)}`],
	);
}

function otherThanAsked(report: NightReport): readonly string[] {
	return report.otherThanAsked.flatMap((one) =>
		one.backupFor !== null || isToldAsWrong(report, one)
			? []
			: [`${playedText(one)}; ${say.fileAsks(one.asked)}`],
	);
}

/** The same hold is told once, where it was the wrong instrument. */
function isToldAsWrong(
	{ wrongHolds }: NightReport,
	{ song, player, played }: NightReport['otherThanAsked'][number],
): boolean {
	return wrongHolds.some(
		(one) => one.song === song && one.player === player && played.startsWith(one.held),
	);
}

function playedText(one: NightReport['otherThanAsked'][number]): string {
	const song = say.songLabel(one.position, one.song);
	const played = say.playedWords(song, one.player, one.played);
	return `${hoursMinutes(one.at)}: ${played} ${howLong(one.seconds)}`;
}

function howLong(seconds: number | null): string {
	return seconds === null ? say.TO_THE_END : say.lasted(seconds);
}

/** Every song, each time that it was on; last those that were planned and are on no list any more. */
export function songTable(report: NightReport): PageTable {
	const gone = songsGoneAltogether(report).map(({ title, planned }) => [
		say.NO_PLACE,
		title,
		say.SONG_STATES.dropped,
		...['', '', ''],
		say.plannedCell(minutesSeconds(planned.seconds), !planned.isLengthGiven),
		'',
		say.NOT_IN_FILE,
	]);
	const rows = report.songs.flatMap((song) => {
		const runs = song.runs.length === 0 ? [null] : song.runs;
		return runs.map((run, index) => [
			song.position === null ? say.NO_PLACE : String(song.position),
			song.title + (song.isEncore ? say.ENCORE : ''),
			say.SONG_STATES[
				index < runs.length - 1 ? (run?.how ?? song.state) : (song.whyNotPlayed ?? song.state)
			],
			run ? hoursMinutes(run.began) : '',
			run?.ended ? hoursMinutes(run.ended) : '',
			run?.seconds == null ? '' : minutesSeconds(run.seconds),
			plannedText(song),
			run?.gapSeconds == null ? '' : say.gapCell(run.gapSeconds, song.planned?.gapSeconds ?? null),
			say.listNote(song.isAdded, song.isMoved),
		]);
	});
	return { names: say.SONG_TABLE, rows: [...rows, ...gone] };
}

/** How long a song was to be: by the list, and one that was not on it by what the file says of it. */
function plannedText({ planned, lengthSeconds }: NightReport['songs'][number]): string {
	if (planned !== null) {
		return say.plannedCell(minutesSeconds(planned.seconds), !planned.isLengthGiven);
	}
	return lengthSeconds === null ? say.NO_PLACE : minutesSeconds(lengthSeconds);
}

function handOverTable(report: NightReport): PageTable {
	const rows = report.handOvers.map((one) => [
		hoursMinutes(one.at),
		one.song ?? '',
		one.player,
		one.instrument ?? say.EMPTY_HANDS,
		one.tuning ?? '',
		one.capo === null || one.capo === 0 ? '' : say.capoCell(one.capo),
		readyText(one),
		one.correctedFrom === null ? say.HOW_GIVEN[one.by] : say.correctedFrom(one.correctedFrom),
		say.tookCell(one),
	]);
	return { names: say.HAND_OVER_TABLE, rows };
}

/** A row for each piece of work; marks of the whole rack before the show are many and say nothing. */
function workTable(report: NightReport): PageTable {
	const beganMs = report.began?.atMs ?? Number.POSITIVE_INFINITY;
	const rows = report.work
		.filter(({ at, job }) => at.atMs >= beganMs || job !== 'touch-up')
		.map((one) => [
			hoursMinutes(one.at),
			doneWhere(one),
			one.instrument,
			say.workWords(one.job, one.tuning, one.capo),
			say.workTookCell(one.takenSeconds, one.plannedSeconds),
			one.usedFor ?? '',
			one.leftSeconds === null ? '' : minutesSeconds(one.leftSeconds),
			one.isLate === true ? (one.wantedFor === null ? say.LATE : say.lateFor(one.wantedFor)) : '',
		]);
	return { names: say.WORK_TABLE, rows };
}

/** In which song or gap it was noted as done; what it then served may be much later. */
function doneWhere({ doneIn, doneBefore }: NightReport['work'][number]): string {
	if (doneIn !== null) return say.inSong(say.songLabel(doneIn.position, doneIn.song));
	return doneBefore === null ? say.AFTER_LAST : say.beforeSong(doneBefore);
}

function readyText(one: NightReport['handOvers'][number]): string {
	if (one.instrument === null) return '';
	if (one.readyAgeSeconds === null) return say.NOT_READY;
	if (one.readyIn !== null) return say.readyInOther(one.readyIn);
	return say.readyCell(one.readyAgeSeconds, one.isStale);
}

function stringsBroken(report: NightReport): readonly string[] {
	return report.stringsBroken.map(({ instrument, count, strings }) =>
		say.stringsBroken(instrument, count, strings),
	);
}

function songBySong(report: NightReport): readonly (PagePart | null)[] {
	return report.songs.flatMap((song, place) => {
		// What happened before a song that was never on came after the last that was.
		const before =
			song.whyNotPlayed === null
				? undefined
				: report.songs.slice(0, place).findLast(({ runs }) => runs.length > 0);
		const title =
			before === undefined
				? say.songHeading(song.position, song.title)
				: say.afterHeading(before.title);
		// One that was passed over stands at its place in the list, though nothing was noted in it; what was not
		// reached is in the table alone.
		const { whyNotPlayed: why } = song;
		const own = say.songHeading(song.position, song.title);
		return [
			...(why === null || why === 'to-come' ? [] : [list(own, [say.SONG_STATES[why]])]),
			list(title, song.happened.map(lineText)),
		];
	});
}

function lineText(line: ReportLine): string {
	return `${hoursMinutes(line.at)}: ${line.words}`;
}
