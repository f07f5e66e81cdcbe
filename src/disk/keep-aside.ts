// Copies of bytes that could not be read as records, put beside the night's file so that nothing is
// ever thrown away.

import type { ByteRange } from '../journal/line.ts';
import { type Disk, diskErrorCode } from './disk.ts';
import { writeWhole } from './write-whole.ts';

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
 * there already when it holds just these bytes; or the code of the error with which the disk refused them.
 */
export function keepAside(
	disk: Disk,
	{ path, bytes, range, why }: AsideBytes,
): { readonly path: string } | { readonly code: string } {
	const kept = bytes.subarray(range.start, range.end);
	for (let number = 1; number <= namesTried; number += 1) {
		const suffix = number === 1 ? '' : `-${number}`;
		const target = `${path}.${why}-${range.start}${suffix}`;
		try {
			if (disk.stat(target) === null) {
				if (writeWhole(disk, target, kept)) return { path: target };
			} else if (isSame(disk.read(target), kept)) return { path: target };
		} catch (error) {
			return { code: diskErrorCode(error) };
		}
	}
	return { code: 'EEXIST' };
}

function isSame(one: Uint8Array, other: Uint8Array): boolean {
	return Buffer.compare(one, other) === 0;
}
