// The order of a night's records: of the set of them alone, whichever arrived first. What follows from
// another comes after it, since its logical time is later.

import type { AnyEntry, JournalRecord, LogicalTime } from './record.ts';

type Placed = Pick<JournalRecord, 'h' | 'w' | 's'>;

/** The records in their order. */
export function inOrder<E extends AnyEntry>(
	records: readonly JournalRecord<E>[],
): readonly JournalRecord<E>[] {
	const isInOrder = records.every((record, place) => {
		const before = records[place - 1];
		return before === undefined || compareRecords(before, record) <= 0;
	});
	return isInOrder ? records : records.toSorted(compareRecords);
}

/** By logical time, then writer, then number: no two records are the same in all three. */
function compareRecords(one: Placed, other: Placed): number {
	return (
		one.h[0] - other.h[0] ||
		one.h[1] - other.h[1] ||
		(one.w < other.w ? -1 : one.w > other.w ? 1 : one.s - other.s)
	);
}

/** The time of what is written next, after everything known so far. */
export function nextTime(last: LogicalTime | null, wallMs: number): LogicalTime {
	const now = Math.floor(wallMs);
	if (last === null || now > last[0]) return [now, 0];
	return [last[0], last[1] + 1];
}
