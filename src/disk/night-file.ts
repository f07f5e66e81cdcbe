// A night's journal on a disk. Every record goes to the system at once and to the disk as soon as it
// confirms; whatever the disk does, the night goes on in memory and nothing is thrown at the caller.

import { fitEntries, longLimitBytes } from '../journal/limits.ts';
import { encodeLine, seedOf } from '../journal/line.ts';
import type { NightJournal, SaveStatus } from '../journal/night-journal.ts';
import {
	type AnyEntry,
	type CheckpointEntry,
	type JournalRecord,
	type Moment,
	recordVersion,
} from '../journal/record.ts';
import { Backlog } from './backlog.ts';
import { diskErrorCode } from './disk.ts';
import { diskTrouble } from './disk-trouble.ts';
import type { NightServices, NightStart } from './night-services.ts';
import { type SaveFault, saveStatus } from './save-status.ts';
import type { Segment, WriteFault } from './segment.ts';
import { headerBytes, startSegment } from './segment-starter.ts';

const checkpointEvery = 100;
const retryMs = 1000;
const longestRetryMs = 60_000;
const lookEveryMs = 2000;
const closingMs = 500;
/** Errors after which the same file is still the right one to write into. */
const roomTroubles = new Set(['ENOSPC', 'EDQUOT']);

/** A night kept on a disk; see `NightJournal` for what its functions promise. */
export class NightFile implements NightJournal {
	readonly id: string;
	readonly #services: NightServices;
	readonly #header: NightStart['header'];
	readonly #records: NightStart['records'];
	readonly #seed: number;
	readonly #backlog = new Backlog();
	readonly #warnings: string[] = [];
	#segment: Segment | null;
	#nextNumber: number;
	#lastSeq: number;
	#checkpointSeq: number;
	#writtenSeq: number;
	#savedSeq = 0;
	/** Records from before this opening are in the file, but nothing confirms yet that they would outlive a power cut. */
	#isPastUnconfirmed = true;
	#fault: SaveFault | null = null;
	#retryAtUpMs = 0;
	#syncFaults = 0;
	#syncAtUpMs = 0;
	#sync: Promise<void> | null = null;
	#syncingSinceUpMs: number | null = null;
	#lookedAtUpMs: number;
	#upMs: number;
	#hasFile: boolean;
	#isClosed = false;
	#shown = '';

	/** A night whose file is `start.segment`, or is yet to be begun when that is null. */
	constructor(services: NightServices, start: NightStart) {
		this.#services = services;
		this.id = start.id;
		this.#header = start.header;
		this.#records = start.records;
		this.#seed = seedOf(start.id);
		this.#segment = start.segment;
		this.#hasFile = start.segment !== null;
		this.#nextNumber = start.nextNumber;
		this.#lastSeq = start.lastSeq;
		this.#writtenSeq = start.lastSeq;
		this.#checkpointSeq = start.checkpointSeq;
		this.#upMs = services.upMs;
		this.#lookedAtUpMs = services.upMs;
		if (start.segment === null) this.#leave('all');
		if (start.firstBytes) {
			this.#backlog.addForThisFile({ seq: start.lastSeq, bytes: start.firstBytes });
		}
		if (start.code === null) this.#write();
		else this.#setFault(start.code);
	}

