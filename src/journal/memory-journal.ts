// A night's journal without a disk, for rehearsals and tests: the same lines, kept as bytes that can
// be read back as if they were a file.

import { checkpointEvery, fitEntries } from './limits.ts';
import { encodeLine, headerSeed, seedOf } from './line.ts';
import { newRecord, recordBeside } from './new-record.ts';
import type { NightJournal } from './night-journal.ts';
import type {
	AnyEntry,
	Checkpoint,
	CheckpointEntry,
	ClockReading,
	JournalRecord,
	NightHeader,
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

const WRITER = 'memory';

/** A journal for the night with this header, going on after what there is; everything it takes counts as saved. */
export function memoryJournal(
	header: NightHeader,
	earlier: Earlier = { records: [], checkpoint: null },
): MemoryJournal {
	const seed = seedOf(header.journal);
	const records: JournalRecord[] = [...earlier.records];
	const began = { wallMs: 0, upMs: 0 };
	const begun = recordBeside({ s: 0, w: WRITER, e: [header], at: began });
	const lines = [
		encodeLine(begun, headerSeed),
		...earlier.records.map((record) => encodeLine(record, seed)),
	];
	let stateNow: (() => unknown) | null = null;
	let keptSeq = 0;
	const line = <E extends AnyEntry>(record: JournalRecord<E>): JournalRecord<E> => {
		lines.push(encodeLine(record, seed));
		return record;
	};
	const keep = (s: number, state: unknown, at: ClockReading): void => {
		keptSeq = s;
		const entry: CheckpointEntry = { k: 'checkpoint', state };
		line(recordBeside({ s, w: WRITER, e: [entry], at }));
	};
	const found = [...(earlier.earlier ?? []), ...(earlier.checkpoint ? [earlier.checkpoint] : [])];
	for (const { seq, state } of found) keep(seq, state, began);
	const lastSeq = () => records.at(-1)?.s ?? 0;
	const status = () =>
		({
			state: 'saved',
			isSaved: true,
			savedSeq: lastSeq(),
			lastSeq: lastSeq(),
			problem: null,
			elsewhere: null,
			wipedHome: null,
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
		append: <E extends AnyEntry>(entries: readonly E[], at: ClockReading) => {
			if (stateNow && lastSeq() - keptSeq >= checkpointEvery) {
				keep(lastSeq(), stateNow(), at);
			}
			const after = records.at(-1) ?? null;
			const record = line(
				newRecord({ s: lastSeq() + 1, w: WRITER, e: fitEntries(entries), at, after }),
			);
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
