// A show file from disk to a show. Loaded only where one is read, since that takes the largest part
// of the program with it.

import { resolve } from 'node:path';
import type { Problem } from '../base/problem.ts';
import { diskErrorCode } from '../disk/disk.ts';
import { fileKind, whyNoFile } from '../disk/file-kind.ts';
import { fs } from '../disk/node-fs.ts';
import { realDisk } from '../disk/real-disk.ts';
import { settingsNow } from '../disk/settings.ts';
import type { LoadFile, NotRead } from '../showfile/join-files.ts';
import { usableTimes, withOwnTimes } from '../showfile/own-times.ts';
import { readPlainShow } from '../showfile/read-plain-show.ts';
import type { Show } from '../showfile/show.ts';
import type { FilesReading } from '../showfile/show-from-files.ts';
import type { SourceNode } from '../showfile/source-node.ts';
import { unusableTimeWords } from '../words/own-times.ts';
import { problemOf } from '../words/problems.ts';
import type { Request } from './command.ts';
import type { Io } from './io.ts';
import { placesOf } from './places.ts';
import { carriedFile } from './single/carried-file.ts';

export type ShowOpening = {
	readonly show: Show | null;
	readonly problems: readonly Problem[];
	/** The same as a tree in which everything knows its place in its file; null where there is no show. */
	readonly root: SourceNode | null;
	/** Absolute path of the main file. */
	readonly path: string;
	/** A sentence for each of the user's own times that cannot be used. */
	readonly remarks: readonly string[];
};

/** Bytes after which a file is no show, whatever it is: read no further. */
const LARGEST_BYTES = 4_000_000;

/** The show in this file, by the user's own times, or its problems; the path is taken from the working folder. */
export async function openShow(file: string, request: Request, io: Io): Promise<ShowOpening> {
	const path = resolve(io.cwd, file);
	const load = (asked: string) => loadBytes(resolve(io.cwd, asked));
	const { times, problems: unusable } = usableTimes(
		settingsNow({ disk: realDisk, folder: placesOf(request, io).settings }).values.times,
	);
	const remarks = unusable.map(unusableTimeWords);
	// Problems name the file as it was typed, which is how the user knows it.
	const { show, problems, root } = readPlainShow(load, file) ?? (await readAnyShow(load, file));
	return {
		show: show && withOwnTimes(show, times),
		problems: problems.map(problemOf),
		root,
		path,
		remarks,
	};
}

async function readAnyShow(load: LoadFile, file: string): Promise<FilesReading> {
	const { readShow } = await import('../showfile/read-show.ts');
	return readShow(load, file);
}

/** The bytes of a plain file; null where there are none to be had. */
export function readBytes(path: string): Uint8Array | null {
	const bytes = loadBytes(path);
	return bytes instanceof Uint8Array ? bytes : null;
}

/** The bytes of a plain file, or why they cannot be read; null where there is no such file. */
export function loadBytes(path: string): Uint8Array | NotRead | null {
	let file: number | undefined;
	try {
		// A pipe that nobody writes to would otherwise hold the program for ever.
		file = fs.openSync(path, fs.constants.O_RDONLY | fs.constants.O_NONBLOCK);
		const stat = fs.fstatSync(file);
		const trouble = whyNoFile(fileKind(stat));
		if (trouble !== null) return { trouble };
		return stat.size > LARGEST_BYTES ? new Uint8Array(LARGEST_BYTES) : fs.readFileSync(file);
	} catch (error) {
		const trouble = diskErrorCode(error);
		// A name that no file can have, with a NUL in it, is refused before the disk is asked.
		const isNone = ['ENOENT', 'ENOTDIR', 'ERR_INVALID_ARG_VALUE'].includes(trouble);
		if (isNone) return carriedFile(path);
		// A socket is refused as a disk would be that is gone.
		const found = trouble === 'ENXIO' ? fs.statSync(path, { throwIfNoEntry: false }) : undefined;
		return { trouble: (found && whyNoFile(fileKind(found))) ?? trouble };
	} finally {
		if (file !== undefined) fs.closeSync(file);
	}
}
