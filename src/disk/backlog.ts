// The lines of a night that are on their way: first into the file, then confirmed by the disk. Kept
// here until then, so that whatever a disk drops can be written again.

import { encodeLine } from '../journal/line.ts';
import type { JournalRecord } from '../journal/record.ts';

/** One or more whole lines, and the number of the last record in them. */
export type Chunk = {
	readonly seq: number;
	readonly bytes: Uint8Array;
	/** A state kept whole: nothing is lost without it, so no record waits for it. */
	readonly isShortCut?: boolean;
};

/** Bytes that are written at once when a whole night is written anew. */
const chunkBytes = 16_384;

/** Lines not yet confirmed by the disk, oldest first. */
export class Backlog {
	#unwritten: Chunk[] = [];
	#unsynced: Chunk[] = [];

	/** The oldest lines that are not in the file yet. */
	get next(): Chunk | undefined {
		return this.#unwritten[0];
	}

	/** Takes lines that are to be written and confirmed. */
	add(chunk: Chunk): void {
		this.#unwritten.push(chunk);
		this.#unsynced.push(chunk);
	}

	/** Takes bytes that only this file needs. */
	addForThisFile(chunk: Chunk): void {
		this.#unwritten.push(chunk);
	}

	/** The `next` lines are in the file. */
	markWritten(): void {
		this.#unwritten.shift();
	}

	/** The `next` lines are not to be written at all. */
	drop(): void {
		const dropped = this.#unwritten.shift();
		this.#unsynced = this.#unsynced.filter((chunk) => chunk !== dropped);
	}

	/** All lines up to this number are confirmed. */
	markSynced(seq: number): void {
		this.#unsynced = this.#unsynced.filter((chunk) => chunk.seq > seq);
	}

	/** A new file: everything that was not confirmed is to be written into it. */
	startOver(): void {
		this.#unwritten = [...this.#unsynced];
	}

	/** A file that holds these lines is there, and waits to be confirmed. */
	standWritten(chunks: readonly Chunk[]): void {
		this.#unsynced = [...chunks];
		this.#unwritten = [];
	}

	/** A new file that is to hold all these records. */
	startFrom(records: readonly JournalRecord[], seed: number): void {
		this.#unsynced = chunksOf(records, seed);
		this.#unwritten = [...this.#unsynced];
	}
}

/** The lines of these records, some thousand bytes at once. */
export function chunksOf(records: readonly JournalRecord[], seed: number): Chunk[] {
	const chunks: Chunk[] = [];
	let lines: Buffer[] = [];
	let bytes = 0;
	for (const [index, record] of records.entries()) {
		const line = encodeLine(record, seed);
		lines.push(line);
		bytes += line.length;
		if (bytes < chunkBytes && index < records.length - 1) continue;
		chunks.push({ seq: record.s, bytes: Buffer.concat(lines) });
		lines = [];
		bytes = 0;
	}
	return chunks;
}
