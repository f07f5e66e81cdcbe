// The user's folder for compiled code, and Node's own cache in it. A start without them is slower and
// nothing else, so whatever goes wrong here is no news to the user.

import { mkdirSync } from 'node:fs';
import * as nodeModule from 'node:module';
import { compileCacheFolders } from './compile-cache-folders.ts';

type Environment = Readonly<Record<string, string | undefined>>;

/** The folder, made where it was not there; null where it cannot be made. */
export function compiledCodeFolder(environment: Environment): string | null {
	const folders = compileCacheFolders(environment);
	try {
		for (const folder of folders) makeFolder(folder);
	} catch {
		// A home that takes no folders, as under /proc, where making them all at once would never return.
		return null;
	}
	return folders.at(-1) ?? null;
}

/** Has Node keep there what it compiles of the files that it loads from now on. */
export function keepCompiledCode(environment: Environment): void {
	const folder = compiledCodeFolder(environment);
	if (folder !== null) nodeModule.enableCompileCache?.(folder);
}

function makeFolder(folder: string): void {
	try {
		mkdirSync(folder, 0o700);
	} catch (error) {
		if ((error as NodeJS.ErrnoException).code !== 'EEXIST') throw error;
	}
}
