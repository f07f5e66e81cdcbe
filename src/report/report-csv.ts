// Incidents and hand-overs as tables for a spreadsheet. Whatever somebody typed must stay text there:
// every cell is quoted, and none can begin a formula.

import { incidentKindWords } from './entry-words.ts';
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
	const names = [
		'id',
		'mark',
		'clock',
		'position',
		'song',
		'kind',
		'player',
		'instrument',
		'string',
		'stand-in',
		'silence seconds',
		'words',
	];
	return csvText([
		names,
		...report.incidents.map((one) => [
			one.id,
			one.at.mark,
			one.at.clock,
			one.position,
			one.song ?? (one.before === null ? null : `before ${one.before}`),
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
	const names = [
		'mark',
		'clock',
		'song',
		'player',
		'instrument',
		'tuning',
		'capo',
		'by',
		'ready seconds',
		'stale',
		'corrected from',
	];
	return csvText([
		names,
		...report.handOvers.map((one) => [
			one.at.mark,
			one.at.clock,
			one.song,
			one.player,
			one.instrument ?? 'empty hands',
			one.tuning,
			one.capo,
			one.by,
			one.readyAgeSeconds,
			one.isStale ? 'yes' : 'no',
			one.correctedFrom,
		]),
	]);
}
