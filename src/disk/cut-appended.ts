// Cutting a file that is open for writing at its end. On Windows such a handle may only ever append (libuv asks for
// no more for O_APPEND, and cutting then fails with EPERM; both from memory), so the cut goes by the file's name.

/** What of the file system is needed. */
type Ways = {
	readonly truncate: (file: number, sizeBytes: number) => void;
	/** Opens a file that is there for writing anywhere in it. */
	readonly openWritable: (path: string) => number;
	readonly close: (file: number) => void;
	readonly isSameFile: (one: number, other: number) => boolean;
	readonly platform: string;
};

/** Cuts open files; has to be told of each that is opened and closed. */
export type CutAppended = {
	/** Gives back the file. */
	readonly opened: (file: number, path: string) => number;
	readonly closed: (file: number) => void;
	readonly truncate: (file: number, sizeBytes: number) => void;
};

/** Gives back a way to cut that works on every platform; throws what the system throws. */
export function cutAppended({
	truncate,
	openWritable,
	close,
	isSameFile,
	platform,
}: Ways): CutAppended {
	const paths = new Map<number, string>();
	return {
		opened: (file, path) => {
			if (platform === 'win32') paths.set(file, path);
			return file;
		},
		closed: (file) => {
			paths.delete(file);
		},
		truncate: (file, sizeBytes) => {
			const path = paths.get(file);
			if (path === undefined) return truncate(file, sizeBytes);
			const writable = openWritable(path);
			try {
				// Somebody may have put another file under the name; that one is left alone.
				truncate(isSameFile(file, writable) ? writable : file, sizeBytes);
			} finally {
				close(writable);
			}
		},
	};
}
