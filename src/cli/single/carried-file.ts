// Files that the program carries within itself where it is a single file: the example shows. They have a path
// inside it, as if it were a folder, which no file on the disk can have.

import { createRequire } from 'node:module';
import { join, relative, sep } from 'node:path';
import type * as sea from 'node:sea';

/** The path of a carried file. */
export function insideProgram(name: string): string {
	return join(process.execPath, name);
}

/** The bytes of the file at this path, if it is one that the program carries. */
export function carriedFile(path: string): Uint8Array | null {
	const name = relative(process.execPath, path).replaceAll(sep, '/');
	if (!name.startsWith('shows/')) return null;
	const { isSea, getAsset } = createRequire(import.meta.url)('node:sea') as typeof sea;
	if (!isSea()) return null;
	try {
		return new Uint8Array(getAsset(name));
	} catch {
		// It carries no file of that name.
		return null;
	}
}
