// Writing what a user asked for as a file of their own: never over something that is there unless
// told so, never through a link, never half.

import { join } from 'node:path';
import type { DiskFault } from '../base/disk-fault.ts';
import { type Disk, diskErrorCode } from './disk.ts';
import { replaceWhole, writeWhole } from './write-whole.ts';

/** A file to be written. */
export type ExportFile = {
	readonly folder: string;
	/** Name of the file, its extension included. */
	readonly name: string;
	readonly text: string | Uint8Array;
	/** Whether the name is ours, so that a number may be added when it is taken. */
	readonly isDefaultName: boolean;
	/** Whether a plain file of that name may be replaced. */
	readonly isForced: boolean;
};

/** Where it was written, or why not. */
export type Exported =
	| { readonly path: string }
	| { readonly fault: Extract<DiskFault, { code: 'file-exists' | 'export-failed' }> };

const numbersTried = 999;

/**
 * Writes the file whole or not at all. Faults: `file-exists` for a name that is taken, by whatever
 * it may be; `export-failed` when the disk does not take it.
 */
export function writeExport(disk: Disk, file: ExportFile): Exported {
	const path = join(file.folder, file.name);
	try {
		if (file.isForced) return replaceFile(disk, path, file.text);
		for (let number = 1; number <= numbersTried; number += 1) {
			const target = number === 1 ? path : join(file.folder, numbered(file.name, number));
			if (disk.stat(target) === null && writeWhole(disk, target, bytesOf(file.text)))
				return { path: target };
			if (!file.isDefaultName) break;
		}
		return { fault: { code: 'file-exists', path, kind: disk.stat(path)?.kind ?? null } };
	} catch (error) {
		return { fault: { code: 'export-failed', path, trouble: diskErrorCode(error) } };
	}
}

function replaceFile(disk: Disk, path: string, text: string | Uint8Array): Exported {
	const found = disk.stat(path);
	if (found && found.kind !== 'file')
		return { fault: { code: 'file-exists', path, kind: found.kind } };
	// By a new name, which also leaves alone what else leads to the old one.
	replaceWhole(disk, { path, bytes: bytesOf(text), isStill: () => true });
	return { path };
}

function bytesOf(text: string | Uint8Array): Uint8Array {
	return typeof text === 'string' ? Buffer.from(text) : text;
}

function numbered(name: string, number: number): string {
	const dot = name.lastIndexOf('.');
	return dot > 0 ? `${name.slice(0, dot)}-${number}${name.slice(dot)}` : `${name}-${number}`;
}
