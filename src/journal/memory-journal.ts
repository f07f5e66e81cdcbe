// A night's journal without a disk, for rehearsals and tests: the same lines, kept as bytes that can
// be read back as if they were a file.

import { checkpointEvery, fitEntries } from './limits.ts';
import { encodeLine, headerSeed, seedOf } from './line.ts';
import type { NightJournal } from './night-journal.ts';
import {
	type AnyEntry,
	type Checkpoint,
	type CheckpointEntry,
	type JournalRecord,
	type Moment,
	type NightHeader,
	recordVersion,
} from './record.ts';

/** A journal in memory, together with what its file would hold by now. */
export type MemoryJournal = NightJournal & { readonly bytes: () => Buffer };

/** What a journal in memory goes on after. */
export type Earlier = {
	readonly records: readonly JournalRecord[];
	readonly checkpoint: Checkpoint | null;
	/** States kept whole before that one, lowest number first; by default none. */
	readonly earlier?: readonly Checkpoint[];
};

/** A journal for the night with this header, going on after what there is; everything it takes counts as saved. */
export function memoryJournal(
	header: NightHeader,
	earlier: Earlier = { records: [], checkpoint: null },
): MemoryJournal {
	const seed = seedOf(header.journal);
	const records: JournalRecord[] = [...earlier.records];
	const begun = { v: recordVersion, s: 0, w: 'memory', t: 0, m: 0, e: [header] } as const;
	const lines = [
		encodeLine(begun, headerSeed),
		...earlier.records.map((record) => encodeLine(record, seed)),
	];
	let stateNow: (() => unknown) | null = null;
	let keptSeq = 0;
	const line = <E extends AnyEntry>(s: number, e: readonly E[], at: Moment): JournalRecord<E> => {
		const record = { v: recordVersion, s, w: 'memory', t: at.wallMs, m: at.upMs, e } as const;
		lines.push(encodeLine(record, seed));
		return record;
	};
	const keep = (s: number, state: unknown, at: Moment): void => {
		keptSeq = s;
		line<CheckpointEntry>(s, [{ k: 'checkpoint', state }], at);
	};
	const found = [...(earlier.earlier ?? []), ...(earlier.checkpoint ? [earlier.checkpoint] : [])];
	for (const { seq, state } of found) keep(seq, state, { wallMs: 0, upMs: 0 });
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
		checkpoint: earlier.checkpoint,
		checkpointBefore: (before) => found.findLast(({ seq }) => seq < before) ?? null,
		isWhole: ({ after, to }) =>
			records.filter(({ s }) => s > after && s <= to).length === to - after,
		keepStates: (state) => {
			stateNow = state;
		},
		append: <E extends AnyEntry>(entries: readonly E[], at: Moment) => {
			if (stateNow && lastSeq() - keptSeq >= checkpointEvery) {
				keep(lastSeq(), stateNow(), at);
			}
			const record = line(lastSeq() + 1, fitEntries(entries), at);
			records.push(record);
			return record;
		},
		records: () => records,
		recordsAfter: (seq) => records.slice(records.findLastIndex(({ s }) => s <= seq) + 1),
		status,
		tick: () => {},
		flushNow: status,
		close: async () => status(),
		bytes: () => Buffer.concat(lines),
	};
}
