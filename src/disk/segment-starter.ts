// Beginning a further file of a night, in the first folder that takes it.

import { join } from 'node:path';
import { encodeLine, headerSeed } from '../journal/line.ts';
import type { HeaderLine } from '../journal/read-line.ts';
import type { Disk } from './disk.ts';
import { diskErrorCode } from './disk.ts';
import { ensureFolder } from './folders.ts';
import { whyNotOwn } from './own-file.ts';
import { Segment } from './segment.ts';
import { segmentFileName } from './segment-name.ts';

/** What it takes to begin a file of a night. */
export type SegmentStart = {
	readonly id: string;
	readonly number: number;
	/** Where it may stand, the best place first. */
	readonly folders: readonly string[];
	/** The night's own folder, chosen by the user; any other has to be ours alone. */
	readonly home: string;
	readonly headerBytes: Uint8Array;
};

/** The file that was begun, or the code of the error in the best place. */
export type SegmentBegun = { readonly segment: Segment } | { readonly code: string };

/** As `SegmentBegun`, with the code of the error in the best place where that was passed over. */
type SegmentPlaced =
	| { readonly segment: Segment; readonly passedOver: string | null }
	| { readonly code: string };

/** How many numbers are tried when files of that name are there already. */
const numbersTried = 100;

/** The header as it stands at the beginning of every file of the night: twice, since nothing else could stand in for it. */
export function headerBytes(line: HeaderLine, from: number): Buffer {
	const record = { ...line.record, s: 0, e: [{ ...line.header, from }] };
	const bytes = encodeLine(record, headerSeed);
	return Buffer.concat([bytes, bytes]);
}

/** Begins a file that is not yet confirmed by the disk, header written. */
export function startSegment(disk: Disk, start: SegmentStart): SegmentPlaced {
	let worst: string | null = null;
	for (const folder of start.folders) {
		const begun = startIn(disk, start, folder);
		if ('segment' in begun) return { ...begun, passedOver: worst };
		worst ??= begun.code;
	}
	return { code: worst ?? 'ENOENT' };
}

function startIn(disk: Disk, start: SegmentStart, folder: string): SegmentBegun {
	try {
		ensureFolder(disk, folder);
		// Made first and looked at then: where all users share what is above, another may have been quicker.
		const distrust = folder === start.home ? null : whyNotOwn(disk, folder, 'folder');
		if (distrust !== null) return { code: distrust };
	} catch (error) {
		return { code: diskErrorCode(error) };
	}
	let code = 'EEXIST';
	for (let step = 0; step < numbersTried && code === 'EEXIST'; step += 1) {
		const number = start.number + step;
		const path = join(folder, segmentFileName({ id: start.id, number }));
		const begun = startAt(disk, { path, folder, number, headerBytes: start.headerBytes });
		if ('segment' in begun) return begun;
		code = begun.code;
	}
	return { code };
}

/** Where exactly a file of a night is to begin. */
export type SegmentTarget = {
	readonly path: string;
	readonly folder: string;
	readonly number: number;
	readonly headerBytes: Uint8Array;
};

/** Begins the file at this path, which must be free; leaves nothing behind when it cannot. */
export function startAt(
	disk: Disk,
	{ headerBytes: header, ...place }: SegmentTarget,
): SegmentBegun {
	let file: number;
	try {
		file = disk.openNew(place.path);
	} catch (error) {
		return { code: diskErrorCode(error) };
	}
	try {
		const segment = new Segment(disk, { ...place, file });
		const fault = segment.write(header);
		if (fault === null) {
			segment.markBegun();
			return { segment };
		}
		discard(disk, file, place.path);
		return { code: fault.code };
	} catch (error) {
		discard(disk, file, place.path);
		return { code: diskErrorCode(error) };
	}
}

function discard(disk: Disk, file: number, path: string): void {
	for (const step of [() => disk.close(file), () => disk.remove(path)]) {
		try {
			step();
		} catch (error) {
			// An empty file that stays behind is passed over when nights are read.
			diskErrorCode(error);
		}
	}
}
