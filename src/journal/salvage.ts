// Whole records found inside damaged bytes: where a newline was lost, or junk stands before or
// behind a record, the record itself may still be good.

import { type ByteRange, prefixLength } from './line.ts';

/** Where whole lines may stand in damaged bytes, in order; to be asked for ranges from the front to the back. */
export type LikelyLines = (range: ByteRange) => readonly ByteRange[];

const NONE: readonly ByteRange[] = [];
const opening = ' {"v":';

/**
 * Finds where whole lines may stand: from eight bytes and the opening of a record to the brace that
 * closes it. Their checksums are yet to be tried. A record never holds such an opening itself, since
 * JSON as it is written here has no space outside texts and escapes the quotes inside them. It
 * looks at each byte once, however many lines junk has.
 */
export function likelyLinesIn(bytes: Buffer): LikelyLines {
	let found = -1;

	/** The first opening from here on, wherever in the file. */
	function openingFrom(from: number): number {
		if (from > found) {
			const at = bytes.indexOf(opening, from, 'latin1');
			found = at < 0 ? bytes.length : at;
		}
		return found;
	}

	function openings(range: ByteRange): number[] {
		const starts: number[] = [];
		for (let from = range.start; ; from += 1) {
			from = openingFrom(from);
			if (from >= range.end) return starts;
			const start = from - prefixLength + 1;
			if (start >= (starts.at(-1) ?? range.start)) starts.push(start);
		}
	}

	return (range) => {
		if (openingFrom(range.start) >= range.end) return NONE;
		const starts = openings(range);
		return starts.map((start, index) => ({
			start,
			end: objectEnd(bytes, { start: start + prefixLength, end: starts[index + 1] ?? range.end }),
		}));
	};
}

/** The offset after the brace that closes the object beginning here; the range's end if none does. */
function objectEnd(bytes: Buffer, range: ByteRange): number {
	let depth = 0;
	let isInText = false;
	for (let index = range.start; index < range.end; index += 1) {
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
	return range.end;
}
