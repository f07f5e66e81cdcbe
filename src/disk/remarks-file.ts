// What somebody added to the report of a night, in a file beside the night's own. One that is not ours or cannot be
// understood is never written over.

import { join } from 'node:path';
import type { DiskFault } from '../base/disk-fault.ts';
import { NO_REMARKS, type Remarks } from '../journal/remarks.ts';
import { type Disk, diskError, diskErrorCode } from './disk.ts';
import { ensureFolder } from './folders.ts';
import { whyNotOwn } from './own-file.ts';
import { writeWhole } from './write-whole.ts';

/** Where they are kept. */
export type RemarksPlace = {
	readonly disk: Disk;
	/** The folder of nights. */
	readonly folder: string;
	readonly night: string;
};

/** Longer is none of ours. */
const LARGEST_BYTES = 1_000_000;

/** The file that they are in. */
export function remarksPath({ folder, night }: Omit<RemarksPlace, 'disk'>): string {
	return join(folder, `${night}.remarks`);
}

/** What was kept; none where there is nothing, or where it cannot be read, which `problem` says. */
export function readRemarks(place: RemarksPlace): {
	readonly remarks: Remarks;
	readonly problem: DiskFault | null;
} {
	const path = remarksPath(place);
	try {
		return { remarks: remarksIn(place.disk, path), problem: null };
	} catch (error) {
		const problem = { code: 'file-unreadable' as const, path, trouble: troubleOf(error) };
		return { remarks: NO_REMARKS, problem };
	}
}

/** Keeps them in place of what was kept; says when that cannot be. */
export function keepRemarks(
	place: RemarksPlace,
	remarks: Remarks,
): Extract<DiskFault, { code: 'export-failed' }> | null {
	const { disk, folder } = place;
	const path = remarksPath(place);
	try {
		ensureFolder(disk, folder);
		// Of one that cannot be understood nothing is lost.
		remarksIn(disk, path);
		const fresh = `${path}.new`;
		if (disk.stat(fresh) !== null) disk.remove(fresh);
		if (!writeWhole(disk, fresh, Buffer.from(`${JSON.stringify(remarks)}\n`))) {
			throw diskError('EEXIST');
		}
		disk.rename(fresh, path);
		return null;
	} catch (error) {
		return { code: 'export-failed', path, trouble: troubleOf(error) };
	}
}

function troubleOf(error: unknown): string {
	return error instanceof SyntaxError ? 'DAMAGED' : diskErrorCode(error);
}

function remarksIn(disk: Disk, path: string): Remarks {
	const stat = disk.stat(path);
	if (stat === null) return NO_REMARKS;
	const trouble = whyNotOwn(disk, path, 'file');
	if (trouble !== null) throw diskError(trouble);
	if (stat.sizeBytes > LARGEST_BYTES) throw diskError('DAMAGED');
	const { night, incidents, signed } = recordOf(
		JSON.parse(Buffer.from(disk.read(path)).toString('utf8')),
	);
	return {
		night: textOrNull(night),
		incidents: Object.fromEntries(
			Object.entries(recordOf(incidents)).map(([id, text]) => [id, textOf(text)]),
		),
		signed: textOrNull(signed),
	};
}

function textOrNull(value: unknown): string | null {
	return value === null ? null : textOf(value);
}

function textOf(value: unknown): string {
	if (typeof value === 'string') return value;
	throw diskError('DAMAGED');
}

function recordOf(value: unknown): Readonly<Record<string, unknown>> {
	if (typeof value !== 'object' || value === null || Array.isArray(value)) {
		throw diskError('DAMAGED');
	}
	return value as Readonly<Record<string, unknown>>;
}
