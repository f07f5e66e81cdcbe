// The files that a night stands in while it is kept: the one that takes new lines, full ones that
// the disk has yet to confirm, and earlier ones that hold what was confirmed long ago.

import type { HeaderLine } from '../journal/read-line.ts';
import type { Disk } from './disk.ts';
import type { FileChange, Segment } from './segment.ts';
import { headerBytes, startSegment } from './segment-starter.ts';

/** What a chain of files is made of. */
export type SegmentChainStart = {
	readonly disk: Disk;
	readonly id: string;
	readonly folders: readonly string[];
	readonly header: HeaderLine | null;
	readonly current: Segment | null;
	/** Folder of files with records that no file in the first folder has; null for none. */
	readonly away: string | null;
	/** Number of the file that comes after those that are there. */
	readonly nextNumber: number;
};

/** What happened to one of the files. */
export type ChainChange = { readonly segment: Segment; readonly change: FileChange };

/** The files of a night, one after the other. */
export class SegmentChain {
	readonly #start: SegmentChainStart;
	#current: Segment | null;
	#nextNumber: number;
	#away: string | null;
	/** Why the first folder took no file. */
	#homeTrouble: string | null = null;
	/** Take no more lines, and are not confirmed yet. */
	#full: readonly Segment[] = [];
	/** Closed; what they hold counts as saved. */
	#past: readonly Segment[] = [];
	/** With the disk at the moment. */
	#inFlight: readonly Segment[] = [];

	constructor(start: SegmentChainStart) {
		this.#start = start;
		this.#current = start.current;
		this.#nextNumber = start.nextNumber;
		this.#away = start.away;
	}

	/** Where files of the night are that hold what those in its own folder lack; null for nowhere. */
	get away(): string | null {
		return this.#away;
	}

	/** Why the night's own folder took no file when it was last asked to; null when it did, or never was. */
	get homeTrouble(): string | null {
		return this.#homeTrouble;
	}

	/** The file that takes new lines. */
	get current(): Segment | null {
		return this.#current;
	}

	/**
	 * Begins the next file, whose first record has this number; gives the disk's error code when that
	 * fails. `leftFor`: why another folder than the night's own is the better one now; null when it is not.
	 */
	begin(from: number, leftFor: string | null): Segment | { readonly code: string } {
		const { folders } = this.#start;
		const [home, ...others] = folders;
		const own = home === undefined ? [] : [home];
		const order = leftFor === null ? [...own, ...others] : [...others, ...own];
		const begun = this.#startIn(order, from);
		if ('code' in begun) return begun;
		const { segment, passedOver } = begun;
		this.#goOnIn(segment, leftFor ?? passedOver);
		return segment;
	}

	/**
	 * Goes on in another folder than the night's own, whose file is good as far as it goes but has no room for
	 * more; null, and all as it was, where no other folder takes a file either.
	 */
	beginElsewhere(from: number, homeTrouble: string): Segment | null {
		const begun = this.#startIn(this.#start.folders.slice(1), from);
		if ('code' in begun) return null;
		this.retire();
		this.#goOnIn(begun.segment, homeTrouble);
		return begun.segment;
	}

	#goOnIn(segment: Segment, homeTrouble: string | null): void {
		if (segment.folder !== this.#start.folders[0]) {
			this.#away = segment.folder;
			this.#homeTrouble = homeTrouble;
		}
		this.#current = segment;
		this.#nextNumber = segment.number + 1;
	}

	/** Begins a file in the night's own folder, to be adopted or removed; the current one stays. */
	beginHome(from: number): Segment | { readonly code: string } {
		const begun = this.#startIn(this.#start.folders.slice(0, 1), from);
		if ('code' in begun) this.#homeTrouble = begun.code;
		return 'code' in begun ? begun : begun.segment;
	}

	/** Gives up a file that was begun at home, since it did not take everything. */
	refuseHome(segment: Segment, code: string): void {
		this.#homeTrouble = code;
		segment.remove();
		segment.close();
	}

	/** Goes on in a file that holds everything which the confirmed files in its folder do not hold. */
	adopt(segment: Segment): void {
		this.abandon(false);
		// What stands elsewhere is a copy from now on, whatever becomes of it.
		this.#past = this.#past.filter(({ folder }) => folder === segment.folder);
		this.#current = segment;
		this.#nextNumber = segment.number + 1;
		this.#away = null;
		this.#homeTrouble = null;
	}

	#startIn(folders: readonly string[], from: number) {
		const { disk, id, header } = this.#start;
		return startSegment(disk, {
			id,
			home: this.#start.folders[0] ?? '',
			number: this.#nextNumber,
			folders,
			headerBytes: header ? headerBytes(header, from) : new Uint8Array(0),
		});
	}

	/** The current file takes no more lines, but what it holds is good. */
	retire(): void {
		// A new list: the disk may be at work on the old one, which this file does not belong to.
		if (this.#current) this.#full = [...this.#full, this.#current];
		this.#current = null;
	}

	/** Nothing in these files counts any more but what was confirmed; with `isAllLost` not even that. */
	abandon(isAllLost: boolean): void {
		const left = this.#current ? [...this.#full, this.#current] : this.#full;
		for (const segment of left) if (!this.#inFlight.includes(segment)) segment.close();
		this.#past = isAllLost ? [] : [...this.#past, ...left];
		if (isAllLost) this.#away = null;
		this.#full = [];
		this.#current = null;
	}

	/** Resolves once all lines written before would outlive a power cut. One at a time. */
	async sync(): Promise<void> {
		const full = this.#full;
		const segments = this.#current ? [...full, this.#current] : full;
		this.#inFlight = segments;
		try {
			// All are waited for, so that none is closed while the disk still works on it.
			const results = await Promise.allSettled(segments.map((segment) => segment.sync()));
			const failed = results.find((result) => result.status === 'rejected');
			if (failed) throw failed.reason;
			const isStillFull = (segment: Segment) => this.#full.includes(segment);
			this.#past = [...this.#past, ...full.filter(isStillFull)];
			this.#full = this.#full.filter((segment) => !full.includes(segment));
		} finally {
			this.#inFlight = [];
			const open = new Set([...this.#full, this.#current]);
			for (const segment of segments) if (!open.has(segment)) segment.close();
		}
	}

	/** The first of the files that is not as we left it; null when all are. Throws the disk's errors. */
	change(): ChainChange | null {
		for (const segment of [...this.#past, ...this.#full, this.#current]) {
			const change = segment?.change() ?? null;
			// Only the current file is still written to, by whomever.
			const isMatter = change !== 'grown' || segment === this.#current;
			if (segment && change && isMatter) return { segment, change };
		}
		return null;
	}

	/** Lets go of all files but those that the disk still works on, which follow when it has done so. */
	close(): void {
		this.abandon(false);
	}
}
