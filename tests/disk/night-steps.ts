// The night that tests keep, and the steps that they record in it.

import type { JournalRecord, NightSubject } from '../../src/journal/record.ts';

export const nightName = '2026-06-12-203000-quay-street-ab12';

export const subject: NightSubject = {
	boot: 'boot-1',
	title: 'Quay Street',
	showPath: '/shows/quay.yaml',
	showHash: 'abc',
	show: { title: 'Quay Street', songs: ['harbour', 'lantern'] },
	isRehearsal: false,
};

/** The entry that a test records as its n-th. */
export function stepEntry(step: number): {
	readonly k: string;
	readonly step: number;
	readonly words: string;
} {
	return { k: 'step-taken', step, words: 'Müller’s slot '.repeat((step % 4) + 1) };
}

/** The steps that a night's records hold, in order. */
export function stepsOf(records: readonly JournalRecord[]): number[] {
	return records.flatMap((record) =>
		record.e.flatMap((entry) => ('step' in entry ? [Number(entry.step)] : [])),
	);
}
