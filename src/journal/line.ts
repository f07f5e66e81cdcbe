// One record as one line of a journal: eight hex digits of checksum, a space, JSON, a newline. The
// checksum is seeded with the night's id, so that a line from another night is never taken for one
// of this night. It guards against accident, not against forgery.

import { crc32 } from 'node:zlib';
import { type AnyEntry, idOf, type JournalRecord } from './record.ts';

/** Bytes before the JSON of a line. */
export const prefixLength = 9;

/** The seed of a header's checksum, which must be readable before the night's id is known. */
export const headerSeed = 0;

const newline = 0x0a;
const space = 0x20;

/** The seed of all checksums but the header's in the night with this id. */
export function seedOf(journalId: string): number {
	return crc32(journalId);
}

/** The whole line of a record, its newline included. */
export function encodeLine(record: JournalRecord<AnyEntry>, seed: number): Buffer {
	const body = JSON.stringify(stored(record));
	const line = Buffer.allocUnsafeSlow(prefixLength + Buffer.byteLength(body) + 1);
	line.write(body, prefixLength, 'utf8');
	const sum = crc32(line.subarray(prefixLength, -1), seed);
	line.write(sum.toString(16).padStart(8, '0'), 0, 'latin1');
	line[8] = space;
	line[line.length - 1] = newline;
	return line;
}

/** The record as it is written: its numbers before its entries, its identity only where it is another than they give. */
function stored({ v, s, w, h, p, id, t, m, e }: JournalRecord): object {
	return { v, s, w, ...(id === idOf(w, s) ? {} : { i: id }), h, ...(p ? { p } : {}), t, m, e };
}

/** A stretch of bytes: from `start` up to but not including `end`. */
export type ByteRange = { readonly start: number; readonly end: number };

/** Whether the bytes of the range, newline left out, are a line whose checksum has this seed. */
export function isLineWhole(bytes: Buffer, range: ByteRange, seed: number): boolean {
	const bodyStart = range.start + prefixLength;
	if (range.end <= bodyStart || bytes[bodyStart - 1] !== space) return false;
	const written = readHex(bytes, range.start);
	return written !== null && written === crc32(bytes.subarray(bodyStart, range.end), seed);
}

/** The eight lower-case hex digits at this place as a number; null where there are none. */
function readHex(bytes: Buffer, start: number): number | null {
	let value = 0;
	for (let index = start; index < start + 8; index += 1) {
		const byte = bytes[index] ?? 0;
		if (byte >= 0x30 && byte <= 0x39) value = value * 16 + byte - 0x30;
		else if (byte >= 0x61 && byte <= 0x66) value = value * 16 + byte - 0x57;
		else return null;
	}
	return value;
}
