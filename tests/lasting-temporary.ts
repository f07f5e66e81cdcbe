// Where tests and campaigns put the folders that they make.

import { existsSync } from 'node:fs';
import { isWipedByRestart } from '../src/disk/paths.ts';

/** Outlives a restart of the machine (Filesystem Hierarchy Standard 3.0, from memory). */
const LASTING = '/var/tmp';

/** This folder for temporary files, or one that a restart leaves alone, where there is one. */
export function lastingTemporary(folder: string): string {
	return isWipedByRestart(folder, folder) && existsSync(LASTING) ? LASTING : folder;
}
