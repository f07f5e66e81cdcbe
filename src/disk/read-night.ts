// A night read from all its files, wherever they had to be put; for those who only look.

import { join } from 'node:path';
import { type Finding, nightFindings } from '../journal/findings.ts';
import { joinSegments, type NightRead } from '../journal/join-segments.ts';
import { readJournal } from '../journal/read-journal.ts';
import { markedNight } from './away-mark.ts';
import { type Disk, diskErrorCode } from './disk.ts';
import { draftedNight } from './draft-file.ts';
import { markedEnd } from './end-mark.ts';
import { whyNotOwn } from './own-file.ts';
import { parseSegmentName } from './segment-name.ts';

/** A file of a night and where it is. */
export type SegmentFile = {
	readonly path: string;
	readonly folder: string;
	readonly number: number;
};

/** A file or folder; `trouble`: the system's own word for why. */
export type Unreadable = { readonly path: string; readonly trouble: string };

/** Bytes that a stopped write had left, in a file of their own; null where nobody can say how many. */
type CutOff = { readonly path: string; readonly bytes: number | null; readonly isZero: boolean };

/** A night as its files have it. */
export type NightFiles = {
	readonly night: NightRead;
	/** The files that were read, in the order of the night's `reads`. */
	readonly files: readonly SegmentFile[];
	/** Files that could not be read at all, and folders that could not be listed: what is in them nobody can say. */
	readonly unreadable: readonly Unreadable[];
	/** Whether records may be missing for that: what is here is then not to be gone on with, or numbers were used twice. */
	readonly isPart: boolean;
	/** Files that were read and that others made, or may write into. */
	readonly doubtful: readonly Unreadable[];
	/** What was cut off the ends of its files and put beside them. */
	readonly cutOff: readonly CutOff[];
	/** It was kept elsewhere, and nothing of it is there. */
	readonly isCopyGone: boolean;
	/** How many records it had at its end when it was left, beside those that can be found here. */
	readonly lostAtEnd: number;
	/** Number for a file that comes after all these. */
	readonly nextNumber: number;
};

/** A name in one of a night's folders. */
export type FolderName = { readonly folder: string; readonly name: string };

/** What is in some folders. */
export type FolderNames = {
	readonly names: readonly FolderName[];
	/** Folders that are there and cannot be listed: never to be taken for empty. */
	readonly unlisted: readonly Unreadable[];
};

/** Codes with which a system says that there is no such folder. */
const NOT_THERE = new Set(['ENOENT', 'ENOTDIR']);

/** What is in these folders, each read once. */
export function namesIn(disk: Disk, folders: readonly string[]): FolderNames {
	const unlisted: Unreadable[] = [];
	const names = folders.flatMap((folder) => {
		try {
			return disk.list(folder).map((name) => ({ folder, name }));
		} catch (error) {
			const trouble = diskErrorCode(error);
			if (!NOT_THERE.has(trouble)) unlisted.push({ path: folder, trouble });
			return [];
		}
	});
	return { names, unlisted };
}

/** The night that has a file of this name: one of its own, what was put beside one, or a mark of it; null for none. */
export function nightOfName(name: string): string | null {
	const file = PUT_ASIDE.exec(name)?.[1] ?? name;
	const id = parseSegmentName(file)?.id ?? markedNight(name) ?? markedEnd(name)?.id;
	return id ?? draftedNight(name);
}

const PUT_ASIDE = /^(.+)\.(torn|unreadable)-\d+(?:-\d+)?$/;

/** The night's files among these, oldest first. */
export function segmentFiles(names: readonly FolderName[], id: string): SegmentFile[] {
	const files = names.flatMap(({ folder, name }) => {
		const parsed = parseSegmentName(name);
		return parsed?.id === id ? [{ path: join(folder, name), folder, number: parsed.number }] : [];
	});
	return files.toSorted((one, other) => one.number - other.number);
}

