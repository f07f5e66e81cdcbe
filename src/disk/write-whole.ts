// A small file made in one go: whole, or not there.

import { type Disk, diskError, diskErrorCode } from './disk.ts';

/** Makes the file with these bytes; false when the name is taken. Throws the disk's errors, having removed what it began. */
export function writeWhole(disk: Disk, path: string, bytes: Uint8Array): boolean {
	let file: number;
	try {
		file = disk.openNew(path);
	} catch (error) {
		if (diskErrorCode(error) === 'EEXIST') return false;
		throw error;
	}
	try {
		try {
			for (let written = 0; written < bytes.length; ) {
				const count = disk.write(file, bytes, written);
				if (count === 0) throw diskError('EIO');
				written += count;
			}
		} finally {
			disk.close(file);
		}
	} catch (error) {
		disk.remove(path);
		throw error;
	}
	return true;
}
