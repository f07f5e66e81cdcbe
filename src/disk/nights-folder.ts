// The nights that were recorded, from a short look at each: its header and its last records.

import type { DiskFault } from '../base/disk-fault.ts';
import { isLineWhole, seedOf } from '../journal/line.ts';
import { findHeader, readJournal } from '../journal/read-journal.ts';
import { decodeLine, type HeaderLine, readHeaderLine } from '../journal/read-line.ts';
import type { JournalRecord, NightHeader } from '../journal/record.ts';
import { awayMarkPath, markedNight } from './away-mark.ts';
import { type Disk, diskErrorCode } from './disk.ts';
import { isIdOf } from './night-id.ts';
import { cutOffOf, namesIn, nightOfName, type SegmentFile, segmentFiles } from './read-night.ts';
import { parseSegmentName } from './segment-name.ts';

/** Bytes that a stopped write left at the end of a night; `keptIn`: null while they are there still. */
export type Torn = {
	readonly bytes: number;
	readonly isZero: boolean;
	readonly keptIn: string | null;
};

/** What a short look at a night tells. */
export type NightSummary = {
	readonly id: string;
	/** The file that the night went on in last. */
	readonly path: string;
	/** Null when it cannot be read. */
	readonly header: NightHeader | null;
	/** Wall clock; null with the header. */
	readonly startedAtMs: number | null;
	/** The last records, oldest first: enough to tell whether the night was ended, not always all. */
	readonly lastRecords: readonly JournalRecord[];
	readonly sizeBytes: number;
	/** What was cut off its end, there still or in a file beside it; none for a night that is whole. */
	readonly cutOff: readonly Torn[];
	/** Why the night cannot be looked at; null when it can. */
	readonly problem: DiskFault | null;
};

/** Bytes read at first from each end of a file; four times as many until enough is found. */
const lookBytes = 65_536;
/** After its end a night takes only notes of the program and what takes the end back: far fewer than these. */
const enoughRecords = 64;
/** Largest look: the longest header there can be, twice. */
const longestLookBytes = 2 * 2_097_152;

/** All nights in these folders, the newest first. */
export function listNights(disk: Disk, folders: readonly string[]): NightSummary[] {
	const home = folders[0] ?? '.';
	const byNight = Map.groupBy(namesIn(disk, folders), ({ name }) => nightOfName(name));
	return [...byNight]
		.flatMap(([id, names]) => {
			const isThere = names.some(({ name }) => parseSegmentName(name) ?? markedNight(name));
			if (id === null || !isThere) return [];
			const kept = cutOffOf(disk, names, id).map(({ path: keptIn, bytes }) => ({
				...{ bytes, isZero: false },
				keptIn,
			}));
			const files = segmentFiles(names, id);
			return [files.length === 0 ? goneNight(id, home) : summary(disk, id, { files, kept })];
		})
		.toSorted(newestFirst);
}

/** The newest of these nights that was made with this show file and is not finished. */
export function unfinishedNight(
	nights: readonly NightSummary[],
	wanted: {
		readonly showPath: string;
		readonly isRehearsal: boolean;
		readonly isFinished: (night: NightSummary) => boolean;
	},
): NightSummary | null {
	const found = nights.find(
		(night) =>
			night.header?.showPath === wanted.showPath &&
			night.header.isRehearsal === wanted.isRehearsal &&
			!wanted.isFinished(night),
	);
	return found ?? null;
}

/** The newest of these nights that lost its header, so that only its id tells its show and when it began. */
export function headlessNight(
	nights: readonly NightSummary[],
	wanted: {
		readonly title: string;
		/** Only one that began later than the night with this id; empty for any. */
		readonly after: string;
		readonly isFinished: (night: NightSummary) => boolean;
	},
): NightSummary | null {
	const found = nights
		.filter(({ id, header }) => header === null && id > wanted.after && isIdOf(id, wanted.title))
		.toSorted((one, other) => (one.id < other.id ? 1 : -1))
		.find((night) => night.lastRecords.length > 0 && !wanted.isFinished(night));
	return found ?? null;
}

/** The newest of these nights of which nothing can be read, so that nobody can say whether it is finished. */
export function unreadableNight(
	nights: readonly NightSummary[],
	{ title, after }: { readonly title: string; readonly after: string },
): NightSummary | null {
	const found = nights
		.filter(({ id, header }) => header === null && id > after && isIdOf(id, title))
		.toSorted((one, other) => (one.id < other.id ? 1 : -1))
		.find((night) => night.lastRecords.length === 0);
	return found ?? null;
}

