// The few operations on files that a night needs, each of which can fail on its own. Passed in
// everywhere, so that a test can let every one of them go wrong.

import type { FileKind } from './file-kind.ts';

/** What is known of a file without reading it. */
export type FileStat = {
	readonly kind: FileKind;
	/** The same for two paths only when they lead to the same file. */
	readonly identity: string;
	readonly sizeBytes: number;
	/** Names that this file has; 0 once it was removed. */
	readonly links: number;
	readonly modifiedMs: number;
	/** The user that it belongs to, by number; null where the system has none. */
	readonly owner: number | null;
	/** Who may read and write it, as the system's nine bits; null where it has none. */
	readonly mode: number | null;
};

/** A file system. All but the two `sync` operations are done when they return; they throw Node's errors, with a `code`. */
export type Disk = {
	/** Makes a file, readable by its owner alone, that was not there: reading, and writing at its end. */
	openNew(path: string): number;
	/** Opens a file that is there for reading, and writing at its end; follows no link and waits for nobody. */
	openExisting(path: string): number;
	/** Writes bytes from `from` on at the end of the file; gives how many, which may be fewer than asked. */
	write(file: number, bytes: Uint8Array, from: number): number;
	/** Resolves once the file's bytes would outlive a power cut. */
	sync(file: number): Promise<void>;
	/** As `sync`, and waits for it: for small files, while no night is under way. */
	syncNow(file: number): void;
	/** Resolves once the names in the folder would outlive a power cut. */
	syncFolder(path: string): Promise<void>;
	truncate(file: number, sizeBytes: number): void;
	statOpen(file: number): FileStat;
	/** What is at the path, a link not followed; null where nothing is. */
	stat(path: string): FileStat | null;
	/** Bytes of a file from `start` on, at most `length`; the whole file without them. Never waits for anybody. */
	read(path: string, part?: { readonly start: number; readonly length: number }): Uint8Array;
	/** The names in a folder. */
	list(path: string): string[];
	/** Makes one folder, for its owner alone, whose parent is there. */
	makeFolder(path: string): void;
	rename(from: string, to: string): void;
	remove(path: string): void;
	close(file: number): void;
};

/** The `code` of an error of the file system, such as `ENOSPC`; rethrows what is none, since that is a bug of ours. */
export function diskErrorCode(error: unknown): string {
	if (error instanceof Error && 'code' in error && typeof error.code === 'string')
		return error.code;
	throw error;
}

/** An error as the file system would throw it. */
export function diskError(code: string): Error {
	return Object.assign(new Error(code), { code });
}
