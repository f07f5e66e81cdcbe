// One open file of a night: bytes go in whole or not at all, and it knows when somebody else touched
// the file. What to do about either is decided elsewhere.

import { dirname } from 'node:path';
import { type Disk, diskErrorCode } from './disk.ts';

/** Why bytes did not get into the file, and whether it may still be written to. */
export type WriteFault = { readonly code: string; readonly isUsable: boolean };

/** What became of the file behind our back. `grown`: somebody else wrote into it. */
export type FileChange = 'gone' | 'shortened' | 'grown';

/** How often a write that was only interrupted is tried again. */
const interruptionsBorne = 100;

/** A file of a night that is open for writing. */
export class Segment {
	readonly number: number;
	readonly folder: string;
	/** Whether the disk has confirmed the file itself and its name in the folder. */
	isPlaced = false;
	readonly #disk: Disk;
	readonly #file: number;
	readonly #identity: string;
	#path: string;
	#sizeBytes: number;
	#bareBytes: number | null = null;

	constructor(disk: Disk, place: SegmentPlace) {
		this.#disk = disk;
		this.number = place.number;
		this.folder = place.folder;
		this.#file = place.file;
		this.#path = place.path;
		const stat = disk.statOpen(place.file);
		this.#identity = stat.identity;
		this.#sizeBytes = stat.sizeBytes;
	}

	get path(): string {
		return this.#path;
	}

	/** The offset at which the next line begins. */
	get sizeBytes(): number {
		return this.#sizeBytes;
	}

	/** Writes all the bytes, or takes back what was written of them and says why. */
	write(bytes: Uint8Array): WriteFault | null {
		let written = 0;
		let interruptions = 0;
		while (written < bytes.length) {
			try {
				const count = this.#disk.write(this.#file, bytes, written);
				written += count;
				if (count === 0) interruptions += 1;
				if (interruptions > interruptionsBorne) return this.#takeBack('EIO', written);
			} catch (error) {
				const code = diskErrorCode(error);
				const isInterruption = code === 'EINTR' || code === 'EAGAIN';
				interruptions += 1;
				if (!isInterruption || interruptions > interruptionsBorne) {
					return this.#takeBack(code, written);
				}
			}
		}
		this.#sizeBytes += written;
		return null;
	}

	/** Cuts the file to this size; only for bytes at its end that are known to be worthless or kept elsewhere. */
	cut(sizeBytes: number): void {
		this.#disk.truncate(this.#file, sizeBytes);
		this.#sizeBytes = sizeBytes;
	}

	/** The bytes that somebody else wrote at the end, which count as part of the file from now on. */
	takeForeignBytes(): Uint8Array {
		const start = this.#sizeBytes;
		const end = this.#disk.statOpen(this.#file).sizeBytes;
		const bytes = this.#disk.read(this.#path, { start, length: Math.min(end - start, 65_536) });
		this.#sizeBytes = end;
		return bytes;
	}

	/** What somebody else did to the file; null when it is as we left it. Throws the disk's errors. */
	change(): FileChange | null {
		const found = this.#disk.stat(this.#path);
		if (found?.identity !== this.#identity) return 'gone';
		if (found.sizeBytes < this.#sizeBytes) return 'shortened';
		return found.sizeBytes > this.#sizeBytes ? 'grown' : null;
	}

	/** Gives the file its final name. */
	rename(path: string): void {
		this.#disk.rename(this.#path, path);
		this.#path = path;
	}

	/** Resolves once the bytes, though not yet the file's name, would outlive a power cut. */
	async syncFile(): Promise<void> {
		await this.#disk.sync(this.#file);
	}

	/** Resolves once all that was written so far would outlive a power cut, the file's name included. */
	async sync(): Promise<void> {
		await this.#disk.sync(this.#file);
		if (this.isPlaced) return;
		// Any folder on the way may be as new as the file.
		for (const folder of withThoseAbove(this.folder)) await this.#disk.syncFolder(folder);
		this.isPlaced = true;
	}

	/** Whether nothing but what it began with was ever written into it. */
	get isBare(): boolean {
		return this.#sizeBytes === this.#bareBytes;
	}

	/** Says that what is in the file now is only its beginning. */
	markBegun(): void {
		this.#bareBytes = this.#sizeBytes;
	}

	/** Removes a file of no worth. */
	remove(): void {
		try {
			this.#disk.remove(this.#path);
		} catch (error) {
			// What stays behind is passed over when nights are read.
			diskErrorCode(error);
		}
	}

	close(): void {
		try {
			this.#disk.close(this.#file);
		} catch (error) {
			// All that mattered was confirmed, or is written again elsewhere.
			diskErrorCode(error);
		}
	}

	#takeBack(code: string, written: number): WriteFault {
		try {
			const { sizeBytes } = this.#disk.statOpen(this.#file);
			// More than we wrote: the end belongs to somebody else, and cutting would destroy it.
			if (sizeBytes > this.#sizeBytes + written) return { code, isUsable: false };
			if (sizeBytes > this.#sizeBytes) this.#disk.truncate(this.#file, this.#sizeBytes);
			return { code, isUsable: true };
		} catch (error) {
			diskErrorCode(error);
			return { code, isUsable: false };
		}
	}
}

/** Where an open file of a night stands. */
export type SegmentPlace = {
	readonly file: number;
	readonly path: string;
	readonly folder: string;
	readonly number: number;
};

function withThoseAbove(folder: string): string[] {
	const above = dirname(folder);
	return above === folder ? [folder] : [folder, ...withThoseAbove(above)];
}
