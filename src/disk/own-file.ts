// Whether something under a name that others could guess is ours: of a folder that all users share, or of a home
// that somebody else wrote into, nothing is read, followed or written before it was asked here.

import type { DiskFault } from '../base/disk-fault.ts';
import { type Disk, diskErrorCode } from './disk.ts';
import { type NotAFile, whyNoFile } from './file-kind.ts';

/** Others than the owner may write. */
const WRITTEN_BY_OTHERS = 0o022;

/** Codes of our own, beside the system's: see `diskTrouble`. */
export type Distrust = NotAFile | 'ENOTDIR' | 'NOT_OURS' | 'OPEN_TO_OTHERS';

/**
 * Why what is at the path is not used: a link, something else than a plain file or folder, another user's, or
 * open for others to write. Null where it is ours, or where nothing is. Throws the disk's errors.
 */
export function whyNotOwn(disk: Disk, path: string, wanted: 'file' | 'folder'): Distrust | null {
	const found = disk.stat(path);
	if (found === null) return null;
	const { kind, owner, mode } = found;
	if (kind === 'link') return 'ELOOP';
	if (kind !== wanted && wanted === 'folder') return 'ENOTDIR';
	if (kind !== wanted) return whyNoFile(kind);
	if (owner !== null && owner !== process.getuid?.()) return 'NOT_OURS';
	return mode !== null && (mode & WRITTEN_BY_OTHERS) !== 0 ? 'OPEN_TO_OTHERS' : null;
}

/** What is to be said of a folder that its owner named; see `DiskFault`. */
export type FolderDoubt = {
	readonly code: 'folder-unusable' | 'folder-doubtful';
	readonly path: string;
	readonly trouble: string;
};

/** Why what is in such a folder may not be ours; it is theirs who named it, so it is used all the same where it can be. */
export function folderDoubts(disk: Disk, path: string): FolderDoubt[] {
	try {
		const trouble = whyNotOwn(disk, path, 'folder');
		// Behind a link: what it leads to, be that nothing or a file.
		const isLink = trouble === 'ELOOP';
		const isToFolder = isLink && disk.stat(`${path}/.`) !== null;
		const behind = isToFolder ? whyNotOwn(disk, `${path}/.`, 'folder') : null;
		return [isLink && !isToFolder ? 'ENOTDIR' : trouble, behind]
			.filter((one) => one !== null)
			.map((one) => ({
				code: one === 'ENOTDIR' ? 'folder-unusable' : 'folder-doubtful',
				path,
				trouble: one,
			}));
	} catch (error) {
		return [{ code: 'folder-unusable', path, trouble: diskErrorCode(error) }];
	}
}

type TakenPlace = Extract<DiskFault, { code: 'place-taken' }>;

/** What stands in the places of these small files and is none of ours; nothing is said of a disk that cannot be asked. */
export function takenPlaces(
	disk: Disk,
	files: readonly Pick<TakenPlace, 'path' | 'holds'>[],
): TakenPlace[] {
	return files.flatMap(({ path, holds }): TakenPlace[] => {
		try {
			const trouble = whyNotOwn(disk, path, 'file');
			// Lock and log are written over or on; drafts alone are believed.
			const isUsed = trouble === 'OPEN_TO_OTHERS' && holds !== 'drafts';
			return trouble === null || isUsed ? [] : [{ code: 'place-taken', path, trouble, holds }];
		} catch (error) {
			diskErrorCode(error);
			return [];
		}
	});
}

/** So many names are tried before there is no such folder. */
const MOST_NAMES = 9;

export type OwnFolder = {
	/** A folder of ours, there or yet to be made; null where every name is taken by others. */
	readonly path: string | null;
	/** The names that were passed over, and why. */
	readonly passedOver: readonly { readonly path: string; readonly trouble: Distrust }[];
};

/** The first of the names `path`, `path-2`, ... that is ours or free. */
export function ownFolder(disk: Disk, path: string): OwnFolder {
	const passedOver: { path: string; trouble: Distrust }[] = [];
	for (let number = 1; number <= MOST_NAMES; number += 1) {
		const name = number === 1 ? path : `${path}-${number}`;
		const trouble = whyNotOwn(disk, name, 'folder');
		if (trouble === null) return { path: name, passedOver };
		passedOver.push({ path: name, trouble });
	}
	return { path: null, passedOver };
}
