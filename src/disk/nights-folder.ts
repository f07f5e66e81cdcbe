// The nights that were recorded, from a short look at each: its header and its last records.

import { join } from 'node:path';
import type { DiskFault } from '../base/disk-fault.ts';
import type { Finding } from '../journal/findings.ts';
import { isLineWhole, seedOf } from '../journal/line.ts';
import { findHeader, readJournal } from '../journal/read-journal.ts';
import { decodeLine, type HeaderLine, readHeaderLine } from '../journal/read-line.ts';
import type { JournalRecord, NightHeader } from '../journal/record.ts';
import { awayMarkPath, markedNight } from './away-mark.ts';
import { type Disk, diskErrorCode } from './disk.ts';
import { markedEnd } from './end-mark.ts';
import { isIdOf } from './night-id.ts';
import {
	type FolderName,
	findingsIn,
	type NightPlace,
	namesIn,
	nightOfName,
	readNight,
	type SegmentFile,
	segmentFiles,
	type Unreadable,
} from './read-night.ts';
import { segmentFileName } from './segment-name.ts';

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
	/** The folder, other than its own, that has the newest of its records; null for none. */
	readonly away: string | null;
	/** All that is there of it. */
	readonly names: readonly FolderName[];
	/** Why the night cannot be looked at; null when it can. */
	readonly problem: DiskFault | null;
};

/** Bytes read at first from each end of a file; four times as many until enough is found. */
const lookBytes = 65_536;
/** After its end a night takes only notes of the program and what takes the end back: far fewer than these. */
const enoughRecords = 64;
/** Largest look: the longest header there can be, twice. */
const longestLookBytes = 2 * 2_097_152;

/** The nights that can be seen. */
export type NightList = {
	/** The newest first. */
	readonly nights: readonly NightSummary[];
	/** Folders that cannot be listed: there may be nights in them. */
	readonly unlisted: readonly (DiskFault & Unreadable)[];
};

/** All nights in these folders. */
export function listNights(disk: Disk, folders: readonly string[]): NightList {
	const home = folders[0] ?? '.';
	const found = namesIn(disk, folders);
	const unlisted = found.unlisted.map((one) => ({ code: 'file-unreadable' as const, ...one }));
	const byNight = Map.groupBy(found.names, ({ name }) => nightOfName(name));
	const nights = [...byNight]
		.flatMap(([id, names]) => {
			if (id === null) return [];
			const files = segmentFiles(names, id);
			if (files.length === 0 && wasOver(names)) return [];
			const seen =
				files.length === 0
					? goneNight({ id, home, names, unlisted: found.unlisted })
					: summary(disk, id, files);
			return [{ ...seen, away: awayFrom(home, { files, names }), names }];
		})
		.toSorted(newestFirst);
	return { nights, unlisted };
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

function newestFirst(one: NightSummary, other: NightSummary): number {
	const byStart = (other.startedAtMs ?? 0) - (one.startedAtMs ?? 0);
	return byStart !== 0 ? byStart : one.id < other.id ? 1 : -1;
}

/** All that is to be said of a night's files, the gravest first; reads all of it. */
export function findingsOf(
	disk: Disk,
	home: string,
	{ id, names }: Pick<NightSummary, 'id' | 'names'>,
): readonly Finding[] {
	return findingsIn(readNight(disk, { id, home, names, unlisted: [] }));
}

function awayFrom(
	home: string,
	{
		files,
		names,
	}: { readonly files: readonly SegmentFile[]; readonly names: readonly FolderName[] },
): string | null {
	// A night that came back goes on in a newer file there, and its mark is taken away.
	const isMarked = names.some(({ folder, name }) => folder === home && markedNight(name) !== null);
	const last = files.at(-1);
	if (last && last.folder !== home) return last.folder;
	return isMarked ? (files.findLast(({ folder }) => folder !== home)?.folder ?? null) : null;
}

/** What a look at its files alone tells of a night. */
type Seen = Omit<NightSummary, 'away' | 'names'>;

/** Whether what is left of a night says that its show was over: whoever put its files elsewhere misses nothing here. */
function wasOver(names: readonly FolderName[]): boolean {
	const ends = names.flatMap(({ name }) => markedEnd(name) ?? []);
	const isAway = names.some(({ name }) => markedNight(name) !== null);
	return !isAway && ends.length > 0 && ends.every(({ as }) => as === 'over');
}

/** A night of which only marks and what was put beside it are seen: gone, or where it cannot be seen. */
function goneNight({ id, home, names, unlisted: [unlisted] }: NightPlace): Seen {
	const isAway = names.some(({ folder, name }) => folder === home && markedNight(name) !== null);
	const path = isAway ? awayMarkPath({ home, id }) : join(home, segmentFileName({ id, number: 1 }));
	const [left] = names.map(({ folder, name }) => join(folder, name));
	const gone: DiskFault = isAway
		? { code: 'copy-gone', path }
		: { code: 'night-gone', path, left: left ?? path };
	return {
		...{ id, path, header: null, startedAtMs: null, lastRecords: [], sizeBytes: 0 },
		problem: unlisted ? { code: 'file-unreadable', ...unlisted } : gone,
	};
}

function summary(disk: Disk, id: string, files: readonly SegmentFile[]): Seen {
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
				const earlier = lastOf(disk, file.path, { id, size }).filter(({ s }) => s < first);
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
	const about = { id, path, header: header?.header ?? null, startedAtMs };
	return { ...about, lastRecords, sizeBytes, problem };
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
): JournalRecord[] {
	const seed = seedOf(id);
	for (let length = lookBytes; ; length *= 4) {
		const bytes = Buffer.from(disk.read(path, { start: Math.max(0, size - length), length }));
		const { lines } = readJournal(bytes, id);
		const records = lines
			.filter((line) => line.kind === 'record' && isLineWhole(bytes, line, seed))
			.map((line) => decodeLine(bytes, line));
		const isAll = length >= size || length >= longestLookBytes;
		if (isAll || records.length >= enoughRecords) return records;
	}
}
