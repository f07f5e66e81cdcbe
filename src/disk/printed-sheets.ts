// What the run sheets that were printed last said, by show, in one file of the data folder: a reprint can then say
// what changed.

import { join } from 'node:path';
import type { DiskFault } from '../base/disk-fault.ts';
import type { Disk } from './disk.ts';
import { changeSmallFile, damaged, readSmallFile, type SmallFile } from './small-file.ts';

/** A printing: its number among those of its show that said something else, and what it said. */
export type PrintedSheet = {
	/** The path by which its show is known. */
	readonly show: string;
	readonly version: number;
	readonly hash: string;
	/** Milliseconds since 1970. */
	readonly printedAtMs: number;
	readonly songs: readonly PrintedSong[];
};

export type PrintedSong = {
	readonly key: string;
	readonly name: string;
	readonly clock: string;
	readonly said: readonly string[];
};

/** Where they are kept. */
export type SheetsPlace = {
	readonly disk: Disk;
	/** The data folder. */
	readonly folder: string;
};

/** The shows whose last sheet is kept, those printed last. */
const MOST_SHOWS = 40;

/** The file that they are in. */
export function printedSheetsPath(folder: string): string {
	return join(folder, 'sheets.json');
}

/** The last printing of a show; null where there is none, or where it cannot be read, which `fault` says. */
export function lastPrinted(
	place: SheetsPlace,
	show: string,
): { readonly sheet: PrintedSheet | null; readonly fault: DiskFault | null } {
	const { value: sheets, problem: fault } = readSmallFile(fileOf(place));
	return { sheet: sheets.find((one) => one.show === show) ?? null, fault };
}

/** Keeps what was printed in place of that show's last one; says when that cannot be. */
export function keepPrinted(place: SheetsPlace, sheet: PrintedSheet): DiskFault | null {
	return changeSmallFile(fileOf(place), (before) => {
		const others = before.filter(({ show }) => show !== sheet.show);
		return { sheets: [sheet, ...others].slice(0, MOST_SHOWS) };
	});
}

function fileOf({ disk, folder }: SheetsPlace): SmallFile<readonly PrintedSheet[]> {
	return {
		disk,
		path: printedSheetsPath(folder),
		largestBytes: 4_000_000,
		none: [],
		valueOf: (stored) => listOf(fieldsOf(stored).sheets).map(sheetOf),
	};
}

function sheetOf(stored: unknown): PrintedSheet {
	const { show, version, hash, printedAtMs, songs } = fieldsOf(stored);
	return {
		show: textOf(show),
		version: numberOf(version),
		hash: textOf(hash),
		printedAtMs: numberOf(printedAtMs),
		songs: listOf(songs).map(songOf),
	};
}

function songOf(stored: unknown): PrintedSong {
	const { key, name, clock, said } = fieldsOf(stored);
	return {
		key: textOf(key),
		name: textOf(name),
		clock: textOf(clock),
		said: listOf(said).map(textOf),
	};
}

function fieldsOf(value: unknown): Readonly<Record<string, unknown>> {
	if (typeof value !== 'object' || value === null) throw damaged();
	return value as Readonly<Record<string, unknown>>;
}

function listOf(value: unknown): readonly unknown[] {
	if (!Array.isArray(value)) throw damaged();
	return value;
}

function textOf(value: unknown): string {
	if (typeof value !== 'string') throw damaged();
	return value;
}

function numberOf(value: unknown): number {
	if (typeof value !== 'number') throw damaged();
	return value;
}
