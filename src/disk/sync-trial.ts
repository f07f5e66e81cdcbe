// How long this disk takes to confirm a small record, tried where nights are kept and as they are written.

import { join } from 'node:path';
import type { DiskFault } from '../base/disk-fault.ts';
import { type Disk, diskErrorCode } from './disk.ts';
import { makeFolders } from './folders.ts';

/** Where it is tried, and by which clock. */
export type SyncTrial = {
	readonly disk: Disk;
	readonly folder: string;
	/** Milliseconds that never go back. */
	readonly nowMs: () => number;
	/** Sets the file's name apart from that of another copy. */
	readonly mark: string;
	readonly appends: number;
};

/** What one key writes, about. */
const BYTES = Buffer.from(`${'-'.repeat(255)}\n`);

/** Milliseconds that each append took until it was confirmed; nothing is left of the file. */
export async function syncTrial({
	disk,
	folder,
	nowMs,
	mark,
	appends,
}: SyncTrial): Promise<readonly number[] | DiskFault> {
	const unusable = makeFolders(disk, folder);
	if (unusable) return unusable;
	const path = join(folder, `sync-trial-${mark}`);
	try {
		const file = disk.openNew(path);
		try {
			// By its name first: nothing may be left of it, wherever this ends.
			disk.remove(path);
			const times: number[] = [];
			for (let count = 0; count < appends; count += 1) {
				const beganMs = nowMs();
				for (let at = 0; at < BYTES.length; ) at += disk.write(file, BYTES, at);
				await disk.sync(file);
				times.push(nowMs() - beganMs);
			}
			return times;
		} finally {
			disk.close(file);
		}
	} catch (error) {
		return { code: 'folder-unusable', path: folder, trouble: diskErrorCode(error) };
	}
}
