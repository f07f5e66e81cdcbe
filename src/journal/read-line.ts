// What one whole line of a journal says: a cheap look at its number and writer for all lines, and
// the full record for those that are wanted.

import { type ByteRange, headerSeed, isLineWhole, prefixLength } from './line.ts';
import type { AnyEntry, JournalRecord, LogicalTime, NightHeader } from './record.ts';
import { type RawRecord, upgradeRecord } from './upgrade.ts';

/** A line whose checksum is right, without its newline. */
export type JournalLine = ByteRange & {
	readonly version: number;
	readonly seq: number;
	readonly writer: string;
	readonly kind: 'record' | 'checkpoint';
};

/** The bytes of a line's head that hold all but its entries, whatever its numbers are. */
const headLength = 480;

// The order in which this program writes the fields; another order is read too, only slower.
const head =
	/^\{"v":(\d{1,6}),"s":(\d{1,15}),"w":"([^"\\]{0,64})",(?:"i":"[^"\\]{0,80}",)?(?:"h":\[\d{1,15},\d{1,15}\],)?(?:"p":\["[^"\\]{0,80}"\],)?"t":-?[\d.e+-]{1,24},"m":-?[\d.e+-]{1,24},"e":\[(\{"k":"checkpoint")?/;

/** Number, writer and kind of a line whose checksum is right; null when it is no record at all. */
export function glanceAtLine(bytes: Buffer, range: ByteRange): JournalLine | null {
	const bodyStart = range.start + prefixLength;
	const text = bytes.toString('latin1', bodyStart, Math.min(range.end, bodyStart + headLength));
	const found = head.exec(text);
	if (found) {
		const [, version, seq, writer = '', checkpoint] = found;
		const kind = checkpoint === undefined ? 'record' : 'checkpoint';
		return { ...range, version: Number(version), seq: Number(seq), writer, kind };
	}
	const record = parseLine(bytes, range);
	if (record === null) return null;
	const kind = record.e[0]?.k === 'checkpoint' ? 'checkpoint' : 'record';
	return { ...range, version: record.v, seq: record.s, writer: record.w, kind };
}

/** The record of a line whose checksum is right, as today's version has it; without entries when it has no proper shape. */
export function decodeLine(bytes: Buffer, line: JournalLine): JournalRecord {
	const raw = parseLine(bytes, line);
	return upgradeRecord(raw ?? { v: line.version, s: line.seq, w: line.writer, t: 0, m: 0, e: [] });
}

/** A header with the moment and writer of its record. */
export type HeaderLine = { readonly record: JournalRecord; readonly header: NightHeader };

/** The header on this line; null when it is none, or its checksum is wrong. */
export function readHeaderLine(bytes: Buffer, range: ByteRange): HeaderLine | null {
	// A checksum takes time; what cannot be a header is seen from its first bytes.
	const bodyStart = range.start + prefixLength;
	if (range.end <= bodyStart) return null;
	const text = bytes.toString('latin1', bodyStart, Math.min(range.end, bodyStart + headLength));
	if (!/^\{"v":\d{1,6},"s":0,|"k":"header"/.test(text)) return null;
	if (!isLineWhole(bytes, range, headerSeed)) return null;
	const record = parseLine(bytes, range);
	const entry = record?.e[0];
	if (!record || !entry || entry.k !== 'header') return null;
	const found = entry as AnyEntry & Partial<NightHeader>;
	if (typeof found.journal !== 'string' || typeof found.format !== 'string') return null;
	const header: NightHeader = {
		k: 'header',
		format: found.format,
		journal: found.journal,
		boot: '',
		title: '',
		showPath: '',
		showHash: '',
		show: null,
		isRehearsal: false,
		from: 1,
		...(found as Partial<NightHeader>),
	};
	return { record: upgradeRecord(record), header };
}

/** The number after the slash of a header's format; null when it is not a night of this program. */
export function formatVersion(header: NightHeader): number | null {
	const found = /^rackside-night\/(\d{1,6})$/.exec(header.format);
	return found ? Number(found[1]) : null;
}

function parseLine(bytes: Buffer, range: ByteRange): RawRecord | null {
	let value: unknown;
	try {
		value = JSON.parse(bytes.toString('utf8', range.start + prefixLength, range.end));
	} catch {
		return null;
	}
	const { v, s, w, t, m, e, h, p, i } = (value ?? {}) as { [field: string]: unknown };
	if (!isCount(v) || !isCount(s) || typeof w !== 'string') return null;
	if (typeof t !== 'number' || typeof m !== 'number' || !Array.isArray(e)) return null;
	if (!e.every(isEntry)) return null;
	return {
		...{ v, s, w, t, m, e },
		...(isTime(h) ? { h } : {}),
		...(isTexts(p) ? { p } : {}),
		...(typeof i === 'string' ? { i } : {}),
	};
}

function isTime(value: unknown): value is LogicalTime {
	return Array.isArray(value) && value.length === 2 && value.every(isCount);
}

function isTexts(value: unknown): value is readonly string[] {
	return Array.isArray(value) && value.every((one) => typeof one === 'string');
}

function isCount(value: unknown): value is number {
	return Number.isSafeInteger(value) && (value as number) >= 0;
}

function isEntry(value: unknown): value is AnyEntry {
	return typeof (value as Partial<AnyEntry> | null)?.k === 'string';
}
