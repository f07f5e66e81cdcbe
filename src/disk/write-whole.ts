// A small file made in one go: whole, or not there.

import { type Disk, diskError, diskErrorCode } from './disk.ts';
import { randomHex } from './random-hex.ts';

type Bytes = { readonly path: string; readonly bytes: Uint8Array };

/** Makes the file with these bytes; false when the name is taken. Throws the disk's errors, having removed what it began. */
export function writeWhole(disk: Disk, path: string, bytes: Uint8Array): boolean {
	return writeNew(disk, { path, bytes }, () => {});
}

/**
 * Puts a file with these bytes in the place of what is at the path: what is there stays whole until the disk has
 * confirmed the new one. False, with nothing changed, when `isStill`, asked last, says that it is no longer what it
 * was. Throws the disk's errors, having removed what it began.
 */
export function replaceWhole(
	disk: Disk,
	{ path, bytes, isStill }: Bytes & { readonly isStill: () => boolean },
): boolean {
	// A name that nobody else has: another program may be at the same at the same moment.
	const fresh = `${path}.${randomHex(4)}.new`;
	const begun = { path: fresh, bytes };
	if (!writeNew(disk, begun, (file) => disk.syncNow(file))) throw diskError('EEXIST');
	try {
		if (isStill()) {
			disk.rename(fresh, path);
			return true;
		}
	} catch (error) {
		removeBegun(disk, fresh);
		throw error;
	}
	removeBegun(disk, fresh);
	return false;
}

function writeNew(disk: Disk, { path, bytes }: Bytes, confirm: (file: number) => void): boolean {
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
			confirm(file);
		} finally {
			disk.close(file);
		}
	} catch (error) {
		removeBegun(disk, path);
		throw error;
	}
	return true;
}

/** What went wrong before is what is to be told. */
function removeBegun(disk: Disk, path: string): void {
	try {
		disk.remove(path);
	} catch (error) {
		diskErrorCode(error);
	}
}
