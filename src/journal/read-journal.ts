// One file of a night, read from its bytes whatever happened to them. Nothing is believed but a
// right checksum, and nothing with a right checksum is thrown away.

import { type ByteRange, isLineWhole, seedOf } from './line.ts';
import {
	formatVersion,
	glanceAtLine,
	type HeaderLine,
	type JournalLine,
	readHeaderLine,
} from './read-line.ts';
import { recordVersion } from './record.ts';
import { likelyLines } from './salvage.ts';

/** Bytes that are no good line, and how many records they seem to have been. */
export type Damage = ByteRange & { readonly lost: number };

/** All that a file of a night holds, good and bad. */
export type JournalRead = {
	readonly bytes: Buffer;
	/** The night's id; null when neither a header nor the file's name tells it. */
	readonly id: string | null;
	readonly header: HeaderLine | null;
	/** Records and checkpoints in the order of the file, each once. */
	readonly lines: readonly JournalLine[];
	readonly duplicates: number;
	/** Lines that belong to another night. */
	readonly foreign: readonly ByteRange[];
	/** Damage with good lines after it. */
	readonly damaged: readonly Damage[];
	/** Complete lines at the end that are wrong: they may have been shown as saved. */
	readonly quarantined: Damage | null;
	/** What a stopped write left at the end. */
	readonly torn: ByteRange | null;
	/** The last good line lost its newline: write one before anything else. */
	readonly isUnterminated: boolean;
	/** Written by a newer version of the program: not to be written into. */
	readonly isNewer: boolean;
	/** Has records of an older format. */
	readonly isOlder: boolean;
};

const newline = 0x0a;

/**
 * What the bytes of a night's file say. `nameId` is the id that the file's name tells, by which the
 * records stay readable when the header is gone.
 */
export function readJournal(bytes: Uint8Array, nameId: string | null = null): JournalRead {
	const buffer = Buffer.from(bytes.buffer, bytes.byteOffset, bytes.byteLength);
	const header = findHeader(buffer, nameId);
	const id = header?.header.journal ?? nameId;
	const reader = new Reader(buffer, id);
	const end = buffer.length;
	const start = eachLine(buffer, (line) => {
		reader.takeLine(line);
		return null;
	});
	const { torn, isUnterminated } = reader.takeTail({ start, end });
	return { bytes: buffer, id, header, torn, isUnterminated, ...reader.result(header) };
}

/** The header that these bytes hold, wherever it stands in them; `nameId` as above. */
export function findHeader(bytes: Buffer, nameId: string | null = null): HeaderLine | null {
	let header: HeaderLine | null = null;
	eachLine(bytes, (range) => {
		const found = readHeaderLine(bytes, range) ?? salvagedHeader(bytes, likelyLines(bytes, range));
		// A file may have been renamed, so its first line outweighs its name; a header further down
		// may have come from another night.
		const isOurs = range.start === 0 || nameId === null || found?.header.journal === nameId;
		header = isOurs ? found : null;
		return header;
	});
	return header;
}

/** Gives each line that holds anything, until something is given back; where the bytes after the last newline begin. */
function eachLine(bytes: Buffer, take: (line: ByteRange) => HeaderLine | null): number {
	for (let start = 0; ; ) {
		while (bytes[start] === newline) start += 1;
		const end = bytes.indexOf(newline, start);
		if (end < 0 || take({ start, end }) !== null) return start;
		start = end + 1;
	}
}

function salvagedHeader(bytes: Buffer, likely: readonly ByteRange[]): HeaderLine | null {
	for (const piece of likely) {
		const found = readHeaderLine(bytes, piece);
		if (found) return found;
	}
	return null;
}

/** Damage that what follows may still be added to. */
type Growing = { readonly start: number; end: number; lost: number };

class Reader {
	readonly #bytes: Buffer;
	readonly #id: string | null;
	readonly #seed: number | null;
	readonly #foreignSeeds = new Set<number>();
	readonly #lines: JournalLine[] = [];
	readonly #seen = new Map<number, JournalLine>();
	readonly #foreign: ByteRange[] = [];
	readonly #damaged: Damage[] = [];
	/** Damage since the last good line. */
	#trailing: Growing[] = [];
	#duplicates = 0;
	#isNewer = false;
	#isOlder = false;

	constructor(bytes: Buffer, id: string | null) {
		this.#bytes = bytes;
		this.#id = id;
		this.#seed = id === null ? null : seedOf(id);
	}

