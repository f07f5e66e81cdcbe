// What the run sheets that were printed last said, by show, in one file of the data folder: a reprint can then say
// what changed. A file that is not ours or cannot be understood is never written over.

import { join } from 'node:path';
import type { DiskFault } from '../base/disk-fault.ts';
import { type Disk, diskError, diskErrorCode } from './disk.ts';
import { ensureFolder } from './folders.ts';
import { whyNotOwn } from './own-file.ts';
import { writeWhole } from './write-whole.ts';

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

/** Longer is none of ours. */
const LARGEST_BYTES = 4_000_000;
/** The shows whose last sheet is kept, those printed last. */
const MOST_SHOWS = 40;

/** The file that they are in. */
export function printedSheetsPath(folder: string): string {
	return join(folder, 'sheets.json');
}

/** The last printing of a show; null where there is none, or where it cannot be read, which `fault` says. */
export function lastPrinted(
	{ disk, folder }: SheetsPlace,
	show: string,
): { readonly sheet: PrintedSheet | null; readonly fault: DiskFault | null } {
	const path = printedSheetsPath(folder);
	try {
		return { sheet: sheetsIn(disk, path).find((one) => one.show === show) ?? null, fault: null };
	} catch (error) {
		return { sheet: null, fault: { code: 'file-unreadable', path, trouble: troubleOf(error) } };
	}
}

/** Keeps what was printed in place of that show's last one; says when that cannot be. */
export function keepPrinted({ disk, folder }: SheetsPlace, sheet: PrintedSheet): DiskFault | null {
	const path = printedSheetsPath(folder);
	try {
		ensureFolder(disk, folder);
		const others = sheetsIn(disk, path).filter(({ show }) => show !== sheet.show);
		const sheets = [sheet, ...others].slice(0, MOST_SHOWS);
		const fresh = `${path}.new`;
		if (disk.stat(fresh) !== null) disk.remove(fresh);
		if (!writeWhole(disk, fresh, Buffer.from(`${JSON.stringify({ sheets })}\n`))) {
			throw diskError('EEXIST');
		}
		disk.rename(fresh, path);
		return null;
	} catch (error) {
		return { code: 'export-failed', path, trouble: troubleOf(error) };
	}
}

function troubleOf(error: unknown): string {
	return error instanceof SyntaxError ? 'DAMAGED' : diskErrorCode(error);
}

function sheetsIn(disk: Disk, path: string): readonly PrintedSheet[] {
	const stat = disk.stat(path);
	if (stat === null) return [];
	const trouble = whyNotOwn(disk, path, 'file');
	if (trouble !== null) throw diskError(trouble);
	if (stat.sizeBytes > LARGEST_BYTES) throw diskError('DAMAGED');
	const stored: unknown = JSON.parse(Buffer.from(disk.read(path)).toString('utf8'));
	return listOf(fieldsOf(stored).sheets).map((one) => {
		const { show, version, hash, printedAtMs, songs } = fieldsOf(one);
		return {
			show: textOf(show),
			version: numberOf(version),
			hash: textOf(hash),
			printedAtMs: numberOf(printedAtMs),
			songs: listOf(songs).map(songOf),
		};
	});
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
	if (typeof value !== 'object' || value === null) throw diskError('DAMAGED');
	return value as Readonly<Record<string, unknown>>;
}

function listOf(value: unknown): readonly unknown[] {
	if (!Array.isArray(value)) throw diskError('DAMAGED');
	return value;
}

function textOf(value: unknown): string {
	if (typeof value !== 'string') throw diskError('DAMAGED');
	return value;
}

function numberOf(value: unknown): number {
	if (typeof value !== 'number') throw diskError('DAMAGED');
	return value;
}
