// Node's own cache of compiled code, in the user's folder. A start without it is slower and nothing else, so
// whatever goes wrong here is no news to the user.

import * as nodeModule from 'node:module';
import { fs } from '../disk/node-fs.ts';
import { compileCacheFolders } from './compile-cache-folders.ts';

/** The last folders are the program's alone. */
const OWN_FOLDERS = 2;
const WRITTEN_BY_OTHERS = 0o022;

/** Has Node keep what it compiles of the files that it loads from now on, where that can be kept. */
export function keepCompiledCode(environment: Readonly<Record<string, string | undefined>>): void {
	const folders = compileCacheFolders(environment);
	const folder = folders.at(-1);
	if (folder === undefined) return;
	try {
		for (const one of folders) makeFolder(one);
		// Whoever may write there decides what this program does.
		if (!folders.slice(-OWN_FOLDERS).every(isOurs)) return;
	} catch {
		// A home that takes no folders, as under /proc, where making them all at once would never return.
		return;
	}
	// Since Node 22.8.
	nodeModule.enableCompileCache?.(folder);
}

function isOurs(folder: string): boolean {
	const found = fs.lstatSync(folder);
	const self = process.getuid?.();
	if (!found.isDirectory()) return false;
	return self === undefined || (found.uid === self && (found.mode & WRITTEN_BY_OTHERS) === 0);
}

function makeFolder(folder: string): void {
	try {
		fs.mkdirSync(folder, 0o700);
	} catch (error) {
		if ((error as NodeJS.ErrnoException).code !== 'EEXIST') throw error;
	}
}
