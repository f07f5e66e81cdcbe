// A small journal of a night, line by line, for tests that damage it.

import { encodeLine, headerSeed, seedOf } from '../../src/journal/line.ts';
import { recordBeside } from '../../src/journal/new-record.ts';
import type { JournalRead } from '../../src/journal/read-journal.ts';
import { decodeLine } from '../../src/journal/read-line.ts';
import type { JournalRecord, NightHeader } from '../../src/journal/record.ts';

export const nightName = '2026-06-12-203000-quay-street-ab12';

/** A header of the night with this id. */
export function sampleHeader(journal: string = nightName): NightHeader {
	return {
		k: 'header',
		format: 'rackside-night/2',
		journal,
		boot: 'boot-1',
		title: 'Quay Street',
		showPath: '/shows/quay.yaml',
		showHash: 'abc',
		show: { title: 'Quay "Street"', songs: ['hår {"v":1'] },
		isRehearsal: false,
		from: 1,
	};
}

/** The line of a header, as it stands twice at the beginning of a night's file. */
export function headerLine(header: NightHeader = sampleHeader()): Buffer {
	const at = { wallMs: 1, upMs: 1 };
	return encodeLine(recordBeside({ s: 0, w: 'writer-1', e: [header], at }), headerSeed);
}

/** A record with texts that look like parts of a line. */
export function sampleRecord(s: number, w = 'writer-1'): JournalRecord {
	const words = `slot ${s} "{"v":1} é🎸 \\ 0badc0de {"v":1,"s":9} \n`;
	const entry = { k: 'memo-written', at: 1000 + s, words };
	const at = { wallMs: 1_781_289_000_000 + s, upMs: 5000.25 + s };
	return recordBeside({ s, w, e: [entry], at });
}

/** The line of a record in the night with this id. */
export function recordLine(record: JournalRecord, journal: string = nightName): Buffer {
	return encodeLine(record, seedOf(journal));
}

/** A night's file: its header twice, then records from 1 on. */
export function sampleJournal(count: number, journal: string = nightName): Buffer {
	const header = headerLine(sampleHeader(journal));
	const lines = Array.from({ length: count }, (_, index) =>
		recordLine(sampleRecord(index + 1), journal),
	);
	return Buffer.concat([header, header, ...lines]);
}

/** The records that were read, in the order of the file. */
export function recordsOf(read: JournalRead): JournalRecord[] {
	return read.lines
		.filter((line) => line.kind === 'record')
		.map((line) => decodeLine(read.bytes, line));
}

/** How many times random damage is tried. */
export const runs = Number(process.env.RACKSIDE_RUNS ?? 100);