/** What was cut off the night's files, among these. */
function cutOffOf(disk: Disk, names: readonly FolderName[], id: string): CutOff[] {
	return names.flatMap(({ folder, name }): CutOff[] => {
		const [, of = '', why] = PUT_ASIDE.exec(name) ?? [];
		if (why !== 'torn' || parseSegmentName(of)?.id !== id) return [];
		const path = join(folder, name);
		try {
			const bytes = disk.read(path);
			return [{ path, bytes: bytes.length, isZero: bytes.every((byte) => byte === 0) }];
		} catch (error) {
			diskErrorCode(error);
			return [{ path, bytes: null, isZero: false }];
		}
	});
}

/** A night, and what is in the folders where its files may be; `home` is its own. */
export type NightPlace = FolderNames & { readonly id: string; readonly home: string };

/** Reads all of a night; empty when there is no such night. */
export function readNight(disk: Disk, { id, home, names, unlisted }: NightPlace): NightFiles {
	const doubtful: Unreadable[] = [];
	const unreadable: Unreadable[] = [...unlisted];
	const files: SegmentFile[] = [];
	const reads = [];
	let highest = 0;
	for (const file of segmentFiles(names, id)) {
		highest = Math.max(highest, file.number);
		try {
			reads.push(readJournal(disk.read(file.path), id));
			files.push(file);
			const trouble = whyDoubtful(disk, file.path);
			if (trouble !== null) doubtful.push({ path: file.path, trouble });
		} catch (error) {
			unreadable.push({ path: file.path, trouble: diskErrorCode(error) });
		}
	}
	const cutOff = cutOffOf(disk, names, id);
	const isMarked = names.some(({ folder, name }) => folder === home && markedNight(name) === id);
	const isAway = isMarked && files.every(({ folder }) => folder === home);
	const night = joinSegments(reads);
	const left = names.map(({ name }) => markedEnd(name)).filter((end) => end?.id === id);
	const leftAt = Math.max(0, ...left.map((end) => end?.seq ?? 0));
	// Where nothing says that a part was put into another folder, none is missed in one that cannot be listed.
	const isPart =
		unreadable.length > unlisted.length ||
		unlisted.some(({ path }) => path === home) ||
		(isAway && unlisted.length > 0);
	// What is in a file that cannot be read is not lost yet, nor is it known.
	const isKnown = !isPart && files.length > 0;
	return {
		night,
		files,
		unreadable,
		isPart,
		doubtful,
		cutOff,
		isCopyGone: isAway && unlisted.length === 0,
		lostAtEnd: isKnown ? Math.max(0, leftAt - lastNumber(night)) : 0,
		nextNumber: highest + 1,
	};
}

/** The number of the last record that there was for certain, be it still whole or not. */
export function lastNumber({ lastSeq, reads }: NightRead): number {
	return lastSeq + (reads.at(-1)?.quarantined?.lost ?? 0);
}

function whyDoubtful(disk: Disk, path: string): string | null {
	try {
		return whyNotOwn(disk, path, 'file');
	} catch (error) {
		return diskErrorCode(error);
	}
}

/** All that is to be said of a night's files, the gravest first; empty for a night in good order. */
export function findingsIn(files: NightFiles): Finding[] {
	const of = (code: 'file-unreadable' | 'file-doubtful', isWarning: boolean) => {
		return (one: Unreadable): Finding => ({ code, isWarning, ...one });
	};
	const gone: Finding[] = files.isCopyGone ? [{ code: 'copy-gone', isWarning: true }] : [];
	const count = files.lostAtEnd;
	const lost: Finding[] = count > 0 ? [{ code: 'steps-not-kept', isWarning: true, count }] : [];
	const cutOff = files.cutOff.map(
		({ path: keptIn, ...one }): Finding => ({
			...{ code: 'tail-cut-off', isWarning: false },
			...one,
			keptIn,
		}),
	);
	return [
		...files.unreadable.map(of('file-unreadable', true)),
		...gone,
		...lost,
		...nightFindings(files.night),
		...files.doubtful.map(of('file-doubtful', false)),
		...cutOff,
	];
}
