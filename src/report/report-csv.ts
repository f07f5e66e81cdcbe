// Incidents and hand-overs as tables for a spreadsheet. Whatever somebody typed must stay text there:
// every cell is quoted, and none can begin a formula.

import { incidentKindWords } from '../words/entry-words.ts';
import {
	beforeSong,
	EMPTY_HANDS,
	HAND_OVER_CELLS,
	INCIDENT_CELLS,
	yesOrNo,
} from '../words/report.ts';
import type { NightReport } from './night-report.ts';

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

/** A row for each incident under a row of names. */
export function incidentsCsv(report: NightReport): string {
	return csvText([
		INCIDENT_CELLS,
		...report.incidents.map((one) => [
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
		]),
	]);
}

/** A row for each hand-over under a row of names. */
export function handOversCsv(report: NightReport): string {
	return csvText([
		HAND_OVER_CELLS,
		...report.handOvers.map((one) => [
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
		]),
	]);
}
