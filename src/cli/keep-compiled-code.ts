// Lets Node keep compiled code between starts. A start without it is slower and nothing else, so whatever
// goes wrong here is no news to the user.

import { mkdirSync } from 'node:fs';
import * as nodeModule from 'node:module';
import { compileCacheFolders } from './compile-cache-folders.ts';

/** Switches the cache on when its folder is there or can be made. */
export function keepCompiledCode(environment: Readonly<Record<string, string | undefined>>): void {
	const folders = compileCacheFolders(environment);
	const last = folders.at(-1);
	if (last === undefined) return;
	try {
		for (const folder of folders) makeFolder(folder);
		nodeModule.enableCompileCache?.(last);
	} catch {
		// A home that takes no folders, as under /proc, where making them all at once would never return.
	}
}

function makeFolder(folder: string): void {
	try {
		mkdirSync(folder, 0o700);
	} catch (error) {
		if ((error as NodeJS.ErrnoException).code !== 'EEXIST') throw error;
	}
}
