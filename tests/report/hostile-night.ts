// A night in which every text from outside is one that could break a form: one string for all of them.

import type { Entry } from '../../src/journal/entry.ts';
import { recordBeside } from '../../src/journal/new-record.ts';
import type { JournalRecord } from '../../src/journal/record.ts';
import type { ReportParts } from '../../src/report/night-report.ts';
import { nightSteps } from '../../src/report/night-steps.ts';
import type { Show } from '../../src/showfile/show.ts';
import { smallShow } from './small-show.ts';

const ZERO = Date.UTC(2026, 5, 12, 20);

/** Pieces that break tables, pages, terminals and lines, from the forms' own descriptions. */
export const PIECES: readonly string[] = [
	// Openings of a formula (OWASP, "CSV Injection"), and what separates and ends cells (RFC 4180).
	...['=1+1', '+1', '-1', '@SUM(A1)', '\t=1', '＝1', '"', '""', ',', ';', '\r\n', "'"],
	// Markdown (CommonMark, GFM) and HTML.
	...['| a | b |', '---', '# x', '> q', '1. x', '- [ ] x', '`', '``', '~~x~~', '**', '_', '\\'],
	...['<script>alert(1)</script>', '<img src=x onerror=y>', '&amp;', '&#60;', '<!--', ']]>'],
	...['[x](javascript:y)', '![x](y)', 'https://example.org', 'www.example.org', 'a@example.org'],
	...['</title>', '" onload="x', "' x='", '{{x}}'],
	// Names that every object has (ECMA-262, Object.prototype).
	...['valueOf', '__proto__', 'constructor'],
	// Escapes, right-to-left and what is not seen (Unicode, UAX #9).
	...['\u001b[31m', '\u001b]0;x\u0007', '\u0000', '\u202e', '\u2066', '\u200b', '\u0085', '\u2028'],
	...['שלום', 'مرحبا', 'e\u0301\u0301\u0301', '👩‍🚒', '\ud800', 'x'.repeat(400)],
];

/** The report's parts for a night in which all that people wrote is this text. */
export function hostileParts(text: string): ReportParts {
	const plain = smallShow();
	const show: Show = {
		...plain,
		title: text,
		venue: text,
		techs: [{ id: 'lou', name: text }],
		players: plain.players.map((one) => ({ ...one, name: text, plays: text })),
		instruments: plain.instruments.map((one) => ({
			...one,
			...{ name: text, serial: text, owner: text, hiredFrom: text },
			tuning: { ...one.tuning, name: text },
		})),
		songs: plain.songs.map((one) => ({
			...one,
			title: text,
			cues: one.cues.map((cue) => ({ ...cue, at: text })),
		})),
		boards: Object.fromEntries(
			Object.entries(plain.boards).map(([id, pedals]) => [
				id,
				pedals.map((pedal) => ({ ...pedal, name: text })),
			]),
		),
		packs: [{ id: 'P1', name: text, channel: text }],
		startMinutes: 1200,
		curfewMinutes: 1290,
	};
	return {
		show,
		night: 'hostile',
		isRehearsal: false,
		...nightSteps(show, hostileRecords(text)),
		plannedZeroMs: ZERO,
		dayOffsetMinutes: 0,
		damage: [text],
		remarks: { night: text, incidents: { 'test:4': text }, signed: text },
	};
}

function hostileRecords(text: string): JournalRecord<Entry>[] {
	const night: readonly (readonly [number, ...object[]])[] = [
		[-60, { k: 'made-ready', instrument: 'A1' }],
		[
			0,
			{ k: 'song-began', item: '1' },
			{ k: 'handed-over', player: 'ash', instrument: 'A1', by: 'plan' },
			{ k: 'handed-over', player: 'cleo', instrument: 'C1', by: 'plan' },
		],
		[50, { k: 'memo-written', words: text }],
		[100, { k: 'string-broke', instrument: 'A1', player: 'ash' }],
		[
			115,
			{ k: 'handed-over', player: 'ash', instrument: 'S1', by: 'stand-in', incident: 'test:4' },
		],
		[130, { k: 'incident-described', incident: 'test:4', string: 3, words: text }],
		[140, { k: 'pedal-corrected', player: 'ash', pedal: 'drive', on: true }],
		[150, { k: 'incident-noted' }],
		[151, { k: 'incident-described', incident: 'test:8', kind: text }],
		[240, { k: 'song-ended', how: 'played' }],
		[250, { k: 'put-aside', instrument: 'A4', fault: text }],
		[260, { k: 'pack-suspected', player: 'ash', pack: 'P1' }],
		[300, { k: 'song-began', item: '2' }],
		[400, { k: 'song-ended', how: 'cut-short' }],
		[410, { k: 'show-ended' }],
	];
	return night.map(([seconds, ...entries], index) =>
		recordBeside({
			...{ s: index + 1, w: 'test', at: { wallMs: ZERO + seconds * 1000, upMs: seconds * 1000 } },
			e: entries.map((entry) => ({ at: ZERO + seconds * 1000, ...entry }) as Entry),
		}),
	);
}
