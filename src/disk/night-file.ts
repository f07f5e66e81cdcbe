// A night's journal on a disk: its records and the states that are kept whole, made into lines. What becomes of
// the lines is the keeper's.

import { decodeCheckpoint } from '../journal/join-segments.ts';
import { checkpointEvery, fitEntries, longLimitBytes } from '../journal/limits.ts';
import { encodeLine, seedOf } from '../journal/line.ts';
import { newRecord, recordBeside } from '../journal/new-record.ts';
import type { LeftAs, NightJournal, SaveStatus } from '../journal/night-journal.ts';
import type {
	AnyEntry,
	Checkpoint,
	CheckpointEntry,
	ClockReading,
	JournalRecord,
} from '../journal/record.ts';
import { LineKeeper } from './line-keeper.ts';
import type { NightServices, NightStart } from './night-services.ts';

/** A night kept on a disk; see `NightJournal` for what its functions promise. */
export class NightFile implements NightJournal {
	readonly id: string;
	readonly checkpoint: Checkpoint | null;
	readonly #writer: string;
	readonly #records: NightStart['records'];
	readonly #checkpoints: NightStart['checkpoints'];
	readonly #seed: number;
	readonly #lines: LineKeeper;
	#lastSeq: number;
	#checkpointSeq: number;
	#stateNow: (() => unknown) | null = null;

	constructor(services: NightServices, start: NightStart) {
		this.id = start.id;
		this.#writer = services.writer;
		this.#records = start.records;
		this.#seed = seedOf(start.id);
		this.#lastSeq = start.lastSeq;
		this.checkpoint = start.checkpoint;
		this.#checkpoints = start.checkpoints;
		this.#checkpointSeq = start.checkpoint?.seq ?? 0;
		const onAnew = () => {
			// The new file has none; the next record is preceded by one.
			if (this.#lastSeq > 0) this.#checkpointSeq = this.#lastSeq - checkpointEvery;
		};
		this.#lines = new LineKeeper(services, { start, seed: this.#seed, onAnew });
	}

	append<E extends AnyEntry>(entries: readonly E[], at: ClockReading): JournalRecord<E> {
		if (this.#lastSeq - this.#checkpointSeq >= checkpointEvery) this.#addCheckpoint(at);
		this.#lastSeq += 1;
		const record = newRecord({
			...{ s: this.#lastSeq, w: this.#writer, at },
			e: fitEntries(entries),
			after: this.#records.last(),
		});
		this.#records.push(record);
		this.#lines.add({ seq: record.s, bytes: encodeLine(record, this.#seed) }, at.upMs);
		return record;
	}

	checkpointBefore(seq: number): Checkpoint | null {
		const stored = this.#checkpoints.findLast(({ line }) => line.seq < seq);
		return stored ? decodeCheckpoint(stored) : null;
	}

	isWhole(range: { readonly after: number; readonly to: number }): boolean {
		return this.#records.isWhole(range);
	}

	records(): readonly JournalRecord[] {
		return this.#records.all();
	}

	recordsAfter(seq: number): readonly JournalRecord[] {
		return this.#records.after(seq);
	}

	keepStates(state: () => unknown): void {
		this.#stateNow = state;
	}

	status(): SaveStatus {
		return this.#lines.status();
	}

	tick(upMs: number): void {
		this.#lines.tick(upMs);
	}

	flushNow(): SaveStatus {
		return this.#lines.flushNow();
	}

	close(limitMs?: number, as?: LeftAs): Promise<SaveStatus> {
		return this.#lines.close(limitMs, as);
	}

	#addCheckpoint(at: ClockReading): void {
		if (!this.#stateNow || this.#lines.hasWaiting) return;
		this.#checkpointSeq = this.#lastSeq;
		const entry: CheckpointEntry = { k: 'checkpoint', state: this.#stateNow() };
		const bytes = encodeLine(
			recordBeside({ s: this.#lastSeq, w: this.#writer, e: [entry], at }),
			this.#seed,
		);
		// Without one, taking the night up again takes a little longer.
		if (bytes.length > longLimitBytes) return;
		this.#lines.addShortCut({ seq: this.#lastSeq, bytes });
	}
}
