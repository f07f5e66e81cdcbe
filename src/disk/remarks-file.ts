// What somebody added to the report of a night, in a file beside the night's own.

import { join } from 'node:path';
import type { DiskFault } from '../base/disk-fault.ts';
import { NO_REMARKS, type Remarks } from '../journal/remarks.ts';
import type { Disk } from './disk.ts';
import { changeSmallFile, damaged, readSmallFile, type SmallFile } from './small-file.ts';

/** Where they are kept. */
export type RemarksPlace = {
	readonly disk: Disk;
	/** The folder of nights. */
	readonly folder: string;
	readonly night: string;
};

/** The file that they are in. */
export function remarksPath({ folder, night }: Omit<RemarksPlace, 'disk'>): string {
	return join(folder, `${night}.remarks`);
}

/** What was kept; none where there is nothing, or where it cannot be read, which `problem` says. */
export function readRemarks(place: RemarksPlace): {
	readonly remarks: Remarks;
	readonly problem: DiskFault | null;
} {
	const { value: remarks, problem } = readSmallFile(fileOf(place));
	return { remarks, problem };
}

/** Keeps them in place of what was kept; says when that cannot be. */
export function keepRemarks(
	place: RemarksPlace,
	remarks: Remarks,
): Extract<DiskFault, { code: 'export-failed' }> | null {
	return changeSmallFile(fileOf(place), () => remarks);
}

function fileOf(place: RemarksPlace): SmallFile<Remarks> {
	return {
		disk: place.disk,
		path: remarksPath(place),
		largestBytes: 1_000_000,
		none: NO_REMARKS,
		valueOf: (stored) => {
			const { night, incidents, signed } = recordOf(stored);
			return {
				night: textOrNull(night),
				incidents: Object.fromEntries(
					Object.entries(recordOf(incidents)).map(([id, text]) => [id, textOf(text)]),
				),
				signed: textOrNull(signed),
			};
		},
	};
}

function textOrNull(value: unknown): string | null {
	return value === null ? null : textOf(value);
}

function textOf(value: unknown): string {
	if (typeof value === 'string') return value;
	throw damaged();
}

function recordOf(value: unknown): Readonly<Record<string, unknown>> {
	if (typeof value !== 'object' || value === null || Array.isArray(value)) {
		throw damaged();
	}
	return value as Readonly<Record<string, unknown>>;
}
