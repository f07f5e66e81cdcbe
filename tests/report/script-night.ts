// A rehearsal script played in memory: the show, and what its journal then holds.

import { parseScript } from '../../src/cli/rehearsal/parse-script.ts';
import type { Entry } from '../../src/journal/entry.ts';
import { memoryJournal } from '../../src/journal/memory-journal.ts';
import { readJournal } from '../../src/journal/read-journal.ts';
import { decodeLine } from '../../src/journal/read-line.ts';
import type { JournalRecord } from '../../src/journal/record.ts';
import { openNight } from '../../src/night/night.ts';
import { type NightReport, nightReport, type ReportParts } from '../../src/report/night-report.ts';
import { nightSteps } from '../../src/report/night-steps.ts';
import type { Show } from '../../src/showfile/show.ts';
import { sampleHeader } from '../journal/sample-journal.ts';
import { loadShow } from '../scenarios/load-show.ts';

/** 12:00 UTC of some day: when the first song is meant to start. */
export const ZERO_MS = Date.UTC(2000, 0, 1, 12);

/** The shows of the scripts of tests/rehearsals, by the scripts' names. */
const SHOWS: Readonly<Record<string, string>> = {
	'theatre.txt': '../rehearsals/theatre.yaml',
	'toll-house.txt': '../rehearsals/toll-house.yaml',
};
const CLUB = '../../shows/club.yaml';

export type PlayedNight = {
	readonly show: Show;
	readonly records: readonly JournalRecord<Entry>[];
	/** The journal as it would stand on a disk, as the night `nightName` of tests/journal/sample-journal.ts. */
	readonly bytes: Buffer;
};

/** The night of a script of this name, read back from the journal's bytes; a kill in it passes. */
export function nightOf(name: string, script: string, zeroMs = ZERO_MS): PlayedNight {
	const show = loadShow(new URL(SHOWS[name] ?? CLUB, import.meta.url).pathname);
	return playedNight(show, script, zeroMs);
}

/** The night of a script at this show. */
export function playedNight(show: Show, script: string, zeroMs = ZERO_MS): PlayedNight {
	const reading = parseScript(script, 'script');
	if (!reading.ok) throw new Error('the script cannot be read');
	const journal = memoryJournal({ ...sampleHeader(), title: show.title, show });
	let atMs = reading.steps[0]?.atMs ?? 0;
	const night = openNight({
		show,
		journal,
		clock: { wallMs: () => zeroMs + atMs, upMs: () => zeroMs + atMs, bootId: '' },
		plannedZeroMs: zeroMs,
		dayOffsetMinutes: 0,
		isRehearsal: true,
	});
	for (const step of reading.steps) {
		atMs = step.atMs;
		night.tick();
		if (step.act.do === 'ready') night.submit({ do: 'make-all-ready' }, 'script');
		else if (step.act.do === 'press') night.press(step.act.key);
	}
	const bytes = journal.bytes();
	const records = readJournal(bytes)
		.lines.filter(({ kind }) => kind === 'record')
		.map((line) => decodeLine(bytes, line) as JournalRecord<Entry>);
	return { show, records, bytes };
}

/** What the report of a script's night is made from. */
function scriptParts(name: string, script: string): ReportParts {
	const { show, records } = nightOf(name, script);
	return {
		show,
		night: name,
		isRehearsal: true,
		...nightSteps(show, records),
		plannedZeroMs: ZERO_MS,
		dayOffsetMinutes: 0,
		damage: [],
	};
}

/** The report of a script's night. */
export function scriptReport(name: string, script: string): NightReport {
	return nightReport(scriptParts(name, script));
}
