// A record as it is begun: who writes it, when in the night's logical time, and after what.

import type { AnyEntry, ClockReading, JournalRecord } from './record.ts';
import { idOf, recordVersion } from './record.ts';
import { nextTime } from './record-order.ts';

export type NewRecord<E extends AnyEntry> = {
	readonly s: number;
	readonly w: string;
	readonly e: readonly E[];
	readonly at: ClockReading;
	/** The last record known, whoever wrote it; null for none. */
	readonly after: JournalRecord | null;
};

/** The next record of this writer. */
export function newRecord<E extends AnyEntry>({
	s,
	w,
	e,
	at,
	after,
}: NewRecord<E>): JournalRecord<E> {
	const isOwn = after !== null && after.id === idOf(w, s - 1);
	return {
		v: recordVersion,
		...{ s, w },
		h: nextTime(after?.h ?? null, at.wallMs),
		...(after === null || isOwn ? {} : { p: [after.id] }),
		id: idOf(w, s),
		...{ t: at.wallMs, m: at.upMs, e },
	};
}

/** The record of a header, or of a state kept whole: nothing follows from it. */
export function recordBeside<E extends AnyEntry>({
	s,
	w,
	e,
	at,
}: Omit<NewRecord<E>, 'after'>): JournalRecord<E> {
	return newRecord({ s, w, e, at, after: null });
}
