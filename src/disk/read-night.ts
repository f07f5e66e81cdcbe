// A night read from all its files, wherever they had to be put; for those who only look.

import { join } from 'node:path';
import { joinSegments, type NightRead } from '../journal/join-segments.ts';
import { readJournal } from '../journal/read-journal.ts';
import { markedNight } from './away-mark.ts';
import { type Disk, diskErrorCode } from './disk.ts';
import { parseSegmentName } from './segment-name.ts';

/** A file of a night and where it is. */
export type SegmentFile = {
	readonly path: string;
	readonly folder: string;
	readonly number: number;
};

/** `trouble`: the system's own word for why. */
type UnreadableFile = { readonly path: string; readonly trouble: string };

/** Bytes that a stopped write had left, in a file of their own. */
export type CutOff = { readonly path: string; readonly bytes: number };

/** A night as its files have it. */
export type NightFiles = {
	readonly night: NightRead;
	/** The files that were read, in the order of the night's `reads`. */
	readonly files: readonly SegmentFile[];
	/** Files that could not be read at all. */
	readonly unreadable: readonly UnreadableFile[];
	/** What was cut off the ends of its files and put beside them. */
	readonly cutOff: readonly CutOff[];
	/** It was kept elsewhere, and nothing of it is there. */
	readonly isCopyGone: boolean;
	/** Number for a file that comes after all these. */
	readonly nextNumber: number;
};

/** A name in one of a night's folders. */
export type FolderName = { readonly folder: string; readonly name: string };

/** What is in these folders, each read once; folders that cannot be read are passed over. */
export function namesIn(disk: Disk, folders: readonly string[]): FolderName[] {
	return folders.flatMap((folder) => {
		try {
			return disk.list(folder).map((name) => ({ folder, name }));
		} catch (error) {
			diskErrorCode(error);
			return [];
		}
	});
}

/** The night that has a file of this name: one of its own, what was cut off one, or its mark; null for none. */
export function nightOfName(name: string): string | null {
	const file = CUT_OFF.exec(name)?.[1] ?? name;
	return parseSegmentName(file)?.id ?? markedNight(name);
}

const CUT_OFF = /^(.+)\.torn-\d+(?:-\d+)?$/;

/** The night's files among these, oldest first. */
export function segmentFiles(names: readonly FolderName[], id: string): SegmentFile[] {
	const files = names.flatMap(({ folder, name }) => {
		const parsed = parseSegmentName(name);
		return parsed?.id === id ? [{ path: join(folder, name), folder, number: parsed.number }] : [];
	});
	return files.toSorted((one, other) => one.number - other.number);
}

/** What was cut off the night's files, among these. */
export function cutOffOf(disk: Disk, names: readonly FolderName[], id: string): CutOff[] {
	return names.flatMap(({ folder, name }) => {
		const of = CUT_OFF.exec(name)?.[1];
		if (of === undefined || parseSegmentName(of)?.id !== id) return [];
		const path = join(folder, name);
		return [{ path, bytes: sizeOf(disk, path) }];
	});
}

function sizeOf(disk: Disk, path: string): number {
	try {
		return disk.stat(path)?.sizeBytes ?? 0;
	} catch (error) {
		diskErrorCode(error);
		return 0;
	}
}

/** Reads all of a night; empty when there is no such night. */
export function readNight(disk: Disk, folders: readonly string[], id: string): NightFiles {
	const unreadable: UnreadableFile[] = [];
	const files: SegmentFile[] = [];
	const reads = [];
	let highest = 0;
	const names = namesIn(disk, folders);
	for (const file of segmentFiles(names, id)) {
		highest = Math.max(highest, file.number);
		try {
			reads.push(readJournal(disk.read(file.path), id));
			files.push(file);
		} catch (error) {
			unreadable.push({ path: file.path, trouble: diskErrorCode(error) });
		}
	}
	const cutOff = cutOffOf(disk, names, id);
	const home = folders[0] ?? '.';
	const isMarked = names.some(({ folder, name }) => folder === home && markedNight(name) === id);
	const isCopyGone = isMarked && files.every(({ folder }) => folder === home);
	const night = joinSegments(reads);
	return { night, files, unreadable, cutOff, isCopyGone, nextNumber: highest + 1 };
}
