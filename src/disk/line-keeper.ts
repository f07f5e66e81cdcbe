// The lines of a night on their way to a disk, and all that is done when it fails. Every line goes to the system at
// once and to the disk as soon as it confirms; whatever the disk does, nothing is thrown at the caller.

import type { LeftAs, SavePlace, SaveStatus, SaveWarning } from '../journal/night-journal.ts';
import { markAway, unmarkAway } from './away-mark.ts';
import { Backlog, type Chunk, chunksOf } from './backlog.ts';
import { diskErrorCode } from './disk.ts';
import { markEnd } from './end-mark.ts';
import { growingPause, HomePace } from './home-pace.ts';
import type { NightServices, NightStart } from './night-services.ts';
import { type SaveFault, saveStatus } from './save-status.ts';
import type { Segment, WriteFault } from './segment.ts';
import { SegmentChain } from './segment-chain.ts';

const retryMs = 1000;
const longestRetryMs = 60_000;
/** Two copies that see nothing of each other's lock learn of each other by this. */
const lookEveryMs = 1000;
/** One alone says nothing. */
const blindLooksTold = 2;
/** A busy disk that is well needs a second now and then; nobody waits two for one that hangs. */
const closingMs = 1900;
/** Errors after which the same file is still the right one to write into. */
const roomTroubles = new Set(['ENOSPC', 'EDQUOT']);
/** Errors that say nothing against the folder: a new file in it is as good as any. */
const sameDiskTroubles = new Set([...roomTroubles, 'EFBIG']);

/** What is kept, and who is told when all of it is written anew into another file. */
export type KeptLines = {
	readonly start: NightStart;
	readonly seed: number;
	readonly onAnew: () => void;
};

/** Keeps a night's lines in its files, and says how that stands. */
export class LineKeeper {
	readonly #services: NightServices;
	readonly #id: string;
	readonly #records: NightStart['records'];
	readonly #seed: number;
	readonly #onAnew: () => void;
	readonly #backlog = new Backlog();
	readonly #warnings: SaveWarning[] = [];
	readonly #chain: SegmentChain;
	#lastSeq: number;
	#writtenSeq: number;
	#savedSeq = 0;
	/** The last record that is confirmed in the night's own folder. */
	#homeSeq = 0;
	/** The last record that is in the files there, confirmed or not, from before they had no more room. */
	#homeEndSeq = 0;
	readonly #homePace = new HomePace();
	readonly #isHomeWiped: boolean;
	/** Where it comes from, while its own folder has yet to confirm the whole night. */
	#movingFrom: string | null = null;
	/** Records from before this opening are in the file, but nothing confirms yet that they would outlive a power cut. */
	#isPastUnconfirmed = true;
	#fault: SaveFault | null = null;
	#retryAtUpMs = 0;
	#syncFaults = 0;
	#syncAtUpMs = 0;
	#sync: Promise<void> | null = null;
	#syncingSinceUpMs: number | null = null;
	/** Rises whenever what the disk may yet confirm does not count any more. */
	#leavings = 0;
	#lookedAtUpMs: number;
	/** How many looks in a row saw nothing. */
	#blindLooks = 0;
	#upMs: number;
	#hasFile: boolean;
	#isClosed = false;
	#closedAs: SaveStatus | null = null;
	#shown = '';

	/** Files whose last one is `start.segment`, or is yet to be begun when that is null. */
	constructor(services: NightServices, { start, seed, onAnew }: KeptLines) {
		this.#services = services;
		this.#id = start.id;
		this.#records = start.records;
		this.#seed = seed;
		this.#onAnew = onAnew;
		this.#isHomeWiped = services.isWiped?.(this.#home) ?? false;
		const { disk, folders } = services;
		const { id, header, nextNumber, segment: current, away } = start;
		this.#chain = new SegmentChain({ disk, folders, id, header, nextNumber, away, current });
		this.#hasFile = current !== null;
		this.#lastSeq = start.lastSeq;
		this.#writtenSeq = start.lastSeq;
		this.#upMs = services.upMs;
		this.#lookedAtUpMs = services.upMs;
		if (current === null) {
			this.#leave('all');
			this.#movingFrom = away;
		}
		if (start.firstBytes) {
			this.#backlog.addForThisFile({ seq: start.lastSeq, bytes: start.firstBytes });
		}
		if (start.fileTrouble !== null) this.#warn({ code: 'file-left', trouble: start.fileTrouble });
		if (start.folderTrouble !== null) this.#setFault(start.folderTrouble);
		this.#write();
	}

