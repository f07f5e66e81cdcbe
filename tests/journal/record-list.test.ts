// Records are decoded when they are asked for, and come out the same whichever way they are.

import { expect, test } from 'vitest';
import { readJournal } from '../../src/journal/read-journal.ts';
import { RecordList } from '../../src/journal/record-list.ts';
import { sampleJournal, sampleRecord } from './sample-journal.ts';

function sampleList(count: number): RecordList {
	const { bytes, lines } = readJournal(sampleJournal(count));
	return new RecordList(lines.map((line) => ({ bytes, line })));
}

test('those after a number, and all of them, in one growing array', () => {
	const list = sampleList(6);
	expect(list.after(4)).toEqual([sampleRecord(5), sampleRecord(6)]);
	list.push(sampleRecord(7));
	expect(list.after(5)).toEqual([sampleRecord(6), sampleRecord(7)]);
	const all = list.all();
	expect(all).toEqual([1, 2, 3, 4, 5, 6, 7].map((seq) => sampleRecord(seq)));
	list.push(sampleRecord(8));
	expect(all).toHaveLength(8);
	expect(list.all()).toBe(all);
	expect(list.after(0)).toEqual(all);
});

test('for every number exactly those above it', () => {
	for (let seq = 0; seq <= 7; seq += 1) {
		const list = sampleList(7);
		expect(list.after(seq).map((record) => record.s)).toEqual(
			[1, 2, 3, 4, 5, 6, 7].filter((number) => number > seq),
		);
		expect(list.all()).toHaveLength(7);
	}
});
