// The machine's own file system.

import type { BigIntStats } from 'node:fs';
import { type Disk, diskError, diskErrorCode, type FileStat } from './disk.ts';
import { fileKind, whyNoFile } from './file-kind.ts';
import { fs } from './node-fs.ts';
import { patientRename } from './patient-rename.ts';

const {
	O_APPEND,
	O_CREAT,
	O_EXCL,
	O_NOFOLLOW = 0,
	O_NONBLOCK = 0,
	O_RDONLY,
	O_RDWR,
} = fs.constants;

/** Codes with which systems say that a folder cannot be synced at all there. */
const unsyncable = new Set(['EINVAL', 'ENOTSUP', 'EISDIR', 'EPERM', 'EACCES']);

const HAS_OWNERS = process.getuid !== undefined;

/** The file system that this program runs on. */
export const realDisk: Disk = {
	openNew: (path) => fs.openSync(path, O_RDWR | O_APPEND | O_CREAT | O_EXCL | O_NOFOLLOW, 0o600),
	openExisting: (path) => openPlainFile(path, O_RDWR | O_APPEND | O_NOFOLLOW),
	write: (file, bytes, from) => fs.writeSync(file, bytes, from),
	sync: (file) =>
		new Promise((resolve, reject) => {
			fs.fdatasync(file, (error) => (error ? reject(error) : resolve()));
		}),
	syncNow,
	syncFolder,
	truncate: (file, sizeBytes) => fs.ftruncateSync(file, sizeBytes),
	statOpen: (file) => fileStat(fs.fstatSync(file, { bigint: true })),
	stat,
	read,
	list: (path) => fs.readdirSync(path),
	makeFolder: (path) => fs.mkdirSync(path, 0o700),
	rename: patientRename({ rename: fs.renameSync, wait, platform: process.platform }),
	remove: (path) => fs.unlinkSync(path),
	close: (file) => fs.closeSync(file),
};

function wait(ms: number): void {
	Atomics.wait(new Int32Array(new SharedArrayBuffer(4)), 0, 0, ms);
}

/** A folder or a device opens like a file and then behaves like none; a pipe waits for its other end. */
function openPlainFile(path: string, flags: number): number {
	const file = openAtOnce(path, flags);
	const trouble = whyNoFile(fileKind(fs.fstatSync(file)));
	if (trouble === null) return file;
	fs.closeSync(file);
	throw diskError(trouble);
}

function openAtOnce(path: string, flags: number): number {
	try {
		return fs.openSync(path, flags | O_NONBLOCK);
	} catch (error) {
		// A socket is refused as a disk would be that is gone, and a link to nowhere as no file at all.
		const isOdd = ['ENXIO', 'ENOENT'].includes(diskErrorCode(error));
		const trouble = whyNoFile((isOdd && stat(path)?.kind) || 'file');
		throw trouble === null ? error : diskError(trouble);
	}
}

function read(
	path: string,
	part?: { readonly start: number; readonly length: number },
): Uint8Array {
	const file = openPlainFile(path, O_RDONLY);
	try {
		if (!part) return fs.readFileSync(file);
		const bytes = Buffer.alloc(part.length);
		let filled = 0;
		while (filled < part.length) {
			const count = fs.readSync(file, bytes, filled, part.length - filled, part.start + filled);
			if (count === 0) break;
			filled += count;
		}
		return bytes.subarray(0, filled);
	} finally {
		fs.closeSync(file);
	}
}

function syncNow(file: number): void {
	try {
		fs.fdatasyncSync(file);
	} catch (error) {
		// Some folders of other machines know no such thing; there nothing more can be had.
		if (!['EINVAL', 'ENOTSUP', 'ENOSYS'].includes(diskErrorCode(error))) throw error;
	}
}

async function syncFolder(path: string): Promise<void> {
	try {
		const folder = await fs.promises.open(path, O_RDONLY);
		try {
			await folder.sync();
		} finally {
			await folder.close();
		}
	} catch (error) {
		if (error instanceof Error && 'code' in error && unsyncable.has(String(error.code))) return;
		throw error;
	}
}

function stat(path: string): FileStat | null {
	try {
		const found = fs.lstatSync(path, { bigint: true, throwIfNoEntry: false });
		return found ? fileStat(found) : null;
	} catch (error) {
		// A file where a folder on the way was: there is nothing at the path either.
		if (diskErrorCode(error) === 'ENOTDIR') return null;
		throw error;
	}
}

function fileStat(found: BigIntStats): FileStat {
	return {
		kind: fileKind(found),
		identity: `${found.dev}:${found.ino}`,
		sizeBytes: Number(found.size),
		links: Number(found.nlink),
		modifiedMs: Number(found.mtimeMs),
		owner: HAS_OWNERS ? Number(found.uid) : null,
		mode: HAS_OWNERS ? Number(found.mode & 0o777n) : null,
	};
}