	/** Whether lines wait for a disk that takes none. */
	get hasWaiting(): boolean {
		return this.#backlog.next !== undefined;
	}

	/** Takes the line of the last record, which is among the records by now. */
	add(line: Chunk, upMs: number): void {
		this.#upMs = upMs;
		this.#lastSeq = line.seq;
		this.#backlog.add(line);
		if (this.#fault === null || this.#chain.current || upMs >= this.#retryAtUpMs) this.#write();
		this.#show();
	}

	/** Takes the line of a state kept whole, to go out before the next record. */
	addShortCut(line: Chunk): void {
		this.#backlog.add({ ...line, isShortCut: true });
	}

	/** How keeping them stands; after the end as it stood then. */
	status(): SaveStatus {
		if (this.#closedAs) return this.#closedAs;
		return saveStatus({
			savedSeq: this.#savedSeq,
			lastSeq: this.#lastSeq,
			fault: this.#fault,
			syncingSinceUpMs: this.#syncingSinceUpMs,
			upMs: this.#upMs,
			hasFile: this.#hasFile,
			isPlaced: this.#chain.current?.isPlaced === true && !this.#isPastUnconfirmed,
			warnings: [...this.#warnings],
			folder: this.#home,
			elsewhere: this.#elsewhere(),
			isHomeWiped: this.#isHomeWiped,
			homeSeq: this.#homeSeq,
		});
	}

	/** To be called at least every second: tries again what failed, looks after the files. */
	tick(upMs: number): void {
		if (this.#isClosed) return;
		this.#upMs = upMs;
		const isBehind = this.#chain.current === null || this.hasWaiting;
		if (isBehind && upMs >= this.#retryAtUpMs) this.#write();
		const isAway = this.#chain.away !== null && this.#chain.current !== null;
		if (isAway && this.#homePace.isDue(upMs)) this.#goHome();
		if (upMs - this.#lookedAtUpMs >= lookEveryMs) this.#look();
		this.#startSync();
		this.#show();
	}

	/** Tries at once to write what is not written. */
	flushNow(): SaveStatus {
		this.#write();
		this.#show();
		return this.status();
	}

	/** Waits so long at most for the disk to confirm, then lets go of everything. */
	async close(limitMs = closingMs, as: LeftAs = 'left'): Promise<SaveStatus> {
		if (this.#isClosed) return this.status();
		// Nobody looks after this, and what was moved away is not found at the next start.
		this.#look();
		this.flushNow();
		this.#startSync();
		let isLate = false;
		const deadline = this.#services.wait(limitMs).then(() => {
			isLate = true;
		});
		while (this.#sync && !isLate) await Promise.race([this.#sync, deadline]);
		this.#isClosed = true;
		this.#closedAs = this.status();
		this.#chain.close();
		// A disk that does not answer is asked for nothing more.
		const { disk, folders, isEndMarked = true } = this.#services;
		if (isEndMarked && !isLate) markEnd(disk, folders, { id: this.#id, seq: this.#lastSeq, as });
		this.#services.release?.();
		return this.#closedAs;
	}

	/** Brings everything into a file; what cannot be is tried again in a second. */
	#write(): void {
		if (this.#isClosed) return;
		// One file may turn out to be unusable, and then the one begun in its place.
		for (let failures = 0; failures < 2; ) {
			const fault = this.#writeAll();
			if (fault === null) {
				if (this.#syncFaults === 0) this.#fault = null;
				this.#startSync();
				return;
			}
			this.#setFault(fault.code);
			const segment = this.#chain.current;
			if (segment === null) return;
			if (fault.isUsable && roomTroubles.has(fault.code)) {
				if (segment.folder !== this.#home || !this.#goElsewhere(fault.code)) return;
				continue;
			}
			this.#warn({ code: 'file-left', trouble: fault.code });
			if (fault.isUsable && fault.code === 'EFBIG' && !segment.isBare) {
				this.#chain.retire();
				continue;
			}
			// Else a broken disk would fill with files that hold nothing.
			if (segment.isBare && segment.number > 1) segment.remove();
			this.#leave('unconfirmed');
			failures += 1;
		}
	}

	#writeAll(): WriteFault | null {
		const begun = this.#chain.current ?? this.#begin();
		if ('code' in begun) return { code: begun.code, isUsable: true };
		for (let chunk = this.#backlog.next; chunk; chunk = this.#backlog.next) {
			const fault = begun.write(chunk.bytes);
			if (fault?.isUsable && chunk.isShortCut) {
				// What is too long for the room that is left must not keep the records out of it.
				this.#backlog.drop();
				continue;
			}
			if (fault) return fault;
			this.#backlog.markWritten();
			this.#writtenSeq = Math.max(this.#writtenSeq, chunk.seq);
		}
		return null;
	}

	#begin(): Segment | { readonly code: string } {
		// Where a disk has just failed, any other one is better.
		const code = this.#fault?.code ?? null;
		const leftFor = code === null || sameDiskTroubles.has(code) ? null : code;
		const begun = this.#chain.begin(this.#writtenSeq + 1, leftFor);
		if ('code' in begun) return begun;
		this.#hasFile = true;
		if (begun.folder !== this.#home) this.#onAway(false);
		return begun;
	}

	/** Goes on in another folder while the night's own has no room; false where that takes nothing either. */
	#goElsewhere(code: string): boolean {
		if (this.#chain.beginElsewhere(this.#writtenSeq + 1, code) === null) return false;
		this.#homeEndSeq = this.#writtenSeq;
		this.#onAway(true);
		return true;
	}

	#onAway(isFull: boolean): void {
		this.#homePace.left(this.#upMs, isFull);
		const { disk } = this.#services;
		markAway({ disk, home: this.#home, id: this.#id });
	}

	get #home(): string {
		return this.#services.folders[0] ?? '';
	}

	#elsewhere(): SavePlace | null {
		const { away: folder, homeTrouble: trouble } = this.#chain;
		if (folder === null) return null;
		const isWiped = this.#services.isWiped?.(folder) ?? false;
		return { folder, home: this.#home, trouble, isWiped };
	}

	/** Writes what the night's own folder lacks into a new file there; where that fails, all stays as it is. */
	#goHome(): void {
		this.#homePace.attempt(this.#upMs);
		const segment = this.#chain.beginHome(this.#homeSeq + 1);
		if ('code' in segment) return;
		const chunks = chunksOf(this.#records.after(this.#homeSeq), this.#seed);
		for (const { bytes } of chunks) {
			const fault = segment.write(bytes);
			if (!fault) continue;
			this.#chain.refuseHome(segment, fault.code);
			return;
		}
		this.#movingFrom = this.#chain.away;
		this.#homePace.came(this.#upMs);
		this.#leavings += 1;
		this.#chain.adopt(segment);
		this.#backlog.standWritten(chunks);
		this.#fault = null;
		this.#savedSeq = this.#homeSeq;
		this.#writtenSeq = this.#lastSeq;
		this.#isPastUnconfirmed = false;
		this.#onAnew();
	}

	/** Gives the file up; what it held and nothing confirms goes into the next one. */
	#leave(what: 'unconfirmed' | 'all'): void {
		const isAll = what === 'all' || this.#isPastUnconfirmed;
		this.#leavings += 1;
		this.#homeEndSeq = 0;
		this.#chain.abandon(isAll);
		if (isAll) {
			this.#backlog.startFrom(this.#records.all(), this.#seed);
			this.#savedSeq = 0;
			this.#homeSeq = 0;
			this.#isPastUnconfirmed = false;
			this.#onAnew();
		} else this.#backlog.startOver();
		this.#writtenSeq = this.#savedSeq;
	}

	#startSync(): void {
		const segment = this.#chain.current;
		if (segment === null || this.#sync || this.#isClosed || this.#upMs < this.#syncAtUpMs) return;
		const isDone = segment.isPlaced && !this.#isPastUnconfirmed;
		if (isDone && this.#writtenSeq <= this.#savedSeq) return;
		const upTo = this.#writtenSeq;
		const leavings = this.#leavings;
		this.#syncingSinceUpMs = this.#upMs;
		const ended = (act: () => void) => {
			this.#sync = null;
			this.#syncingSinceUpMs = null;
			if (this.#isClosed) return;
			if (leavings === this.#leavings) act();
			this.#startSync();
			this.#show();
		};
		this.#sync = this.#chain.sync().then(
			() => ended(() => this.#onSynced(upTo)),
			(error) => ended(() => this.#onSyncFault(diskErrorCode(error))),
		);
	}

	#onSynced(upTo: number): void {
		// "Saved" is said only of a file that is still where it should be.
		if (!this.#look()) return;
		this.#savedSeq = Math.max(this.#savedSeq, upTo);
		this.#backlog.markSynced(upTo);
		this.#isPastUnconfirmed = false;
		this.#syncFaults = 0;
		if (this.#chain.away === null) this.#onHome();
		else this.#homeSeq = Math.max(this.#homeSeq, Math.min(this.#homeEndSeq, upTo));
		if (!this.hasWaiting) this.#fault = null;
	}

	#onHome(): void {
		this.#homeSeq = this.#savedSeq;
		if (this.#movingFrom === null) return;
		const { disk } = this.#services;
		unmarkAway({ disk, home: this.#home, id: this.#id });
		this.#warn({ code: 'moved-back', from: this.#movingFrom, folder: this.#home });
		this.#movingFrom = null;
	}

	/** After one failed confirmation a system may report success for bytes that it has dropped, so that file is never trusted again. */
	#onSyncFault(code: string): void {
		this.#setFault(code);
		if (this.#movingFrom !== null) this.#homePace.fault();
		this.#movingFrom = null;
		this.#leave('unconfirmed');
		this.#warn({ code: 'not-confirmed', trouble: code });
		// Every further attempt leaves one more file behind.
		const pauseMs = growingPause(this.#syncFaults, longestRetryMs);
		this.#syncAtUpMs = this.#syncFaults === 0 ? 0 : this.#upMs + pauseMs;
		this.#syncFaults += 1;
		this.#write();
	}

	/** Looks whether the files are as we left them; false when the night had to leave them. */
	#look(): boolean {
		this.#lookedAtUpMs = this.#upMs;
		try {
			const found = this.#chain.change();
			this.#blindLooks = 0;
			if (found === null) return true;
			if (found.change === 'grown') {
				this.#warnOfWriter(found.segment.takeForeignBytes());
				return true;
			}
			const change = found.change === 'gone' ? 'gone' : 'cut-short';
			this.#warn({ code: 'file-changed', path: found.segment.path, change });
		} catch (error) {
			// A disk that cannot even be asked shows at the next write; a folder that was shut never does.
			const trouble = diskErrorCode(error);
			this.#blindLooks += 1;
			if (this.#blindLooks === blindLooksTold) this.#warn({ code: 'not-seen', trouble });
			return true;
		}
		this.#leave('all');
		this.#write();
		return false;
	}

	#warnOfWriter(bytes: Uint8Array): void {
		const writer = /"w":"([a-z0-9.-]{1,64})"/i.exec(Buffer.from(bytes).toString('latin1'))?.[1];
		this.#warn({ code: 'written-by-other', writer: writer ?? null });
	}

	#warn(warning: SaveWarning): void {
		const said = JSON.stringify(warning);
		if (!this.#warnings.some((one) => JSON.stringify(one) === said)) this.#warnings.push(warning);
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
