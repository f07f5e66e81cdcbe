// A night's report as a page to read and to send: first whether all went well, then what did not, then
// song by song, then what is to be done.

import { minutesSeconds } from '../base/duration.ts';
import { incidentKindWords } from './entry-words.ts';
import { markdownText as text } from './markdown-text.ts';
import type { NightReport, ReportLine, ReportSong } from './night-report.ts';
import type { ReportIncident, ReportMoment } from './report-incidents.ts';

const STATE_WORDS: Readonly<Record<ReportSong['state'], string>> = {
	played: 'played',
	'cut-short': 'cut short',
	skipped: 'skipped',
	dropped: 'dropped',
	on: 'on when the night was left',
	'to-come': 'not reached',
};

/** The whole page, every text from outside escaped, a newline at its end. */
export function reportMarkdown(report: NightReport): string {
	return `${[
		...heading(report),
		...section('Incidents', incidents(report)),
		...section('Wrong instrument in hands', wrongHolds(report)),
		...section('Played on a backup', onBackup(report)),
		...section('Played on something else than asked for', otherThanAsked(report)),
		...section('Songs', songTable(report)),
		...section('Hand-overs', handOverTable(report)),
		...section(
			'For tomorrow',
			report.tomorrow.map((one) => `- ${text(one)}`),
		),
		...section('Strings broken', stringsBroken(report)),
		...section('Memos', report.memos.map(bullet)),
		...section('Boards corrected', report.boardsCorrected.map(bullet)),
		...section('While the program was away', report.gaps.map(bullet)),
		...section(
			'The record of this night',
			report.damage.map((one) => `- ${text(one)}`),
		),
		...section('Before the show', report.beforeShow.map(bullet)),
		...songBySong(report),
		...section(
			'Cautions',
			report.cautions.map((one) => `- ${text(one)}`),
		),
	].join('\n')}\n`;
}

function heading(report: NightReport): string[] {
	const place = [report.venue, report.date].filter((part) => part !== null).map(text);
	const times = [
		report.began ? `began ${report.began.clock}` : 'no song was begun',
		...(report.ended ? [`ended ${report.ended.clock}`] : []),
		...(report.isOver ? [] : ['the night is still open']),
	];
	return [
		`# ${text(report.title)}${report.isRehearsal ? ' (rehearsal)' : ''}`,
		'',
		...(place.length > 0 ? [place.join(', '), ''] : []),
		`Night ${text(report.night)}: ${times.join(', ')}.`,
		'',
		verdict(report),
	];
}

function verdict(report: NightReport): string {
	if (report.isClean) return 'Clean show: nothing went wrong.';
	if (report.hasTrouble) return 'There is something to look at below.';
	if (report.isOver) return 'The show was ended, and nothing was played.';
	return report.began
		? 'The night is still open; nothing went wrong so far.'
		: 'The night is still open; nothing was played yet.';
}

function section(title: string, lines: readonly string[]): string[] {
	return lines.length === 0 ? [] : ['', `## ${title}`, '', ...lines];
}

function incidents(report: NightReport): string[] {
	return report.incidents.map((one) => {
		const parts = [
			incidentPlace(one),
			incidentKindWords(one.kind),
			one.player,
			one.instrument,
			one.string === null ? null : `string ${one.string}`,
			one.standIn === null ? null : `backup ${one.standIn}`,
			one.silenceSeconds === null ? null : `down for ${secondsText(one.silenceSeconds)}`,
			...one.words,
		];
		return `- ${momentText(one.at)}: ${parts
			.filter((part) => part !== null)
			.map(text)
			.join(', ')}`;
	});
}

function wrongHolds(report: NightReport): string[] {
	return report.wrongHolds.map((one) => {
		const long = one.seconds === null ? 'until the end' : `for ${secondsText(one.seconds)}`;
		return `- ${momentText(one.at)}: ${text(`${one.player} had ${one.held}`)} ${long}; ${text(`${one.song} wants ${one.wanted}`)}`;
	});
}

