// The report of a night that was pressed through the real keys.

import { join } from 'node:path';
import { parseScript } from '../../src/cli/parse-script.ts';
import type { Entry } from '../../src/journal/entry.ts';
import { memoryJournal } from '../../src/journal/memory-journal.ts';
import { readJournal } from '../../src/journal/read-journal.ts';
import { decodeLine } from '../../src/journal/read-line.ts';
import type { JournalRecord } from '../../src/journal/record.ts';
import { openNight } from '../../src/night/night.ts';
import { type NightReport, nightReport } from '../../src/report/night-report.ts';
import { nightSteps } from '../../src/report/night-steps.ts';
import type { Show } from '../../src/showfile/show.ts';
import { sampleHeader } from '../journal/sample-journal.ts';
import { loadShow } from './load-show.ts';

/** 12:00 UTC of some day: the first song's start. */
const ZERO_MS = Date.UTC(2000, 0, 1, 12);

/** What is on record once the keys of a script were pressed at their times. */
export function pressedRecords(show: Show, script: string): readonly JournalRecord<Entry>[] {
	const reading = parseScript(script, 'script');
	if (!reading.ok) throw new Error('the script cannot be read');
	const journal = memoryJournal(sampleHeader());
	let atMs = reading.steps[0]?.atMs ?? 0;
	const night = openNight({
		show,
		journal,
		clock: { wallMs: () => ZERO_MS + atMs, upMs: () => ZERO_MS + atMs, bootId: '' },
		plannedZeroMs: ZERO_MS,
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
	return readJournal(bytes)
		.lines.filter(({ kind }) => kind === 'record')
		.map((line) => decodeLine(bytes, line) as JournalRecord<Entry>);
}

/** The keys of a script pressed at their times, and the report as it then stands. */
export function reportOf(showName: string, script: string): NightReport {
	const show = loadShow(join(import.meta.dirname, 'shows', `${showName}.yaml`));
	return nightReport({
		show,
		night: 'pressed',
		isRehearsal: true,
		...nightSteps(show, pressedRecords(show, script)),
		dayOffsetMinutes: 0,
		damage: [],
	});
}
