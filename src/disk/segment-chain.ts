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
	}

	/** The file that takes new lines. */
	get current(): Segment | null {
		return this.#current;
	}

	/** Begins the next file, whose first record has this number; gives the disk's error code when that fails. */
	begin(from: number, isElsewhereBetter: boolean): Segment | { readonly code: string } {
		const { disk, id, folders, header } = this.#start;
		const [home, ...others] = folders;
		const own = home === undefined ? [] : [home];
		const begun = startSegment(disk, {
			id,
			number: this.#nextNumber,
			folders: isElsewhereBetter ? [...others, ...own] : [...own, ...others],
			headerBytes: header ? headerBytes(header, from) : new Uint8Array(0),
		});
		if ('code' in begun) return begun;
		this.#current = begun.segment;
		this.#nextNumber = begun.segment.number + 1;
		return begun.segment;
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
