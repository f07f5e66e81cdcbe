// Who writes: this laptop and data folder, by a name of chance that is kept beside the nights, and after it
// this opening of a night, so that two programs on one folder are still told apart.

import { join } from 'node:path';
import { type Disk, diskErrorCode } from './disk.ts';
import { ensureFolder } from './folders.ts';
import { randomHex } from './random-hex.ts';
import { writeWhole } from './write-whole.ts';

const FILE = 'writer';
const FORM = /^[0-9a-f]{12}$/;

/** The writer of a night that is opened now; of a folder that takes no file, one that nobody keeps. */
export function writerId(disk: Disk, data: string): string {
	return `${laptopId(disk, data)}.${randomHex(3)}`;
}

/** The file that has the name of this laptop and data folder. */
export function writerPath(data: string): string {
	return join(data, FILE);
}

/** The name of this laptop and data folder. */
export function laptopId(disk: Disk, data: string): string {
	const path = writerPath(data);
	const known = readId(disk, path);
	if (known !== null) return known;
	const made = randomHex(6);
	try {
		ensureFolder(disk, data);
		// Another program may have made it between the two.
		return writeWhole(disk, path, Buffer.from(`${made}\n`)) ? made : (readId(disk, path) ?? made);
	} catch (error) {
		diskErrorCode(error);
		return made;
	}
}

function readId(disk: Disk, path: string): string | null {
	try {
		const id = Buffer.from(disk.read(path)).toString('latin1').trim();
		return FORM.test(id) ? id : null;
	} catch (error) {
		diskErrorCode(error);
		return null;
	}
}
