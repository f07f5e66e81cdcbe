// Every folder in which nights may be. Apart from the other places, since most commands look for none.

import { createHash } from 'node:crypto';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { DiskFault } from '../base/disk-fault.ts';
import { diskErrorCode } from '../disk/disk.ts';
import { ownFolder } from '../disk/own-file.ts';
import type { Paths } from '../disk/paths.ts';
import { realDisk } from '../disk/real-disk.ts';

export type NightFolders = {
	/** Where nights may be: their own folder, then where one goes on when the disk of that one fails. */
	readonly folders: readonly string[];
	/** Folders of such a name that somebody else made: nothing is read from them. */
	readonly passedOver: readonly DiskFault[];
};

/** Where nights may be, and which places are not trusted. */
export function nightPlaces({ nights }: Paths): NightFolders {
	// One for each user and data folder, so that nobody finds another's nights there.
	const mark = createHash('sha256').update(nights).digest('hex').slice(0, 8);
	const owner = process.getuid?.() ?? 'user';
	try {
		const found = ownFolder(realDisk, join(tmpdir(), `rackside-${owner}-${mark}`));
		return {
			folders: [nights, ...(found.path === null ? [] : [found.path])],
			passedOver: found.passedOver.map((one) => ({ code: 'folder-unusable', ...one })),
		};
	} catch (error) {
		diskErrorCode(error);
		return { folders: [nights], passedOver: [] };
	}
}

/** The folders alone, for those who only look. */
export function nightFolders(paths: Paths): readonly string[] {
	return nightPlaces(paths).folders;
}
