// A night as steps: every entry that counts, with how things stood before and after. The report needs
// both sides of a hand-over, and the fold is the one that the live night uses.

import type { Entry } from '../journal/entry.ts';
import type { JournalRecord, RecordId } from '../journal/record.ts';
import { apply } from '../session/apply.ts';
import { openSession } from '../session/open-session.ts';
import type { Session, SongItem } from '../session/session.ts';
import { effectiveRecords, stepOfRecord } from '../session/timeline.ts';
import type { Show } from '../showfile/show.ts';

export type NightStep = {
	readonly entry: Entry;
	/** Its record. */
	readonly of: RecordId;
	readonly before: Session;
	readonly after: Session;
};

/** Entries that end a time in which the program or the machine was off and nobody could note anything. */
export const AWAY: ReadonlySet<Entry['k']> = new Set(['resumed', 'slept']);

/** The night's steps in order; what was taken back is left out. */
export function nightSteps(
	show: Show,
	records: readonly JournalRecord<Entry>[],
): {
	readonly opened: Session;
	readonly steps: readonly NightStep[];
	/** How many steps were taken back and stayed so. */
	readonly takenBack: number;
} {
	const opened = openSession(show);
	const steps: NightStep[] = [];
	let session = opened;
	let takenBack = 0;
	for (const { record, isTakenBack } of effectiveRecords(records)) {
		if (isTakenBack) {
			// What was told of a step is taken back with it, and is none of its own.
			if (stepOfRecord(record) === record.id) takenBack += 1;
			continue;
		}
		for (const entry of record.e) {
			if (entry.k === 'taken-back' || entry.k === 'put-back') continue;
			const before = session;
			session = apply(before, entry, record.id);
			steps.push({ entry, of: record.id, before, after: session });
		}
	}
	return { opened, steps, takenBack };
}

/** The steps with new strings, by instrument. */
export function restringsOf(
	steps: readonly NightStep[],
): ReadonlyMap<string, readonly NightStep[]> {
	const isRestring = ({ entry }: NightStep): boolean =>
		entry.k === 'made-ready' && entry.isRestrung === true;
	return Map.groupBy(steps.filter(isRestring), ({ entry }) =>
		'instrument' in entry ? (entry.instrument ?? '') : '',
	);
}

/** The song that was on or had just ended; null before the first. */
export function songAt(session: Session): SongItem | null {
	const item = session.list.find((one) => one.key === session.current);
	return item?.kind === 'song' ? item : null;
}
