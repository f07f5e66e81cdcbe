// Texts typed and not yet entered, in a file beside the night's own. Whatever is wrong with it, there
// are no drafts and nobody is troubled.

import { join } from 'node:path';
import type { Disk } from './disk.ts';
import { diskErrorCode } from './disk.ts';
import { isNightId } from './night-id.ts';
import { whyNotOwn } from './own-file.ts';

/** Texts by the names of their fields. */
type Drafts = Readonly<Record<string, string>>;

const ENDING = '.drafts';
/** Longer is no draft of ours. */
const LARGEST_BYTES = 100_000;

/** A night, and the folder that it is kept in. */
type DraftPlace = { readonly folder: string; readonly night: string };

/** The file of its drafts. */
export function draftPath({ folder, night }: DraftPlace): string {
	return join(folder, `${night}${ENDING}`);
}

/** The night that a file of this name holds the drafts of; null for none. */
export function draftedNight(fileName: string): string | null {
	const night = fileName.endsWith(ENDING) ? fileName.slice(0, -ENDING.length) : '';
	return isNightId(night) ? night : null;
}

/** The drafts of a night, kept in its folder; there is a file only while there are any. */
export function draftFile(
	disk: Disk,
	place: DraftPlace,
): { readonly kept: () => Drafts; readonly keep: (drafts: Drafts) => void } {
	const path = draftPath(place);
	const remove = (at: string): void => {
		if (disk.stat(at) !== null) disk.remove(at);
	};
	return {
		kept: () => {
			try {
				const stat = disk.stat(path);
				if (stat === null || stat.sizeBytes > LARGEST_BYTES) return {};
				if (whyNotOwn(disk, path, 'file') !== null) return {};
				return draftsIn(Buffer.from(disk.read(path)).toString('utf8'));
			} catch (error) {
				if (!(error instanceof SyntaxError)) diskErrorCode(error);
				return {};
			}
		},
		keep: (drafts) => {
			try {
				const fresh = `${path}.new`;
				remove(fresh);
				if (Object.keys(drafts).length === 0) return remove(path);
				write(disk, fresh, Buffer.from(JSON.stringify(drafts)));
				disk.rename(fresh, path);
			} catch (error) {
				diskErrorCode(error);
			}
		},
	};
}

function write(disk: Disk, path: string, bytes: Uint8Array): void {
	const file = disk.openNew(path);
	try {
		for (let from = 0; from < bytes.length; ) from += disk.write(file, bytes, from);
	} finally {
		disk.close(file);
	}
}

function draftsIn(text: string): Drafts {
	const stored: unknown = JSON.parse(text);
	const isRecord = typeof stored === 'object' && stored !== null && !Array.isArray(stored);
	return Object.fromEntries(
		Object.entries(isRecord ? stored : {}).filter(
			(pair): pair is [string, string] => typeof pair[1] === 'string',
		),
	);
}