	append<E extends AnyEntry>(entries: readonly E[], at: Moment): JournalRecord<E> {
		this.#upMs = at.upMs;
		if (this.#lastSeq - this.#checkpointSeq >= checkpointEvery) this.#addCheckpoint(at);
		this.#lastSeq += 1;
		const record = this.#record(this.#lastSeq, fitEntries(entries), at);
		this.#records.push(record);
		this.#backlog.add({ seq: record.s, bytes: encodeLine(record, this.#seed) });
		if (this.#fault === null || this.#segment || at.upMs >= this.#retryAtUpMs) this.#write();
		this.#show();
		return record;
	}

	records(): readonly JournalRecord[] {
		return this.#records.all();
	}

	status(): SaveStatus {
		return saveStatus({
			savedSeq: this.#savedSeq,
			lastSeq: this.#lastSeq,
			fault: this.#fault,
			syncingSinceUpMs: this.#syncingSinceUpMs,
			upMs: this.#upMs,
			hasFile: this.#hasFile,
			isPlaced: this.#segment?.isPlaced === true && !this.#isPastUnconfirmed,
			warnings: [...this.#warnings],
			folder: this.#services.folders[0] ?? '',
		});
	}

	tick(upMs: number): void {
		if (this.#isClosed) return;
		this.#upMs = upMs;
		const isBehind = this.#segment === null || this.#backlog.next !== undefined;
		if (isBehind && upMs >= this.#retryAtUpMs) this.#write();
		if (upMs - this.#lookedAtUpMs >= lookEveryMs) this.#look();
		this.#startSync();
		this.#show();
	}

	flushNow(): SaveStatus {
		this.#write();
		this.#show();
		return this.status();
	}

	async close(): Promise<SaveStatus> {
		if (this.#isClosed) return this.status();
		this.flushNow();
		let isLate = false;
		const deadline = this.#services.wait(closingMs).then(() => {
			isLate = true;
		});
		while (this.#sync && !isLate) await Promise.race([this.#sync, deadline]);
		this.#isClosed = true;
		// A file that the disk still works on is closed when it has done so.
		if (this.#sync === null) this.#segment?.close();
		this.#services.release?.();
		return this.status();
	}

	#record<E extends AnyEntry>(s: number, e: readonly E[], at: Moment): JournalRecord<E> {
		return { v: recordVersion, s, w: this.#services.writer, t: at.wallMs, m: at.upMs, e };
	}

	#addCheckpoint(at: Moment): void {
		if (!this.#services.checkpoint || this.#backlog.next) return;
		this.#checkpointSeq = this.#lastSeq;
		const entry: CheckpointEntry = { k: 'checkpoint', state: this.#services.checkpoint() };
		const bytes = encodeLine(this.#record(this.#lastSeq, [entry], at), this.#seed);
		// Without one, taking the night up again takes a little longer.
		if (bytes.length <= longLimitBytes) this.#backlog.add({ seq: this.#lastSeq, bytes });
	}

	/** Brings everything into a file; what cannot be is tried again in a second. */
	#write(): void {
		if (this.#isClosed) return;
		// One file may turn out to be unusable, and then the one begun in its place.
		for (let attempt = 0; attempt < 2; attempt += 1) {
			const fault = this.#writeAll();
			if (fault === null) {
				if (this.#syncFaults === 0) this.#fault = null;
				this.#startSync();
				return;
			}
			this.#setFault(fault.code);
			if (this.#segment === null || (fault.isUsable && roomTroubles.has(fault.code))) return;
			this.#warn(
				`The night's file ${this.#segment.path} could not be written any more, ${diskTrouble(fault.code)}; the night goes on in a new one.`,
			);
			// Else a broken disk would fill with files that hold nothing.
			if (this.#segment.isBare && this.#segment.number > 1) this.#segment.remove();
			this.#leave('unconfirmed');
		}
	}

	#writeAll(): WriteFault | null {
		const begun = this.#segment ?? this.#begin();
		if ('code' in begun) return begun;
		for (let chunk = this.#backlog.next; chunk; chunk = this.#backlog.next) {
			const fault = begun.write(chunk.bytes);
			if (fault) return fault;
			this.#backlog.markWritten();
			this.#writtenSeq = Math.max(this.#writtenSeq, chunk.seq);
		}
		return null;
	}

	#begin(): Segment | WriteFault {
		const [home, ...others] = this.#services.folders;
		const own = home === undefined ? [] : [home];
		// Where a disk has just failed, any other one is better.
		const isElsewhereBetter = this.#fault !== null && !roomTroubles.has(this.#fault.code);
		const header = this.#header && headerBytes(this.#header, this.#writtenSeq + 1);
		const begun = startSegment(this.#services.disk, {
			id: this.id,
			number: this.#nextNumber,
			folders: isElsewhereBetter ? [...others, ...own] : [...own, ...others],
			headerBytes: header ?? new Uint8Array(0),
		});
		if ('code' in begun) return { code: begun.code, isUsable: true };
		this.#segment = begun.segment;
		this.#nextNumber = begun.segment.number + 1;
		this.#hasFile = true;
		return begun.segment;
	}

	/** Gives the file up; what it held and nothing confirms goes into the next one. */
	#leave(what: 'unconfirmed' | 'all'): void {
		if (this.#sync === null) this.#segment?.close();
		this.#segment = null;
		if (what === 'all' || this.#isPastUnconfirmed) {
			this.#backlog.startFrom(this.#records.all(), this.#seed);
			this.#savedSeq = 0;
			this.#isPastUnconfirmed = false;
			// The new file has none; the next record is preceded by one.
			if (this.#lastSeq > 0) this.#checkpointSeq = this.#lastSeq - checkpointEvery;
		} else this.#backlog.startOver();
		this.#writtenSeq = this.#savedSeq;
	}

	#startSync(): void {
		const segment = this.#segment;
		if (segment === null || this.#sync || this.#isClosed || this.#upMs < this.#syncAtUpMs) return;
		const isDone = segment.isPlaced && !this.#isPastUnconfirmed;
		if (isDone && this.#writtenSeq <= this.#savedSeq) return;
		const upTo = this.#writtenSeq;
		this.#syncingSinceUpMs = this.#upMs;
		this.#sync = segment.sync().then(
			() => this.#onSynced(segment, upTo),
			(error) => this.#onSyncFault(segment, diskErrorCode(error)),
		);
	}

	#onSynced(segment: Segment, upTo: number): void {
		this.#endSync(segment);
		// "Saved" is said only of a file that is still where it should be.
		if (segment === this.#segment && this.#look()) {
			this.#savedSeq = Math.max(this.#savedSeq, upTo);
			this.#backlog.markSynced(upTo);
			this.#isPastUnconfirmed = false;
			this.#syncFaults = 0;
			if (this.#backlog.next === undefined) this.#fault = null;
		}
		this.#startSync();
		this.#show();
	}

	/** After one failed confirmation a system may report success for bytes that it has dropped, so that file is never trusted again. */
	#onSyncFault(segment: Segment, code: string): void {
		this.#endSync(segment);
		if (segment === this.#segment) {
			this.#setFault(code);
			this.#leave('unconfirmed');
			this.#warn(
				`The disk did not confirm what was written, ${diskTrouble(code)}; the night goes on in a new file.`,
			);
			// Every further attempt leaves one more file behind.
			const pauseMs = Math.min(retryMs * 2 ** this.#syncFaults, longestRetryMs);
			this.#syncAtUpMs = this.#syncFaults === 0 ? 0 : this.#upMs + pauseMs;
			this.#syncFaults += 1;
			this.#write();
		}
		this.#show();
	}

	#endSync(segment: Segment): void {
		this.#sync = null;
		this.#syncingSinceUpMs = null;
		if (segment !== this.#segment || this.#isClosed) segment.close();
	}

	/** Looks whether the file is as we left it; false when the night had to leave it. */
	#look(): boolean {
		this.#lookedAtUpMs = this.#upMs;
		const segment = this.#segment;
		if (segment === null || this.#isClosed) return segment !== null;
		try {
			const change = segment.change();
			if (change === null) return true;
			if (change === 'grown') {
				this.#warnOfWriter(segment.takeForeignBytes());
				return true;
			}
			const what = change === 'gone' ? 'moved or removed' : 'cut short';
			this.#warn(
				`The night's file ${segment.path} was ${what} by somebody else; the whole night is written anew beside it.`,
			);
		} catch (error) {
			// A disk that cannot even be asked shows at the next write.
			diskErrorCode(error);
			return true;
		}
		this.#leave('all');
		this.#write();
		return false;
	}

	#warnOfWriter(bytes: Uint8Array): void {
		const writer = /"w":"([a-z0-9-]{1,64})"/i.exec(Buffer.from(bytes).toString('latin1'))?.[1];
		this.#warn(
			writer === undefined
				? "Something else wrote into this night's file; its records are still whole."
				: `Another copy of the program (${writer}) is writing into this night too: end one of them.`,
		);
	}

	#warn(sentence: string): void {
		if (!this.#warnings.includes(sentence)) this.#warnings.push(sentence);
	}

	#setFault(code: string): void {
		this.#fault = { code, sinceUpMs: this.#fault?.sinceUpMs ?? this.#upMs };
		this.#retryAtUpMs = this.#upMs + retryMs;
	}

	#show(): void {
		const status = this.status();
		const shown = JSON.stringify(status);
		if (shown === this.#shown) return;
		this.#shown = shown;
		this.#services.onStatus?.(status);
	}
}
