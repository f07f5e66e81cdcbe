// One program at a time for one show. On Linux a socket without a file says so, which the system
// frees however the program dies; elsewhere, and across containers, a file with the holder's number.

import { createHash } from 'node:crypto';
import type { Server } from 'node:net';
import { uptime } from 'node:os';
import { dirname, join, resolve } from 'node:path';
import { setTimeout } from 'node:timers/promises';
import { cleanText } from '../base/clean-text.ts';
import type { DiskFault } from '../base/disk-fault.ts';
import { realClock } from './clock.ts';
import { type Disk, diskErrorCode } from './disk.ts';
import { ensureFolder } from './folders.ts';
import {
	isFromEarlierStart,
	isRunning,
	ownIdentity,
	type ProcessIdentity,
} from './process-identity.ts';
import { writeWhole } from './write-whole.ts';

/** A lock to be taken. */
export type LockPlace = {
	readonly disk: Disk;
	/** The folder of nights. */
	readonly folder: string;
	/** What is locked: see `lockName`. */
	readonly name: string;
	readonly self?: ProcessIdentity;
	/** Whether the system has sockets without files; as the platform is, when left out. */
	readonly hasSocket?: boolean;
};

/** The lock, or who has it. */
export type Lock =
	| { readonly isHeld: true; readonly release: () => void }
	| { readonly isHeld: false; readonly fault: Extract<DiskFault, { code: 'locked' }> };

/** The name under which a show file is locked; a rehearsal of it does not keep the show itself from running. */
export function lockName(showPath: string, isRehearsal: boolean): string {
	const sum = createHash('sha256').update(resolve(showPath)).digest('hex').slice(0, 16);
	return isRehearsal ? `rehearsal-${sum}` : `show-${sum}`;
}

/** The file that has the holder's number. */
export function lockPath({ folder, name }: Pick<LockPlace, 'folder' | 'name'>): string {
	return join(folder, `${name}.lock`);
}

/** Who has the lock; null when it cannot be told. */
type Holder = { readonly identity: ProcessIdentity | null };

const LOOK_AT_CLOCK_MS = 1000;
/** Well within the slack of `isFromEarlierStart`. */
const CLOCK_SET_MS = 10_000;

/** How long two who succeed the same dead holder at once need to see each other. */
const doubtMs = 60;

/** Takes the lock, from one who died as well; never asks. */
export async function takeLock(place: LockPlace): Promise<Lock> {
	const { disk, folder, name, hasSocket = process.platform === 'linux' } = place;
	const path = lockPath({ folder, name });
	const socket = hasSocket ? await takeSocket(resolve(path)) : null;
	if (socket === 'taken') return refused({ identity: readHolder(disk, path) });
	const self = place.self ?? ownIdentity();
	const isSuccession = isThere(disk, path);
	let holder = takeFile(disk, path, self);
	if (!holder && !socket && isSuccession) {
		await setTimeout(doubtMs);
		const found = readHolder(disk, path);
		if (found && !isSame(found, self)) holder = { identity: found };
	}
	if (holder) {
		socket?.close();
		return refused(holder);
	}
	const stop = self.boot === '' ? renewByClock(disk, path) : () => {};
	return {
		isHeld: true,
		release: () => {
			stop();
			releaseFile(disk, path, self);
			socket?.close();
		},
	};
}

function isThere(disk: Disk, path: string): boolean {
	try {
		return disk.stat(path) !== null;
	} catch (error) {
		diskErrorCode(error);
		return false;
	}
}

function refused({ identity }: Holder): Lock {
	return { isHeld: false, fault: { code: 'locked', pid: identity?.pid ?? null } };
}

/** Null where the system will not have it. */
async function takeSocket(path: string): Promise<Server | 'taken' | null> {
	const { createServer } = await import('node:net');
	const sum = createHash('sha256').update(path).digest('hex').slice(0, 32);
	return new Promise((done) => {
		const server = createServer((connection) => connection.destroy());
		server.once('error', (error) => {
			done('code' in error && error.code === 'EADDRINUSE' ? 'taken' : null);
		});
		server.listen({ path: `\0rackside-${sum}` }, () => {
			server.unref();
			done(server);
		});
	});
}

/** When the machine was started, by a clock that may be set meanwhile. */
const machineStartMs = (): number => realClock().wallMs() - uptime() * 1000;

/**
 * Has the file the time of now wherever the clock was set, as on a laptop that learns the time from a network: by its
 * old time it would be one from before the machine's start. Gives back what ends that.
 */
function renewByClock(disk: Disk, path: string): () => void {
	let startMs = machineStartMs();
	const look = (): void => {
		if (Math.abs(machineStartMs() - startMs) < CLOCK_SET_MS) return;
		startMs = machineStartMs();
		try {
			const file = disk.openExisting(path);
			try {
				disk.write(file, Buffer.from('\n'), 0);
			} finally {
				disk.close(file);
			}
		} catch (error) {
			// Two who write into one night find each other there.
			diskErrorCode(error);
		}
	};
	const timer = setInterval(look, LOOK_AT_CLOCK_MS);
	timer.unref();
	return () => clearInterval(timer);
}

/** Puts our name into the lock's file; gives the holder when that is somebody who is still running. */
function takeFile(disk: Disk, path: string, self: ProcessIdentity): Holder | null {
	const bytes = Buffer.from(`${JSON.stringify(self)}\n`);
	try {
		ensureFolder(disk, dirname(path));
		const found = disk.stat(path);
		if (found) {
			const holder = readHolder(disk, path);
			const isOld = isFromEarlierStart(found.modifiedMs, {
				boot: self.boot,
				machineStartMs: machineStartMs(),
			});
			if (holder && !isSame(holder, self) && !isOld && isRunning(holder))
				return { identity: holder };
			disk.remove(path);
		}
		// Somebody may be quicker by a moment.
		return writeWhole(disk, path, bytes) ? null : { identity: readHolder(disk, path) };
	} catch (error) {
		diskErrorCode(error);
		// Where no file can be made, no night can be written into by two either.
		return null;
	}
}

function readHolder(disk: Disk, path: string): ProcessIdentity | null {
	try {
		const text = cleanText(
			Buffer.from(disk.read(path, { start: 0, length: 1024 })).toString('utf8'),
		);
		const { pid, startTicks, boot } = JSON.parse(text);
		if (!Number.isSafeInteger(pid) || pid <= 0 || typeof boot !== 'string') return null;
		return { pid, startTicks: typeof startTicks === 'number' ? startTicks : null, boot };
	} catch {
		return null;
	}
}

function releaseFile(disk: Disk, path: string, self: ProcessIdentity): void {
	try {
		const holder = readHolder(disk, path);
		if (holder && isSame(holder, self)) disk.remove(path);
	} catch (error) {
		// A lock that stays behind is taken over by the next who comes.
		diskErrorCode(error);
	}
}

function isSame(one: ProcessIdentity, other: ProcessIdentity): boolean {
	return one.pid === other.pid && one.startTicks === other.startTicks && one.boot === other.boot;
}
