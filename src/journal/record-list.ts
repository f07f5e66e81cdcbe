// A night's records in order, decoded only when somebody asks: a resumed night needs those since its
// last checkpoint at once and the rest perhaps never.

import { decodeLine, type JournalLine } from './read-line.ts';
import type { JournalRecord } from './record.ts';

/** A line together with the bytes it stands in. */
export type StoredLine = { readonly bytes: Buffer; readonly line: JournalLine };

/** The records of one night, lowest number first. */
export class RecordList {
	readonly #slots: (JournalRecord | StoredLine)[];
	#decodedFrom: number;

	constructor(lines: readonly StoredLine[]) {
		this.#slots = [...lines];
		this.#decodedFrom = lines.length;
	}

	/** All records; the same array each time, growing with `push`. */
	all(): readonly JournalRecord[] {
		this.#decode(0);
		return this.#slots as JournalRecord[];
	}

	/** The last of them; null without any. */
	last(): JournalRecord | null {
		this.#decode(this.#slots.length - 1);
		return (this.#slots.at(-1) as JournalRecord | undefined) ?? null;
	}

	/** The records with a number above this one. */
	after(seq: number): JournalRecord[] {
		let first = this.#slots.length;
		while (first > 0 && seqOf(this.#slots[first - 1]) > seq) first -= 1;
		this.#decode(first);
		return this.#slots.slice(first) as JournalRecord[];
	}

	/** Whether every record above `after` up to `to` is there. */
	isWhole({ after, to }: { readonly after: number; readonly to: number }): boolean {
		let count = 0;
		for (let index = this.#slots.length - 1; index >= 0; index -= 1) {
			const seq = seqOf(this.#slots[index]);
			if (seq <= after) break;
			if (seq <= to) count += 1;
		}
		return count === to - after;
	}

	push(record: JournalRecord): void {
		this.#slots.push(record);
	}

	#decode(from: number): void {
		for (let index = Math.max(0, from); index < this.#decodedFrom; index += 1) {
			const slot = this.#slots[index];
			if (slot && 'line' in slot) this.#slots[index] = decodeLine(slot.bytes, slot.line);
		}
		this.#decodedFrom = Math.min(this.#decodedFrom, from);
	}
}

function seqOf(slot: JournalRecord | StoredLine | undefined): number {
	if (slot === undefined) return 0;
	return 'line' in slot ? slot.line.seq : slot.s;
}