/** Why nobody can say which nights are in this folder; null where that can be said, or there is none. */
export function folderTrouble(disk: Disk, path: string): DiskFault | null {
	try {
		disk.list(path);
		return null;
	} catch (error) {
		const trouble = diskErrorCode(error);
		const isNone = trouble === 'ENOENT' || trouble === 'ENOTDIR';
		return isNone ? null : { code: 'file-unreadable', path, trouble };
	}
}

function newestFirst(one: NightSummary, other: NightSummary): number {
	const byStart = (other.startedAtMs ?? 0) - (one.startedAtMs ?? 0);
	return byStart !== 0 ? byStart : one.id < other.id ? 1 : -1;
}

/** A night of which only the mark is left that it was kept elsewhere. */
function goneNight(id: string, home: string): NightSummary {
	const path = awayMarkPath({ home, id });
	return {
		...{ id, path, header: null, startedAtMs: null, lastRecords: [], sizeBytes: 0, cutOff: [] },
		problem: { code: 'copy-gone', path },
	};
}

function summary(
	disk: Disk,
	id: string,
	{ files, kept }: { readonly files: readonly SegmentFile[]; readonly kept: readonly Torn[] },
): NightSummary {
	let torn: Torn | null = null;
	const path = files.at(-1)?.path ?? '';
	let problem: DiskFault | null = null;
	let header: HeaderLine | null = null;
	let lastRecords: readonly JournalRecord[] = [];
	let sizeBytes = 0;
	for (const file of files.toReversed()) {
		try {
			const size = disk.stat(file.path)?.sizeBytes ?? 0;
			sizeBytes += size;
			header = firstHeader(disk, file.path, size) ?? header;
			if (lastRecords.length < enoughRecords) {
				const first = lastRecords[0]?.s ?? Number.POSITIVE_INFINITY;
				const end = lastOf(disk, file.path, { id, size });
				if (file === files.at(-1)) torn = end.torn;
				const earlier = end.records.filter(({ s }) => s < first);
				lastRecords = [...earlier, ...lastRecords];
			}
		} catch (error) {
			problem = { code: 'file-unreadable', path: file.path, trouble: diskErrorCode(error) };
		}
	}
	if (header === null) {
		const isEmptied = lastRecords.length === 0;
		problem ??= isEmptied
			? { code: 'night-empty', path, bytes: sizeBytes }
			: { code: 'beginning-unreadable', path };
	}
	const startedAtMs = header?.record.t ?? null;
	const cutOff = torn === null ? kept : [...kept, torn];
	const about = { id, path, header: header?.header ?? null, startedAtMs };
	return { ...about, lastRecords, sizeBytes, cutOff, problem };
}

function firstHeader(disk: Disk, path: string, size: number): HeaderLine | null {
	for (let length = lookBytes; ; length *= 4) {
		const bytes = Buffer.from(disk.read(path, { start: 0, length }));
		const end = bytes.indexOf(0x0a);
		if (end >= 0) {
			const found = readHeaderLine(bytes, { start: 0, end }) ?? findHeader(bytes);
			// It stands there twice, and the second may be whole.
			if (found !== null) return found;
		}
		if (length >= size || length >= longestLookBytes) return null;
	}
}

function lastOf(
	disk: Disk,
	path: string,
	{ id, size }: { readonly id: string; readonly size: number },
): { readonly records: JournalRecord[]; readonly torn: Torn | null } {
	const seed = seedOf(id);
	for (let length = lookBytes; ; length *= 4) {
		const bytes = Buffer.from(disk.read(path, { start: Math.max(0, size - length), length }));
		const { lines, torn } = readJournal(bytes, id);
		const records = lines
			.filter((line) => line.kind === 'record' && isLineWhole(bytes, line, seed))
			.map((line) => decodeLine(bytes, line));
		const isAll = length >= size || length >= longestLookBytes;
		if (!isAll && records.length < enoughRecords) continue;
		const tail = torn && bytes.subarray(torn.start, torn.end);
		const isZero = tail?.every((byte) => byte === 0) ?? false;
		return { records, torn: tail && { bytes: tail.length, isZero, keptIn: null } };
	}
}
