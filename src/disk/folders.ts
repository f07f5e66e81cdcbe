// Making folders. One level at a time, since making a whole path at once never returns in some of the
// system's own folders; and only what is missing, leaving alone what others made.

import { dirname, resolve } from 'node:path';
import type { DiskFault } from '../base/disk-fault.ts';
import { type Disk, diskError, diskErrorCode } from './disk.ts';

/** Deepest path that is made; a longer one is a mistake. */
const deepest = 64;

/**
 * Makes the folder and those above it that are missing, each for its owner alone. Gives
 * `folder-unusable` when that cannot be, null when the folder is there.
 */
export function makeFolders(disk: Disk, path: string): DiskFault | null {
	try {
		ensureFolder(disk, path);
		return null;
	} catch (error) {
		return { code: 'folder-unusable', path, trouble: diskErrorCode(error) };
	}
}

/** As `makeFolders`, but throws the disk's error. */
export function ensureFolder(disk: Disk, path: string): void {
	const missing: string[] = [];
	for (let at = resolve(path); disk.stat(at) === null; at = dirname(at)) {
		missing.unshift(at);
		if (missing.length > deepest || dirname(at) === at) throw diskError('ENOENT');
	}
	for (const folder of missing) makeOne(disk, folder);
	const kind = disk.stat(resolve(path))?.kind;
	// What a link leads to shows itself at first use.
	if (kind !== 'folder' && kind !== 'link') throw diskError('ENOTDIR');
}

/** The outermost part of the path that lets nobody look at what is in it; the path itself where none is in the way. */
export function whereShut(disk: Disk, path: string): string {
	const above = dirname(path);
	try {
		disk.stat(path);
		return path;
	} catch (error) {
		diskErrorCode(error);
		return above === path ? path : whereShut(disk, above);
	}
}

function makeOne(disk: Disk, path: string): void {
	try {
		disk.makeFolder(path);
	} catch (error) {
		// Another copy of the program may have been quicker.
		if (diskErrorCode(error) !== 'EEXIST') throw error;
	}
}
