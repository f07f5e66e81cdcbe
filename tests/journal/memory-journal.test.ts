// The journal of a rehearsal reads back as the file of a real night would.

import { expect, test } from 'vitest';
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
