// A disk put together from traced calls, and what may be on it when the power goes: what was asked for and
// confirmed, and any part of the rest, in any order, cut at any byte (POSIX, fsync: nothing else is promised).

import { basename, dirname, join } from 'node:path';
import { FaultDisk } from '../disk/fault-disk.ts';
import type { Chance } from '../plan/oracle/chance.ts';
import type { TracedCall } from './traced-calls.ts';

type Change = ({ readonly at: number; readonly bytes: Buffer } | { readonly cutTo: number }) & {
	isKept: boolean;
	/** The disk once refused to confirm it: no later word of the disk counts for it. */
	isDoubtful: boolean;
};
type File = { sizeBytes: number; readonly changes: Change[] };
type Naming = {
	readonly name: string;
	readonly file: File | null;
	readonly gone: string | null;
	isKept: boolean;
};
type Folder = { isKept: boolean; readonly names: Map<string, File>; readonly namings: Naming[] };
type Asked = { readonly what: Change[] | (Naming | Folder)[] };

/** How much of what is not confirmed outlives the cut. */
export type Survival = {
	/** For the changes of one file or the names of one folder: which of so many are there. */
	readonly chosen: (count: number) => readonly boolean[];
	/** How many bytes of the last of them; null for all. */
	readonly lastBytes: (length: number) => number | null;
	/** Whether the last has its length but not its bytes: zeros in their place. */
	readonly isZeroed: boolean;
};

/** The files below one folder, as calls change them. */
export class ReplayedDisk {
	readonly #root: string;
	readonly #folders = new Map<string, Folder>();
	#open = new Map<number, File | string>();
	readonly #asked = new Map<string, Asked>();

	constructor(root: string) {
		this.#root = root;
		this.#folders.set(root, { isKept: true, names: new Map(), namings: [] });
	}

	/** A new program: it has no file open. */
	startAnew(): void {
		this.#open = new Map();
		this.#asked.clear();
	}

	/** Makes one call; false for one that changes nothing here. */
	make(call: TracedCall): boolean {
		if (call.name === 'fdatasync' || call.name === 'fsync') return this.#sync(call);
		if (call.part === 'begins') return false;
		if (call.name === 'openat') return this.#openFile(call);
		if (call.result === null || call.result < 0) return false;
		const [one = '', other = ''] = call.texts.map(String);
		if (call.name === 'write') return this.#write(call);
		if (call.name === 'ftruncate') return this.#truncate(call);
		if (!one.startsWith(`${this.#root}/`)) return false;
		if (call.name === 'mkdir') {
			this.#folders.set(one, { isKept: false, names: new Map(), namings: [] });
		} else if (call.name === 'unlink') this.#rename(one, null);
		else if (call.name === 'rename') this.#rename(one, other);
		return true;
	}

	/** How many bytes of its last change are not confirmed, over all files. */
	pendingBytes(): number {
		let most = 0;
		for (const file of this.#files()) {
			const last = file.changes.findLast(({ isKept }) => !isKept);
			if (last && 'bytes' in last) most = Math.max(most, last.bytes.length);
		}
		return most;
	}

	/** The disk as the next program finds it. */
	afterPowerCut(survival: Survival): FaultDisk {
		const disk = new FaultDisk();
		disk.plantFolder(this.#root);
		for (const [path, folder] of this.#folders) {
			const isThere = folder.isKept || survival.chosen(1)[0] === true;
			// Those above come first, since they were made first.
			if (!isThere || (path !== this.#root && !disk.folders().includes(dirname(path)))) continue;
			disk.plantFolder(path);
			for (const [name, file] of names(folder, survival)) {
				disk.plant(join(path, name), bytesOf(file, survival));
			}
		}
		return disk;
	}

	*#files(): Generator<File> {
		for (const { names: those } of this.#folders.values()) yield* those.values();
	}

	#openFile({ texts, flags, result }: TracedCall): boolean {
		const path = String(texts[0] ?? '');
		if (result === null || result < 0) return false;
		const folder = this.#folders.get(dirname(path));
		const isOurs = path === this.#root || path.startsWith(`${this.#root}/`);
		const found = this.#folders.has(path) ? path : folder?.names.get(basename(path));
		if (found === undefined && isOurs && folder && flags.includes('O_CREAT')) {
			const file: File = { sizeBytes: 0, changes: [] };
			folder.names.set(basename(path), file);
			folder.namings.push({ name: basename(path), file, gone: null, isKept: false });
			this.#open.set(result, file);
			return true;
		}
		if (found === undefined) this.#open.delete(result);
		else this.#open.set(result, found);
		return false;
	}

	#write({ numbers, texts, result }: TracedCall): boolean {
		const file = this.#open.get(numbers[0] ?? -1);
		if (file === undefined || typeof file === 'string') return false;
		// All files are opened to be written at their end.
		const bytes = (texts[0] ?? Buffer.alloc(0)).subarray(0, result ?? 0);
		file.changes.push({ at: file.sizeBytes, bytes, isKept: false, isDoubtful: false });
		file.sizeBytes += bytes.length;
		return true;
	}

	#truncate({ numbers }: TracedCall): boolean {
		const [number = -1, cutTo = 0] = numbers;
		const file = this.#open.get(number);
		if (file === undefined || typeof file === 'string') return false;
		file.changes.push({ cutTo, isKept: false, isDoubtful: false });
		file.sizeBytes = cutTo;
		return true;
	}