	takeLine(range: ByteRange): void {
		if (this.#take(range)) return;
		const likely = likelyLines(this.#bytes, range);
		const bad = likely.filter((piece) => !this.#take(piece));
		const isSalvaged = bad.length < likely.length;
		// A line without any opening right after damage is the rest of a record cut in two.
		const isRest = this.#trailing.length > 0;
		const lost = bad.filter((piece) => !this.#isReplaceable(piece)).length;
		const damage = { ...range, lost: likely.length > 0 || isRest ? lost : 1 };
		if (isSalvaged) this.#damaged.push(damage);
		else this.#trail(damage);
	}

	/** Lines of damage that follow each other are one: junk may hold millions of them. */
	#trail(damage: Growing): void {
		const last = this.#trailing.at(-1);
		if (last === undefined || last.end + 1 !== damage.start) this.#trailing.push(damage);
		else {
			last.end = damage.end;
			last.lost += damage.lost;
		}
	}

	/** The bytes after the last newline: a record in them counts only if something was written behind it. */
	takeTail(range: ByteRange): Pick<JournalRead, 'torn' | 'isUnterminated'> {
		let good = range.start;
		for (const piece of likelyLines(this.#bytes, range)) {
			// Nothing, or zeros as file systems leave them.
			const isLast = (this.#bytes[piece.end] ?? 0) === 0;
			if (isLast || !this.#take(piece)) continue;
			good = piece.end + 1;
		}
		const isUnterminated = good > range.start;
		if (isUnterminated) this.#damaged.push({ start: range.start, end: good, lost: 0 });
		return { isUnterminated, torn: good < range.end ? { start: good, end: range.end } : null };
	}

	result(
		header: HeaderLine | null,
	): Omit<JournalRead, 'bytes' | 'id' | 'header' | 'torn' | 'isUnterminated'> {
		const [first] = this.#trailing;
		const last = this.#trailing.at(-1);
		const lost = this.#trailing.reduce((sum, damage) => sum + damage.lost, 0);
		const major = header ? formatVersion(header.header) : recordVersion;
		return {
			lines: this.#lines,
			duplicates: this.#duplicates,
			foreign: this.#foreign,
			damaged: this.#damaged,
			quarantined: first && last ? { start: first.start, end: last.end, lost } : null,
			isNewer: this.#isNewer || major === null || major > recordVersion,
			isOlder: this.#isOlder,
		};
	}

	/** Whether what stood here was no record but a header or checkpoint, without which nothing is lost. */
	#isReplaceable(piece: ByteRange): boolean {
		const text = this.#bytes.toString(
			'latin1',
			piece.start,
			Math.min(piece.end, piece.start + 256),
		);
		return /"e":\[\{"k":"(?:header|checkpoint)"/.test(text);
	}

	/** Whether these bytes are a good line of any kind, which is then kept. */
	#take(range: ByteRange): boolean {
		const isKept =
			(this.#seed !== null && isLineWhole(this.#bytes, range, this.#seed) && this.#keep(range)) ||
			this.#takeHeader(range) ||
			this.#takeForeign(range);
		if (isKept) {
			for (const damage of this.#trailing) this.#damaged.push(damage);
			this.#trailing = [];
		}
		return isKept;
	}

	#keep(range: ByteRange): boolean {
		const line = glanceAtLine(this.#bytes, range);
		if (line === null) return false;
		const before = line.kind === 'record' ? this.#seen.get(line.seq) : undefined;
		if (before && this.#isSame(before, line)) {
			this.#duplicates += 1;
			return true;
		}
		if (line.kind === 'record' && !before) this.#seen.set(line.seq, line);
		if (line.version > recordVersion) this.#isNewer = true;
		if (line.version < recordVersion) this.#isOlder = true;
		this.#lines.push(line);
		return true;
	}

	#isSame(one: ByteRange, other: ByteRange): boolean {
		return this.#bytes.compare(this.#bytes, one.start, one.end, other.start, other.end) === 0;
	}

	#takeHeader(range: ByteRange): boolean {
		const found = readHeaderLine(this.#bytes, range);
		if (!found) return false;
		if (found.header.journal !== this.#id) {
			this.#foreignSeeds.add(seedOf(found.header.journal));
			this.#foreign.push(range);
		}
		return true;
	}

	#takeForeign(range: ByteRange): boolean {
		for (const seed of this.#foreignSeeds) {
			if (!isLineWhole(this.#bytes, range, seed)) continue;
			this.#foreign.push(range);
			return true;
		}
		return false;
	}
}
