// Whole records found inside damaged bytes: where a newline was lost, or junk stands before or
// behind a record, the record itself may still be good.

import { type ByteRange, prefixLength } from './line.ts';

/** How a record begins behind its checksum. */
const opening = ' {"v":';

/** Junk has millions of lines too short for any record: a look into each takes longer than all else. */
const fewestBytes = prefixLength + opening.length;

/**
 * Where whole lines may stand in a damaged one: from the eight bytes of a checksum and the opening of a record
 * to the brace that closes it. Their checksums are yet to be tried. A record never holds such an opening itself,
 * since JSON as it is written here has no space outside texts and escapes the quotes inside them; so what
 * stands before the next opening is looked at once, however much junk there is.
 */
export function likelyLines(bytes: Buffer, { start, end }: ByteRange): readonly ByteRange[] {
	if (end - start < fewestBytes) return [];
	const line = bytes.subarray(start, end);
	const openings = openingsIn(line);
	return openings.map((at, index) => {
		const object = line.subarray(at + 1, openings[index + 1]);
		const from = start + at + 1;
		return { start: from - prefixLength, end: from + objectLength(object) };
	});
}

/** The offsets of those openings that have a checksum's room before them. */
function openingsIn(line: Buffer): number[] {
	const found: number[] = [];
	let at = line.indexOf(opening, prefixLength - 1, 'latin1');
	while (at !== -1) {
		found.push(at);
		at = line.indexOf(opening, at + 1, 'latin1');
	}
	return found;
}

/** How many of the bytes are the object that begins with the first; all of them if none closes it. */
function objectLength(bytes: Buffer): number {
	let depth = 0;
	let isInText = false;
	for (let index = 0; index < bytes.length; index += 1) {
		const byte = bytes[index];
		if (isInText) {
			if (byte === 0x5c) index += 1;
			else if (byte === 0x22) isInText = false;
		} else if (byte === 0x22) isInText = true;
		else if (byte === 0x7b) depth += 1;
		else if (byte === 0x7d) {
			depth -= 1;
			if (depth === 0) return index + 1;
		}
	}
	return bytes.length;
}
