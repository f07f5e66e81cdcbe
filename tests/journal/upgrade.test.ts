// Records of older versions are taken through every step up to today's.

import { expect, test } from 'vitest';
import { readJournal } from '../../src/journal/read-journal.ts';
import { type UpgradeSteps, upgradeRecord } from '../../src/journal/upgrade.ts';
import { headerLine, recordLine, recordsOf, sampleRecord } from './sample-journal.ts';

test('a record of today stays as it is', () => {
	expect(upgradeRecord(sampleRecord(1))).toEqual(sampleRecord(1));
});

test('an older one takes every step from its own version on, in order', () => {
	const renamed = (from: string, to: string) => (record: Parameters<UpgradeSteps[number]>[0]) => ({
		...record,
		e: record.e.map((entry) => (entry.k === from ? { ...entry, k: to } : entry)),
	});
	const steps: UpgradeSteps = { 1: renamed('one', 'two'), 2: renamed('two', 'three') };
	const old = { ...sampleRecord(1), v: 1, e: [{ k: 'one' }, { k: 'other' }] };
	expect(upgradeRecord(old, steps, 3).e).toEqual([{ k: 'three' }, { k: 'other' }]);
	expect(upgradeRecord({ ...old, v: 2 }, steps, 3).e).toEqual([{ k: 'one' }, { k: 'other' }]);
});

test('what the first version told apart by numbers keeps them as its identities', () => {
	const old = { v: 1, s: 7, w: 'a', t: 5, m: 5, e: [{ k: 'taken-back', at: 5, of: 6 }] };
	expect(upgradeRecord(old)).toMatchObject({
		id: '7',
		h: [0, 7],
		e: [{ k: 'taken-back', at: 5, of: '6' }],
	});
	const broke = { ...old, e: [{ k: 'string-broke', at: 5, incident: 2 }] };
	expect(upgradeRecord(broke).e).toEqual([{ k: 'string-broke', at: 5, incident: '2' }]);
});

test('and keeps them where it is written anew', () => {
	const old = upgradeRecord({ v: 1, s: 7, w: 'a', t: 5, m: 5, e: [{ k: 'step' }] });
	const bytes = Buffer.concat([headerLine(), recordLine(old)]);
	expect(recordsOf(readJournal(bytes))).toEqual([old]);
});
