// The user's home, which a bare container does not know.

import { homedir, tmpdir } from 'node:os';
import { isAbsolute } from 'node:path';

let isKnown = true;

/** Where the system knows no home, or one that depends on where we stand, the folder for temporary files is one from now on. */
export function ensureHome(): void {
	const home = knownHome();
	// One with the sign for what could not be decoded is refused in words of its own.
	if (isAbsolute(home) || home.includes('\ufffd')) return;
	isKnown = false;
	// Set for all, since the library that keeps preferences asks for a home by itself.
	process.env[process.platform === 'win32' ? 'USERPROFILE' : 'HOME'] = tmpdir();
}

function knownHome(): string {
	try {
		return homedir();
	} catch {
		return '';
	}
}

/** Whether this folder is in such a stand-in. */
export function isInStandInHome(folder: string): boolean {
	return !isKnown && folder.startsWith(tmpdir());
}
