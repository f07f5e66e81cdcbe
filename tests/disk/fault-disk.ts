// A disk in memory that can be made to do what real ones do on a bad night: fail at any call, write
// less than asked, confirm late or never, and lose on a power cut whatever was not confirmed.

import { basename, dirname, join } from 'node:path';
import { type Disk, diskError, type FileStat } from '../../src/disk/disk.ts';
import { type FileKind, whyNoFile } from '../../src/disk/file-kind.ts';

/** One call of the disk. */
export type Call = { readonly name: keyof Disk; readonly path: string; readonly number: number };

/** What a call is made to do: nothing special, fail with a code, fail after having been done, write only so many bytes, or kill the program. */
export type Effect =
	| null
	| { readonly fail: string }
	| { readonly failAfter: string }
	| { readonly short: number }
	| { readonly kill: 'before' | 'after' };

type Change = { readonly at: number; readonly bytes: Buffer } | { readonly cutTo: number };
type Inode = {
	readonly id: number;
	kind: FileKind;
	bytes: Buffer;
	durable: Buffer;
	unsynced: Change[];
	links: number;
};
type NameChange = { readonly name: string; readonly inode: Inode | null };
type Folder = {
	names: Map<string, Inode>;
	durable: Map<string, Inode>;
	unsynced: NameChange[];
	/** Whether the folder's own name would outlive a power cut. */
	isDurable: boolean;
};

/** As most systems number the user that is nobody. */
const NOBODY = 65_534;

export class FaultDisk implements Disk {
	calls = 0;
	/** Asked before each call what it is to do. */
	effect: (call: Call) => Effect = () => null;
	/** While true, no confirmation is given until `releaseSyncs`. */
	isHoldingSyncs = false;
	/** Bytes that the disk has room for; writes beyond are short, then fail with ENOSPC. */
	roomBytes = Number.POSITIVE_INFINITY;
	/** Bytes that a file may have; writes beyond are short, then fail with EFBIG. */
	fileLimitBytes = Number.POSITIVE_INFINITY;
	readonly openFiles = new Map<number, { readonly inode: Inode; path: string }>();
	#folders = new Map<string, Folder>();
	#held: (() => void)[] = [];
	#nextInode = 1;
	#nextFile = 3;
	/** Files closed that were not open, which no program may do. */
	closedTwice = 0;
	/** Folders that belong to another user. */
	readonly foreignFolders = new Set<string>();
	/** Once true, this program is dead: nothing that it still does reaches the disk or counts. */
	isKilled = false;

	constructor() {
		this.#folders.set('/', newFolder());
	}

