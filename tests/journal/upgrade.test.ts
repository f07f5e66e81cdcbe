// Records of older versions are taken through every step up to today's.

import { expect, test } from 'vitest';
import { type UpgradeSteps, upgradeRecord } from '../../src/journal/upgrade.ts';
import { sampleRecord } from './sample-journal.ts';

test('a record of today stays as it is', () => {
	expect(upgradeRecord(sampleRecord(1))).toEqual(sampleRecord(1));
});

test('an older one takes every step from its own version on, in order', () => {
	const renamed = (from: string, to: string) => (record: Parameters<UpgradeSteps[number]>[0]) => ({
		...record,
		e: record.e.map((entry) => (entry.k === from ? { ...entry, k: to } : entry)),
	});
	const steps: UpgradeSteps = { 1: renamed('one', 'two'), 2: renamed('two', 'three') };
	const old = { ...sampleRecord(1), e: [{ k: 'one' }, { k: 'other' }] };
	expect(upgradeRecord(old, steps, 3).e).toEqual([{ k: 'three' }, { k: 'other' }]);
	expect(upgradeRecord({ ...old, v: 2 }, steps, 3).e).toEqual([{ k: 'one' }, { k: 'other' }]);
});
