// A night's journal without a disk, for rehearsals and tests: the same lines, kept as bytes that can
// be read back as if they were a file.

import { fitEntries } from './limits.ts';
import { encodeLine, headerSeed, seedOf } from './line.ts';
import type { NightJournal } from './night-journal.ts';
import { type AnyEntry, type JournalRecord, type NightHeader, recordVersion } from './record.ts';

/** A journal in memory, together with what its file would hold by now. */
export type MemoryJournal = NightJournal & { readonly bytes: () => Buffer };

/** A journal for the night with this header, going on after the `earlier` records; everything it takes counts as saved. */
export function memoryJournal(
	header: NightHeader,
	earlier: readonly JournalRecord[] = [],
): MemoryJournal {
	const seed = seedOf(header.journal);
	const records: JournalRecord[] = [...earlier];
	const begun = { v: recordVersion, s: 0, w: 'memory', t: 0, m: 0, e: [header] } as const;
	const lines = [
		encodeLine(begun, headerSeed),
		...earlier.map((record) => encodeLine(record, seed)),
	];
	const lastSeq = () => records.at(-1)?.s ?? 0;
	const status = () =>
		({
			state: 'saved',
			isSaved: true,
			savedSeq: lastSeq(),
			lastSeq: lastSeq(),
			problem: null,
			sinceUpMs: null,
			warnings: [],
		}) as const;
	return {
		id: header.journal,
		append: <E extends AnyEntry>(
			entries: readonly E[],
			{ wallMs, upMs }: { readonly wallMs: number; readonly upMs: number },
		) => {
			const s = lastSeq() + 1;
			const e = fitEntries(entries);
			const record: JournalRecord<E> = { v: recordVersion, s, w: 'memory', t: wallMs, m: upMs, e };
			records.push(record);
			lines.push(encodeLine(record, seed));
			return record;
		},
		records: () => records,
		status,
		tick: () => {},
		flushNow: status,
		close: async () => status(),
		bytes: () => Buffer.concat(lines),
	};
}