	#rename(from: string, to: string | null): void {
		const folder = this.#folders.get(dirname(from));
		const file = folder?.names.get(basename(from));
		if (!folder || !file) return;
		folder.names.delete(basename(from));
		if (to === null) {
			folder.namings.push({ name: basename(from), file: null, gone: null, isKept: false });
			return;
		}
		if (dirname(to) !== dirname(from)) throw new Error(`${from} leaves its folder`);
		folder.names.set(basename(to), file);
		folder.namings.push({ name: basename(to), file, gone: basename(from), isKept: false });
	}

	/** Confirmed is what was there when it was asked for. */
	#sync({ thread, part, numbers, result }: TracedCall): boolean {
		if (part !== 'ends') {
			const open = this.#open.get(numbers[0] ?? -1);
			if (open === undefined) this.#asked.delete(thread);
			else this.#asked.set(thread, { what: this.#changesOf(open) });
		}
		if (part === 'begins') return false;
		const asked = this.#asked.get(thread);
		if (!asked) return false;
		for (const one of asked.what) {
			if (result !== 0 && 'isDoubtful' in one) one.isDoubtful = true;
			if (result === 0 && !('isDoubtful' in one && one.isDoubtful)) one.isKept = true;
		}
		return true;
	}

	#changesOf(open: File | string): Asked['what'] {
		if (typeof open !== 'string') return [...open.changes];
		const below = [...this.#folders].filter(([path]) => dirname(path) === open);
		return [...(this.#folders.get(open)?.namings ?? []), ...below.map(([, folder]) => folder)];
	}
}

function names(folder: Folder, { chosen }: Survival): Map<string, File> {
	const open = folder.namings.filter(({ isKept }) => !isKept);
	const isThere = chosen(open.length);
	const found = new Map<string, File>();
	for (const naming of folder.namings) {
		const place = open.indexOf(naming);
		if (place >= 0 && isThere[place] !== true) continue;
		if (naming.gone !== null) found.delete(naming.gone);
		if (naming.file === null) found.delete(naming.name);
		else found.set(naming.name, naming.file);
	}
	return found;
}

function bytesOf({ changes }: File, { chosen, lastBytes, isZeroed }: Survival): Buffer {
	const open = changes.filter(({ isKept }) => !isKept);
	const isThere = chosen(open.length);
	const last = open.findLast((_, place) => isThere[place] === true);
	let bytes = Buffer.alloc(0);
	for (const change of changes) {
		const place = open.indexOf(change);
		if (place >= 0 && isThere[place] !== true) continue;
		if ('cutTo' in change) {
			bytes = Buffer.from(bytes.subarray(0, change.cutTo));
			continue;
		}
		const length = change === last ? lastBytes(change.bytes.length) : null;
		const part = change.bytes.subarray(0, length ?? change.bytes.length);
		const written = change === last && isZeroed ? Buffer.alloc(part.length) : part;
		// What was written behind a hole leaves zeros in it.
		const grown = Buffer.alloc(Math.max(bytes.length, change.at + written.length));
		bytes.copy(grown);
		written.copy(grown, change.at);
		bytes = grown;
	}
	return bytes;
}

/** What outlives a cut, by chance: nothing, all, what came first, or any of it. */
export function survivalBy(by: Chance): Survival {
	return {
		chosen: (count) => {
			const way = by.below(4);
			const first = by.below(count + 1);
			return Array.from({ length: count }, (_, place) => {
				if (way < 2) return way === 1;
				return way === 2 ? place < first : by.is(0.5);
			});
		},
		lastBytes: (length) => (by.is(0.5) ? by.below(length + 1) : null),
		isZeroed: by.is(0.1),
	};
}

/** All of it, and of the last write so many bytes. */
export function cutAt(bytes: number): Survival {
	return {
		chosen: (count) => Array.from({ length: count }, () => true),
		lastBytes: (length) => Math.min(length, bytes),
		isZeroed: false,
	};
}
