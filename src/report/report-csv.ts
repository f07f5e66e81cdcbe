// A night's incidents, hand-overs, songs, work and strings as tables for a spreadsheet, or those of several nights in one.
// Whatever somebody typed must stay text there: every cell is quoted, and none can begin a formula.

import { incidentKindWords } from '../words/entry-words.ts';
import {
	beforeSong,
	EMPTY_HANDS,
	HAND_OVER_CELLS,
	INCIDENT_CELLS,
	NIGHT_CELLS,
	SONG_CELLS,
	SONG_STATES,
	STRING_CELLS,
	WORK_CELLS,
	yesNoUnknown,
	yesOrNo,
} from '../words/report.ts';
import type { NightReport } from './night-report.ts';
import { songsGoneAltogether } from './reader-page.ts';

type Cell = string | number | boolean | null;

// What makes a spreadsheet take a cell for a formula (OWASP, "CSV Injection"), its full-width forms
// too, behind spaces and quotes as well; and the mark itself, so that taking one off gives the text.
const RISKY = /^(?:'|[\s"]*[=+\-@\t\r\n\u{ff1d}\u{ff0b}\u{ff0d}\u{ff20}])/u;

/**
 * Rows as CSV (RFC 4180, lines end in CR LF), every cell quoted. A text that could begin a formula,
 * or that begins with `'`, gets one `'` before it: whoever reads the file takes one `'` off.
 */
export function csvText(rows: readonly (readonly Cell[])[]): string {
	return rows.map((row) => `${row.map(cellText).join(',')}\r\n`).join('');
}

function cellText(cell: Cell): string {
	const text = cell === null ? '' : String(cell);
	return `"${(RISKY.test(text) ? `'${text}` : text).replaceAll('"', '""')}"`;
}

type Table = {
	readonly names: readonly string[];
	readonly rows: (report: NightReport) => readonly (readonly Cell[])[];
};

/** A row for each incident. */
const INCIDENTS: Table = {
	names: INCIDENT_CELLS,
	rows: (report) =>
		report.incidents.map((one) => [
			one.id,
			one.at.mark,
			one.at.clock,
			one.position,
			one.song ?? (one.before === null ? null : beforeSong(one.before)),
			incidentKindWords(one.kind),
			one.player,
			one.instrument,
			one.string,
			one.standIn,
			one.silenceSeconds,
			one.words.join('; '),
			one.soundAt?.mark ?? null,
			one.later.backAt?.mark ?? null,
			one.later.outSeconds,
			one.remark,
		]),
};

/** A row for each hand-over. */
const HAND_OVERS: Table = {
	names: HAND_OVER_CELLS,
	rows: (report) =>
		report.handOvers.map((one) => [
			one.at.mark,
			one.at.clock,
			one.song,
			one.player,
			one.instrument ?? EMPTY_HANDS,
			one.tuning,
			one.capo,
			one.by,
			one.readyAgeSeconds,
			yesOrNo(one.isStale),
			one.correctedFrom,
			one.wantedSeconds,
			one.takenSeconds,
			yesNoUnknown(one.isLate),
			one.noted,
			one.tech,
			one.readyIn,
		]),
};

/** A row for each time that a song was on, and for each that never was, those that the file lost last. */
const SONGS: Table = {
	names: SONG_CELLS,
	rows: (report) => [
		...report.songs.flatMap((song) =>
			(song.runs.length === 0 ? [null] : song.runs).map((run) => [
				song.position,
				song.title,
				yesOrNo(song.isEncore),
				SONG_STATES[run === null ? (song.whyNotPlayed ?? song.state) : (run.how ?? song.state)],
				song.planned?.position ?? null,
				song.planned?.began?.clock ?? null,
				song.planned?.startSeconds ?? null,
				song.planned?.seconds ?? null,
				song.planned?.gapSeconds ?? null,
				run?.began.mark ?? null,
				run?.began.clock ?? null,
				run?.ended?.mark ?? null,
				run?.ended?.clock ?? null,
				run?.seconds ?? null,
				run?.gapSeconds ?? null,
				yesOrNo(song.isAdded),
				yesOrNo(song.isMoved),
			]),
		),
		...songsGoneAltogether(report).map(({ title, planned }) => [
			...[null, title, null, SONG_STATES.dropped, planned.position],
			...[planned.began?.clock ?? null, planned.startSeconds, planned.seconds, planned.gapSeconds],
			...SONG_CELLS.slice(9).map(() => null),
		]),
	],
};

/** A row for each piece of work. */
const WORK: Table = {
	names: WORK_CELLS,
	rows: (report) =>
		report.work.map((one) => [
			one.at.mark,
			one.at.clock,
			one.instrument,
			one.job,
			one.tuning,
			one.capo,
			yesOrNo(one.isEarly),
			one.plannedSeconds,
			one.usedAt?.mark ?? null,
			one.usedFor,
			one.leftSeconds,
			yesNoUnknown(one.isLate),
			one.takenSeconds,
			one.doneIn?.song ?? null,
			one.doneBefore,
			one.wantedFor,
		]),
};

/** A row for each string that broke. */
const STRINGS: Table = {
	names: STRING_CELLS,
	rows: (report) =>
		report.incidents
			.filter(({ kind, instrument }) => kind === 'string-break' && instrument !== null)
			.map((one) => [
				one.at.mark,
				one.at.clock,
				one.song ?? (one.before === null ? null : beforeSong(one.before)),
				one.player,
				one.instrument,
				one.string,
				one.stringHours,
				one.standIn,
				one.silenceSeconds,
				one.later.backAt?.mark ?? null,
			]),
};

const TABLES = {
	incidents: INCIDENTS,
	'hand-overs': HAND_OVERS,
	songs: SONGS,
	work: WORK,
	strings: STRINGS,
} as const;

export type TableName = keyof typeof TABLES;

export const TABLE_NAMES = Object.keys(TABLES) as readonly TableName[];

/** A table of one night under a row of names. */
export function tableCsv(name: TableName, report: NightReport): string {
	const { names, rows } = TABLES[name];
	return csvText([names, ...rows(report)]);
}

export type NightOfTable = {
	readonly night: string;
	/** `2026-06-12`. */
	readonly day: string;
	readonly report: NightReport;
};

/** The same of several nights, each row behind its night. */
export function nightsTableCsv(name: TableName, nights: readonly NightOfTable[]): string {
	const { names, rows } = TABLES[name];
	return csvText([
		[...NIGHT_CELLS, ...names],
		...nights.flatMap(({ night, day, report }) =>
			rows(report).map((cells) => [night, day, ...cells]),
		),
	]);
}
