// Copies of bytes that could not be read as records, put beside the night's file so that nothing is
// ever thrown away.

import type { ByteRange } from '../journal/line.ts';
import { type Disk, diskErrorCode } from './disk.ts';

/** Bytes of a night's file that are to be kept apart. */
export type AsideBytes = {
	/** The night's file. */
	readonly path: string;
	readonly bytes: Uint8Array;
	readonly range: ByteRange;
	/** `torn` for a write that was stopped, `unreadable` for a record that is wrong. */
	readonly why: 'torn' | 'unreadable';
};

/** How many names are tried when others are taken. */
const namesTried = 100;

/**
 * Copies the bytes into a file named after the offset they had, and gives its path; the one that is
 * there already when it holds just these bytes. Null when the disk does not take them.
 */
export function keepAside(disk: Disk, { path, bytes, range, why }: AsideBytes): string | null {
	const kept = bytes.subarray(range.start, range.end);
	for (let number = 1; number <= namesTried; number += 1) {
		const suffix = number === 1 ? '' : `-${number}`;
		const target = `${path}.${why}-${range.start}${suffix}`;
		try {
			if (disk.stat(target) === null) {
				return copy(disk, target, kept) ? target : null;
			}
			if (isSame(disk.read(target), kept)) return target;
		} catch (error) {
			if (diskErrorCode(error) !== 'EEXIST') return null;
		}
	}
	return null;
}

function copy(disk: Disk, path: string, bytes: Uint8Array): boolean {
	const file = disk.openNew(path);
	try {
		let written = 0;
		while (written < bytes.length) {
			const count = disk.write(file, bytes, written);
			if (count === 0) return false;
			written += count;
		}
		return true;
	} finally {
		disk.close(file);
	}
}

function isSame(one: Uint8Array, other: Uint8Array): boolean {
	return Buffer.compare(one, other) === 0;
}
