// Every folder in which nights may be, and what is seen there. Apart from the other places, since most commands
// look for none.

import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { crc32 } from 'node:zlib';
import { cleanText } from '../../base/clean-text.ts';
import type { DiskFault } from '../../base/disk-fault.ts';
import { diskErrorCode } from '../../disk/disk.ts';
import { listNights, type NightSummary } from '../../disk/nights-folder.ts';
import { type FolderDoubt, folderDoubts, ownFolder } from '../../disk/own-file.ts';
import type { Paths } from '../../disk/paths.ts';
import { realDisk } from '../../disk/real-disk.ts';
import { diskFaultWords } from '../../words/disk.ts';
import type { Io } from '../io.ts';

export type NightFolders = {
	/** Where nights may be: their own folder, then where one goes on when the disk of that one fails. */
	readonly folders: readonly string[];
	/** What is to be said of them: those that are passed over, and those that are used and may not be ours alone. */
	readonly remarks: readonly DiskFault[];
};

/** Where nights may be, and which places are not trusted. */
export function nightPlaces({ nights }: Paths): NightFolders {
	// One for each user and data folder, so that nobody finds another's nights there.
	const mark = crc32(nights).toString(16).padStart(8, '0');
	const owner = process.getuid?.() ?? 'user';
	const spare = join(tmpdir(), `rackside-${owner}-${mark}`);
	try {
		const found = ownFolder(realDisk, spare);
		return {
			folders: [nights, ...(found.path === null ? [] : [found.path])],
			remarks: [
				...folderDoubts(realDisk, nights),
				...found.passedOver.map((one) => ({ code: 'folder-unusable' as const, ...one })),
			],
		};
	} catch (error) {
		const unusable: DiskFault = {
			code: 'folder-unusable',
			path: spare,
			trouble: diskErrorCode(error),
		};
		return { folders: [nights], remarks: [...folderDoubts(realDisk, nights), unusable] };
	}
}

/** What can be seen of the nights that were recorded. */
export type SeenNights = {
	readonly folders: readonly string[];
	/** The newest first. */
	readonly nights: readonly NightSummary[];
	/** Whether there may be others in a folder that cannot be listed. */
	readonly isPart: boolean;
};

/** As `SeenNights`, with the ids of those of which it was said what is wrong with them. */
export type SearchedNights = SeenNights & { readonly told: readonly string[] };

/**
 * As `seenNights`, for those who look for one night and do not list all: those that cannot be read are said as
 * well, and what is seen is then a part. Of those that are emptied or gone only the ones that may be the last night.
 */
export function searchedNights(paths: Paths, io: Io): SearchedNights {
	const seen = seenNights(paths, io);
	const newest = seen.nights.find(({ header }) => header !== null)?.id ?? '';
	const told = seen.nights.flatMap(({ id, header, lastRecords, problem }) => {
		const isLast = header === null && lastRecords.length === 0 && id > newest;
		return problem?.code === 'file-unreadable' || (problem && isLast) ? [{ id, problem }] : [];
	});
	for (const { problem } of told) io.complain(`${cleanText(diskFaultWords(problem))}\n`);
	return { ...seen, isPart: seen.isPart || told.length > 0, told: told.map(({ id }) => id) };
}

function isUnusable({ code }: FolderDoubt): boolean {
	return code === 'folder-unusable';
}

/** The nights for those who only look; folders that cannot be listed, or not be trusted, are said on standard error. */
export function seenNights(paths: Paths, io: Io): SeenNights {
	const { folders, remarks } = nightPlaces(paths);
	const { nights, unlisted } = listNights(realDisk, folders);
	// Nights that went elsewhere for it are seen all the same.
	const unusable = folderDoubts(realDisk, paths.data).filter(isUnusable);
	const told = [...unusable, ...remarks];
	const isTold = (path: string) =>
		told.some((one) => one.code === 'folder-unusable' && one.path === path);
	const said = [...told, ...unlisted.filter(({ path }) => !isTold(path))];
	for (const one of said) io.complain(`${cleanText(diskFaultWords(one))}\n`);
	return { folders, nights, isPart: unlisted.length + unusable.length > 0 };
}
