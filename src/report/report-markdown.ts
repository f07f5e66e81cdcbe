// A night's report as a page to read and to send: first whether all went well, then what did not, then
// song by song, then what is to be done.

import { minutesSeconds } from '../base/duration.ts';
import { incidentKindWords, MEMO } from '../words/entry-words.ts';
import * as say from '../words/report.ts';
import { curfewSentence, signedBy } from '../words/report-readers.ts';
import { markdownSection, markdownTable } from './markdown-blocks.ts';
import { markdownText as text } from './markdown-text.ts';
import type { NightReport, ReportLine } from './night-report.ts';
import { lostSentences, ranSentence } from './reader-page.ts';
import type { ReportIncident } from './report-incidents.ts';
import type { ReportTime } from './report-time.ts';

/** The whole page, every text from outside escaped, a newline at its end. */
export function reportMarkdown(report: NightReport): string {
	return `${[
		...heading(report),
		...markdownSection(say.SECTIONS.incidents, incidents(report)),
		...markdownSection(say.SECTIONS.wrong, wrongHolds(report)),
		...markdownSection(say.SECTIONS.backups, onBackup(report)),
		...markdownSection(say.SECTIONS.other, otherThanAsked(report)),
		...markdownSection(say.SECTIONS.songs, songTable(report)),
		...markdownSection(say.SECTIONS.lost, lostSentences(report).map(item)),
		...markdownSection(say.SECTIONS.handOvers, handOverTable(report)),
		...markdownSection(say.SECTIONS.work, workTable(report)),
		...markdownSection(
			say.SECTIONS.cues,
			report.missedCues.map(({ position, song, cues }) =>
				item(say.cuesMissed(say.songLabel(position, song), cues)),
			),
		),
		...markdownSection(
			say.SECTIONS.packs,
			report.packs.map((one) => bullet({ at: one.at, words: say.packWords(one) })),
		),
		...markdownSection(
			say.SECTIONS.tomorrow,
			report.tomorrow.map((one) => `- ${text(one)}`),
		),
		...markdownSection(say.SECTIONS.strings, stringsBroken(report)),
		...markdownSection(
			say.SECTIONS.memos,
			report.memos.map(({ at, words }) => bullet({ at, words: words.replace(MEMO, '') })),
		),
		...markdownSection(say.SECTIONS.boards, report.boardsCorrected.map(bullet)),
		...markdownSection(say.SECTIONS.away, report.gaps.map(bullet)),
		...markdownSection(
			say.SECTIONS.record,
			report.damage.map((one) => `- ${text(one)}`),
		),
		...markdownSection(say.SECTIONS.before, report.beforeShow.map(bullet)),
		...songBySong(report),
		...markdownSection(
			say.SECTIONS.cautions,
			report.cautions.map((one) => `- ${text(one)}`),
		),
	].join('\n')}\n`;
}

function heading(report: NightReport): string[] {
	const place = [report.venue, report.date].filter((part) => part !== null).map(text);
	return [
		`# ${text(report.title)}${report.isRehearsal ? say.REHEARSAL : ''}`,
		'',
		...(place.length > 0 ? [place.join(', '), ''] : []),
		say.nightLine({
			id: text(report.night),
			began: report.began && timeText(report.began),
			ended: report.ended && timeText(report.ended),
			isOver: report.isOver,
		}),
		'',
		verdict(report),
		...(report.began === null ? [] : ['', text(ranSentence(report))]),
		...(report.timing.curfew === null ? [] : ['', text(curfewSentence(report.timing.curfew))]),
		...(report.takenBack === 0 ? [] : ['', say.takenBackWords(report.takenBack)]),
		...(report.remark === null ? [] : ['', text(report.remark)]),
		...(report.signed === null ? [] : ['', text(signedBy(report.signed))]),
	];
}

function verdict(report: NightReport): string {
	if (report.isClean) return say.VERDICTS.clean;
	if (report.hasTrouble) return say.VERDICTS.look;
	if (report.isOver) return say.VERDICTS.nothingPlayed;
	return report.began ? say.VERDICTS.openSoFar : say.VERDICTS.openNothing;
}

function incidents(report: NightReport): string[] {
	return report.incidents.map((one) => {
		const parts = [
			incidentPlace(one),
			incidentKindWords(one.kind),
			one.player,
			one.instrument,
			one.string === null ? null : say.stringLabel(one.string),
			one.standIn === null ? null : say.backupLabel(one.standIn),
			one.silenceSeconds === null ? null : say.downFor(one.silenceSeconds),
			one.later.outSeconds === null ? null : say.backAfter(one.later.outSeconds),
			...one.words,
			one.remark,
		];
		return `- ${timeText(one.at)}: ${parts
			.filter((part) => part !== null)
			.map(text)
			.join(', ')}`;
	});
}

