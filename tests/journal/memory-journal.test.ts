// The journal of a rehearsal reads back as the file of a real night would.

import { expect, test } from 'vitest';
import { decodeCheckpoint } from '../../src/journal/join-segments.ts';
import { memoryJournal } from '../../src/journal/memory-journal.ts';
import { readJournal } from '../../src/journal/read-journal.ts';
import { recordsOf, sampleHeader } from './sample-journal.ts';

test('what it takes is what its bytes hold, and another goes on from there', () => {
	const journal = memoryJournal(sampleHeader());
	for (let step = 1; step <= 5; step += 1) {
		journal.append([{ k: 'step-taken', step }], { wallMs: step, upMs: step });
	}
	const read = readJournal(journal.bytes());
	expect(recordsOf(read)).toEqual(journal.records());
	const next = memoryJournal(sampleHeader(), { records: recordsOf(read), checkpoint: null });
	expect(next.append([{ k: 'step-taken' }], { wallMs: 9, upMs: 9 }).s).toBe(6);
	expect(recordsOf(readJournal(next.bytes()))).toEqual(next.records());
	expect(next.status()).toMatchObject({ state: 'saved', isSaved: true, savedSeq: 6, lastSeq: 6 });
});

test('a state that was kept whole is in the bytes again, however often it is gone on with', () => {
	const journal = memoryJournal(sampleHeader());
	journal.keepStates(() => 'as it stands');
	for (let step = 1; step <= 101; step += 1) {
		journal.append([{ k: 'step-taken', step }], { wallMs: step, upMs: step });
	}
	const checkpoint = { seq: 100, state: 'as it stands' };
	const next = memoryJournal(sampleHeader(), { records: journal.records(), checkpoint });
	for (const one of [journal, next]) {
		const { bytes, lines } = readJournal(one.bytes());
		const kept = lines.filter(({ kind }) => kind === 'checkpoint');
		expect(kept.map((line) => decodeCheckpoint({ bytes, line }))).toEqual([checkpoint]);
	}
});