	openNew(path: string): number {
		return this.#call('openNew', path, () => {
			const folder = this.#folderOf(path);
			if (folder.names.has(basename(path))) throw diskError('EEXIST');
			return this.#open(this.#put(path, Buffer.alloc(0)), path);
		});
	}

	openExisting(path: string): number {
		return this.#call('openExisting', path, () => this.#open(this.#plainFile(path), path));
	}

	write(file: number, bytes: Uint8Array, from: number): number {
		const { inode, path } = this.#opened(file);
		let limit = bytes.length - from;
		const write = () => {
			const room = Math.max(0, this.roomBytes - this.usedBytes());
			if (room === 0 && limit > 0) throw diskError('ENOSPC');
			const growth = Math.max(0, this.fileLimitBytes - inode.bytes.length);
			if (growth === 0 && limit > 0) throw diskError('EFBIG');
			const part = Buffer.from(bytes.subarray(from, from + Math.min(limit, room, growth)));
			this.#change(inode, { at: inode.bytes.length, bytes: part });
			return part.length;
		};
		return this.#call('write', path, write, (short) => {
			limit = Math.min(limit, short);
		});
	}

	async sync(file: number): Promise<void> {
		const { inode, path } = this.#opened(file);
		// What is written while the disk is at work is not confirmed by it.
		const bytes = Buffer.from(inode.bytes);
		const count = inode.unsynced.length;
		await this.#confirm('sync', path, () => {
			inode.durable = bytes;
			inode.unsynced = inode.unsynced.slice(count);
		});
	}

	syncNow(file: number): void {
		const { inode, path } = this.#opened(file);
		this.#call('syncNow', path, () => {
			inode.durable = Buffer.from(inode.bytes);
			inode.unsynced = [];
		});
	}

	async syncFolder(path: string): Promise<void> {
		await this.#confirm('syncFolder', path, () => {
			const folder = this.#folder(path);
			folder.durable = new Map(folder.names);
			folder.unsynced = [];
			for (const [below, { isDurable }] of this.#folders) {
				if (!isDurable && dirname(below) === path) this.#folder(below).isDurable = true;
			}
		});
	}

	truncate(file: number, sizeBytes: number): void {
		const { inode, path } = this.#opened(file);
		this.#call('truncate', path, () => this.#change(inode, { cutTo: sizeBytes }));
	}

	statOpen(file: number): FileStat {
		const { inode, path } = this.#opened(file);
		return this.#call('statOpen', path, () => statOf(inode));
	}

	stat(path: string): FileStat | null {
		return this.#call('stat', path, () => {
			if (this.#folders.has(path)) {
				const owner = this.foreignFolders.has(path) ? NOBODY : null;
				return { ...statOf(newInode(0)), kind: 'folder', owner };
			}
			const inode = this.#folders.get(dirname(path))?.names.get(basename(path));
			return inode ? statOf(inode) : null;
		});
	}

	read(path: string, part?: { readonly start: number; readonly length: number }): Uint8Array {
		return this.#call('read', path, () => {
			const { bytes } = this.#plainFile(path);
			return Buffer.from(part ? bytes.subarray(part.start, part.start + part.length) : bytes);
		});
	}

	list(path: string): string[] {
		return this.#call('list', path, () => [...this.#folder(path).names.keys()].toSorted());
	}

	makeFolder(path: string): void {
		this.#call('makeFolder', path, () => {
			if (this.#folders.has(path)) throw diskError('EEXIST');
			this.#folder(dirname(path));
			this.#folders.set(path, { ...newFolder(), isDurable: false });
		});
	}

	rename(from: string, to: string): void {
		this.#call('rename', from, () => {
			const inode = this.#folderOf(from).names.get(basename(from));
			if (!inode) throw diskError('ENOENT');
			this.#name(to, inode);
			this.#name(from, null);
			for (const opened of this.openFiles.values()) {
				if (opened.inode === inode) opened.path = to;
			}
		});
	}

	remove(path: string): void {
		this.#call('remove', path, () => {
			const inode = this.#plainFile(path);
			inode.links -= 1;
			this.#name(path, null);
		});
	}

	close(file: number): void {
		// The number may belong to another file by then.
		if (!this.openFiles.has(file) && !this.isKilled) this.closedTwice += 1;
		const { path } = this.#opened(file);
		this.#call('close', path, () => this.openFiles.delete(file));
	}

	/** Gives the confirmations that were held back. */
	async releaseSyncs(): Promise<void> {
		this.isHoldingSyncs = false;
		const held = this.#held;
		this.#held = [];
		for (const release of held) release();
		await settle();
	}

	usedBytes(): number {
		let used = 0;
		for (const folder of this.#folders.values()) {
			for (const inode of folder.names.values()) used += inode.bytes.length;
		}
		return used;
	}

	/** Puts a file there as somebody else would, without any call being counted. */
	plant(path: string, bytes: Uint8Array, kind: Inode['kind'] = 'file'): void {
		if (!this.#folders.has(dirname(path))) this.plantFolder(dirname(path));
		const inode = this.#put(path, Buffer.from(bytes));
		inode.kind = kind;
		inode.durable = Buffer.from(bytes);
		inode.unsynced = [];
		this.#folderOf(path).durable.set(basename(path), inode);
	}

	plantFolder(path: string): void {
		if (path !== '/') this.plantFolder(dirname(path));
		if (!this.#folders.has(path)) this.#folders.set(path, newFolder());
	}

	/** Changes a file's bytes in place, as somebody else would. */
	meddle(path: string, change: (bytes: Buffer) => Buffer): void {
		const inode = this.#plainFile(path);
		inode.bytes = change(inode.bytes);
		inode.durable = Buffer.from(inode.bytes);
		inode.unsynced = [];
	}

	peek(path: string): Buffer {
		return Buffer.from(this.#plainFile(path).bytes);
	}

	folders(): string[] {
		return [...this.#folders.keys()];
	}

	files(): string[] {
		return [...this.#folders].flatMap(([path, folder]) =>
			[...folder.names.keys()].map((name) => join(path, name)),
		);
	}

	/** All but the mark that a night has begun, which lies beside each. */
	filesButMark(): string[] {
		return this.files().filter((path) => !path.endsWith('.begun'));
	}

	/** The disk as the next program finds it when only this one died: all that was written is there. */
	afterKill(): FaultDisk {
		const isThere = () => true;
		return this.#copy({ isThere, bytesOf: (inode) => inode.bytes, namesOf: ({ names }) => names });
	}

	/**
	 * The disk after the power was cut: of what was not confirmed any part may be lost. `choose(n)`
	 * gives a number from 0 up to n.
	 */
	afterPowerCut(choose: (most: number) => number): FaultDisk {
		return this.#copy({
			isThere: ({ isDurable }) => isDurable || choose(1) === 1,
			bytesOf: (inode) => survivingBytes(inode, choose),
			namesOf: (folder) => {
				const names = new Map(folder.durable);
				for (const { name, inode } of folder.unsynced.slice(0, choose(folder.unsynced.length))) {
					if (inode) names.set(name, inode);
					else names.delete(name);
				}
				return names;
			},
		});
	}

	#copy(rest: {
		readonly isThere: (folder: Folder) => boolean;
		readonly bytesOf: (inode: Inode) => Buffer;
		readonly namesOf: (folder: Folder) => Map<string, Inode>;
	}): FaultDisk {
		const copy = new FaultDisk();
		// Folders are made from the top down, so those above come first.
		for (const [path, folder] of this.#folders) {
			if (path !== '/' && (!copy.#folders.has(dirname(path)) || !rest.isThere(folder))) continue;
			copy.plantFolder(path);
			for (const [name, inode] of rest.namesOf(folder)) {
				copy.plant(join(path, name), rest.bytesOf(inode), inode.kind);
			}
		}
		return copy;
	}

	#call<T>(name: keyof Disk, path: string, run: () => T, shorten?: (bytes: number) => void): T {
		if (this.isKilled) throw diskError('EIO');
		this.calls += 1;
		const effect = this.effect({ name, path, number: this.calls });
		if (effect && 'fail' in effect) throw diskError(effect.fail);
		if (effect && 'short' in effect) shorten?.(effect.short);
		if (effect && 'kill' in effect) {
			if (effect.kill === 'after') run();
			this.isKilled = true;
			throw diskError('EIO');
		}
		const result = run();
		if (effect && 'failAfter' in effect) throw diskError(effect.failAfter);
		return result;
	}

	async #confirm(name: 'sync' | 'syncFolder', path: string, run: () => void): Promise<void> {
		if (this.isHoldingSyncs) await new Promise<void>((resolve) => this.#held.push(resolve));
		else await null;
		// A dead program hears nothing any more.
		if (this.isKilled) await new Promise(() => {});
		this.#call(name, path, run);
	}

	#opened(file: number): { readonly inode: Inode; readonly path: string } {
		if (this.isKilled) throw diskError('EIO');
		const opened = this.openFiles.get(file);
		if (!opened) throw diskError('EBADF');
		return opened;
	}

	#open(inode: Inode, path: string): number {
		this.#nextFile += 1;
		this.openFiles.set(this.#nextFile, { inode, path });
		return this.#nextFile;
	}

	#plainFile(path: string): Inode {
		const inode = this.#folderOf(path).names.get(basename(path));
		if (!inode) throw diskError('ENOENT');
		const trouble = whyNoFile(inode.kind);
		if (trouble !== null) throw diskError(trouble);
		return inode;
	}

	#folder(path: string): Folder {
		const folder = this.#folders.get(path);
		if (!folder) throw diskError('ENOENT');
		return folder;
	}

	#folderOf(path: string): Folder {
		return this.#folder(dirname(path));
	}

	#put(path: string, bytes: Buffer): Inode {
		this.#nextInode += 1;
		const inode = newInode(this.#nextInode);
		inode.bytes = bytes;
		this.#name(path, inode);
		return inode;
	}

	#name(path: string, inode: Inode | null): void {
		const folder = this.#folderOf(path);
		if (inode) folder.names.set(basename(path), inode);
		else folder.names.delete(basename(path));
		folder.unsynced.push({ name: basename(path), inode });
	}

	#change(inode: Inode, change: Change): void {
		inode.bytes = applied(inode.bytes, change);
		inode.unsynced.push(change);
	}
}