function wrongHolds(report: NightReport): string[] {
	return report.wrongHolds.map((one) => {
		const long = one.seconds === null ? say.TO_THE_END : say.lasted(one.seconds);
		return `- ${timeText(one.at)}: ${text(say.hadWords(one.player, one.held))} ${long}; ${text(say.wantsWords(one.song, one.wanted))}`;
	});
}

function onBackup(report: NightReport): string[] {
	return report.otherThanAsked.flatMap((one) => {
		if (one.backupFor === null) return [];
		return [`${playedText(one)}, ${text(say.backupForWords(one.backupFor))}`];
	});
}

function otherThanAsked(report: NightReport): string[] {
	return report.otherThanAsked.flatMap((one) => {
		if (one.backupFor !== null || isToldAsWrong(report, one)) return [];
		return [`${playedText(one)}; ${text(say.fileAsks(one.asked))}`];
	});
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
	const long = one.seconds === null ? say.TO_THE_END : say.lasted(one.seconds);
	const song = say.songLabel(one.position, one.song);
	return `- ${timeText(one.at)}: ${text(say.playedWords(song, one.player, one.played))} ${long}`;
}

/** The song that was on, or what it was before. */
function incidentPlace({ position, song, before }: ReportIncident): string {
	if (song !== null) return say.songLabel(position, song);
	return before === null ? say.AFTER_LAST : say.beforeSong(before);
}

function songTable(report: NightReport): string[] {
	const rows = report.songs.flatMap((song) => {
		const runs = song.runs.length === 0 ? [null] : song.runs;
		return runs.map((run, index) => [
			song.position === null ? '-' : String(song.position),
			text(song.title) + (song.isEncore ? say.ENCORE : ''),
			say.SONG_STATES[
				index < runs.length - 1 ? (run?.how ?? song.state) : (song.whyNotPlayed ?? song.state)
			],
			run ? timeText(run.began) : '',
			run?.ended ? timeText(run.ended) : '',
			run?.seconds == null ? '' : minutesSeconds(run.seconds),
			song.planned === null ? '' : minutesSeconds(song.planned.seconds),
			run?.gapSeconds == null ? '' : say.gapCell(run.gapSeconds, song.planned?.gapSeconds ?? null),
			say.listNote(song.isAdded, song.isMoved),
		]);
	});
	return markdownTable(say.SONG_TABLE, rows);
}

function handOverTable(report: NightReport): string[] {
	const rows = report.handOvers.map((one) => [
		timeText(one.at),
		text(one.song ?? ''),
		text(one.player),
		text(one.instrument ?? say.EMPTY_HANDS),
		text(one.tuning ?? ''),
		one.capo === null || one.capo === 0 ? '' : say.capoCell(one.capo),
		readyText(one),
		one.correctedFrom === null ? say.HOW_GIVEN[one.by] : say.correctedFrom(text(one.correctedFrom)),
		say.tookCell(one),
	]);
	return markdownTable(say.HAND_OVER_TABLE, rows);
}

/** A row for each piece of work; marks of the whole rack before the show are many and say nothing. */
function workTable(report: NightReport): string[] {
	const beganMs = report.began?.atMs ?? Infinity;
	const rows = report.work
		.filter(({ at, job }) => at.atMs >= beganMs || job !== 'touch-up')
		.map((one) => [
			timeText(one.at),
			text(one.instrument),
			text(say.workWords(one.job, one.tuning, one.capo)),
			text(one.usedFor ?? ''),
			one.leftSeconds === null ? '' : minutesSeconds(one.leftSeconds),
			one.isLate === true ? say.LATE : '',
		]);
	return markdownTable(say.WORK_TABLE, rows);
}

function item(words: string): string {
	return `- ${text(words)}`;
}

function readyText(one: NightReport['handOvers'][number]): string {
	if (one.instrument === null) return '';
	if (one.readyAgeSeconds === null) return say.NOT_READY;
	return say.readyCell(one.readyAgeSeconds, one.isStale);
}

function stringsBroken(report: NightReport): string[] {
	return report.stringsBroken.map(
		({ instrument, count, strings }) => `- ${say.stringsBroken(text(instrument), count, strings)}`,
	);
}

function songBySong(report: NightReport): string[] {
	return report.songs.flatMap((song, place) => {
		if (song.happened.length === 0) return [];
		// What happened before a song that was never on came after the last that was.
		const before =
			song.whyNotPlayed === null
				? undefined
				: report.songs.slice(0, place).findLast(({ runs }) => runs.length > 0);
		const heading =
			before === undefined
				? say.songHeading(song.position, text(song.title))
				: say.afterHeading(text(before.title));
		return ['', `## ${heading}`, '', ...song.happened.map(bullet)];
	});
}

function bullet(line: ReportLine): string {
	return `- ${timeText(line.at)}: ${text(line.words)}`;
}

/** The clock on the wall, without its seconds. */
function timeText({ clock }: ReportTime): string {
	return clock.replace(/^(\d+:\d\d):\d\d$/, '$1');
}