function onBackup(report: NightReport): string[] {
	return report.otherThanAsked.flatMap((one) => {
		if (one.backupFor === null) return [];
		return [`${playedText(one)}, ${text(`backup for ${one.backupFor}`)}`];
	});
}

function otherThanAsked(report: NightReport): string[] {
	return report.otherThanAsked.flatMap((one) => {
		if (one.backupFor !== null) return [];
		return [`${playedText(one)}; ${text(`the show file asks for ${one.asked}`)}`];
	});
}

function playedText(one: NightReport['otherThanAsked'][number]): string {
	const long = one.seconds === null ? 'to the end' : `for ${secondsText(one.seconds)}`;
	const song = one.position === null ? one.song : `song ${one.position} ${one.song}`;
	return `- ${momentText(one.at)}: ${text(`${song}: ${one.player} played ${one.played}`)} ${long}`;
}

/** The song that was on, or what it was before. */
function incidentPlace({ position, song, before }: ReportIncident): string {
	if (song !== null) return `song ${position} ${song}`;
	return before === null ? 'after the last song' : `before ${before}`;
}

function songTable(report: NightReport): string[] {
	const rows = report.songs.flatMap((song) => {
		const runs = song.runs.length === 0 ? [null] : song.runs;
		return runs.map((run, index) => [
			song.position === null ? '-' : String(song.position),
			text(song.title) + (song.isEncore ? ' (encore)' : ''),
			STATE_WORDS[index === runs.length - 1 ? song.state : (run?.how ?? song.state)],
			run ? momentText(run.began) : '',
			run?.ended ? momentText(run.ended) : '',
			run?.seconds == null ? '' : minutesSeconds(run.seconds),
		]);
	});
	return table(['#', 'Song', 'State', 'Began', 'Ended', 'Length'], rows);
}

function handOverTable(report: NightReport): string[] {
	const rows = report.handOvers.map((one) => [
		momentText(one.at),
		text(one.song ?? ''),
		text(one.player),
		text(one.instrument ?? 'empty hands'),
		text(one.tuning ?? ''),
		one.capo === null || one.capo === 0 ? '' : `capo ${one.capo}`,
		readyText(one),
		one.correctedFrom === null ? one.by : `corrected from ${text(one.correctedFrom)}`,
	]);
	return table(['When', 'For', 'Player', 'Instrument', 'Tuning', 'Capo', 'Ready', 'How'], rows);
}

function readyText(one: NightReport['handOvers'][number]): string {
	if (one.instrument === null) return '';
	if (one.readyAgeSeconds === null) return 'not ready';
	return `${one.isStale ? 'recheck, ' : ''}${minutesSeconds(one.readyAgeSeconds)} old`;
}

function stringsBroken(report: NightReport): string[] {
	return report.stringsBroken.map(({ instrument, count, strings }) => {
		const named = strings.length === 0 ? '' : ` (string ${strings.join(', ')})`;
		return `- ${text(instrument)}: ${count}${named}`;
	});
}

function songBySong(report: NightReport): string[] {
	return report.songs
		.filter((song) => song.happened.length > 0)
		.flatMap((song) => [
			'',
			song.position === null
				? `## Dropped: ${text(song.title)}`
				: `## Song ${song.position}: ${text(song.title)}`,
			'',
			...song.happened.map(bullet),
		]);
}

function bullet(line: ReportLine): string {
	return `- ${momentText(line.at)}: ${text(line.words)}`;
}

/** The mark on the show clock, which is what people remember a show by, then the clock on the wall. */
function momentText(at: ReportMoment): string {
	return at.mark === null ? at.clock : `${at.mark} (${at.clock})`;
}

function secondsText(seconds: number): string {
	return seconds < 60 ? `${Math.round(seconds)} s` : minutesSeconds(seconds);
}

function table(names: readonly string[], rows: readonly (readonly string[])[]): string[] {
	if (rows.length === 0) return [];
	const line = (cells: readonly string[]): string => `| ${cells.join(' | ')} |`;
	return [line(names), line(names.map(() => '---')), ...rows.map(line)];
}