/** Lets everything that waits for an answer of the disk go on. */
export async function settle(): Promise<void> {
	for (let turn = 0; turn < 5; turn += 1) await new Promise((resolve) => setImmediate(resolve));
}

function newFolder(): Folder {
	return { names: new Map(), durable: new Map(), unsynced: [], isDurable: true };
}

function newInode(id: number): Inode {
	const nothing = Buffer.alloc(0);
	return { id, kind: 'file', bytes: nothing, durable: nothing, unsynced: [], links: 1 };
}

function statOf(inode: Inode): FileStat {
	return {
		kind: inode.kind,
		identity: `1:${inode.id}`,
		sizeBytes: inode.bytes.length,
		links: inode.links,
		modifiedMs: 0,
		owner: null,
		mode: null,
	};
}

function applied(bytes: Buffer, change: Change): Buffer {
	if ('cutTo' in change) return Buffer.from(bytes.subarray(0, change.cutTo));
	const grown = Buffer.alloc(Math.max(bytes.length, change.at + change.bytes.length));
	bytes.copy(grown);
	change.bytes.copy(grown, change.at);
	return grown;
}

/** The confirmed bytes and some of the changes since, the last of them perhaps in part, holes as zeros. */
function survivingBytes(inode: Inode, choose: (most: number) => number): Buffer {
	let bytes = inode.durable;
	const isInOrder = choose(1) === 1;
	const count = choose(inode.unsynced.length);
	for (const [index, change] of inode.unsynced.entries()) {
		if (isInOrder ? index >= count : choose(1) === 0) continue;
		const isLast = isInOrder && index === count - 1;
		if (!isLast || 'cutTo' in change) bytes = applied(bytes, change);
		else {
			const part = change.bytes.subarray(0, choose(change.bytes.length));
			bytes = applied(bytes, { at: change.at, bytes: part });
		}
	}
	return bytes;
}
