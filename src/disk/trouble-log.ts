// The program's own troubles with the disk, a line each with its time, in a file of the data folder. It
// holds nothing that anybody typed and no names: a moment, what happened, the system's word for it.

import { join } from 'node:path';
import type { DiskFault } from '../base/disk-fault.ts';
import type { SaveStatus } from '../journal/night-journal.ts';
import { type Disk, diskErrorCode } from './disk.ts';
import { writeWhole } from './write-whole.ts';

/** One trouble; `detail`: the system's own word or a number, null where there is none. */
export type Trouble = {
	readonly atMs: number;
	readonly code: string;
	readonly detail: string | null;
};

/** Takes troubles, and never makes one. */
export type TroubleLog = {
	readonly note: (code: string, detail?: string | number | null) => void;
	/** Notes what differs from the status before. */
	readonly status: (status: SaveStatus) => void;
};

/** Where the log is, and what time it is. */
export type TroubleLogPlace = {
	readonly disk: Disk;
	/** The data folder. */
	readonly folder: string;
	readonly wallMs: () => number;
};

const LARGEST_BYTES = 65_536;
/** What is left of a log that has grown too large. */
const KEPT_BYTES = 32_768;
/** Lines that wait for a folder that takes none. */
const MOST_WAITING = 200;

/** The log of this data folder. */
export function troubleLog({ disk, folder, wallMs }: TroubleLogPlace): TroubleLog {
	const path = troublesPath(folder);
	let waiting: string[] = [];
	let before: SaveStatus | null = null;

	function flush(): void {
		if (waiting.length === 0) return;
		try {
			append(disk, path, Buffer.from(waiting.join('')));
			waiting = [];
		} catch (error) {
			// The same folder is what the troubles are about: they wait with the night.
			diskErrorCode(error);
			waiting = waiting.slice(-MOST_WAITING);
		}
	}

	function note(code: string, detail: string | number | null = null): void {
		const time = new Date(wallMs()).toISOString();
		waiting.push(`${[time, code, ...(detail === null ? [] : [detail])].join(' ')}\n`);
		flush();
	}

	return {
		note,
		status: (status) => {
			for (const [code, detail] of changes(before, status)) note(code, detail);
			before = status;
			flush();
		},
	};
}

/** The troubles that were noted in this data folder, oldest first; `fault`: where the log cannot be read. */
export function readTroubles(
	disk: Disk,
	folder: string,
): { readonly troubles: readonly Trouble[]; readonly fault: DiskFault | null } {
	const path = troublesPath(folder);
	try {
		if (disk.stat(path) === null) return { troubles: [], fault: null };
		const bytes = disk.read(path, { start: 0, length: 2 * LARGEST_BYTES });
		const lines = Buffer.from(bytes).toString('latin1').split('\n');
		return { troubles: lines.flatMap(troubleIn), fault: null };
	} catch (error) {
		const fault = { code: 'file-unreadable' as const, path, trouble: diskErrorCode(error) };
		return { troubles: [], fault };
	}
}

/** The log's file in this data folder. */
export function troublesPath(folder: string): string {
	return join(folder, 'troubles.log');
}

function troubleIn(line: string): Trouble[] {
	const [, time = '', code = '', detail] =
		/^(\S{20,30}) ([a-z-]{1,40})(?: (\w{1,40}))?$/.exec(line) ?? [];
	const atMs = Date.parse(time);
	return Number.isNaN(atMs) ? [] : [{ atMs, code, detail: detail ?? null }];
}

type Change = readonly [code: string, detail: string | null];

function changes(before: SaveStatus | null, after: SaveStatus): Change[] {
	const { problem, elsewhere, warnings } = after;
	const isNew = problem !== null && problem.code !== before?.problem?.code;
	const isOver = problem === null && (before?.problem ?? null) !== null;
	const away = elsewhere?.trouble ?? null;
	const isAway = away !== null && away !== before?.elsewhere?.trouble;
	const noticed = warnings.slice(before?.warnings.length ?? 0);
	return [
		...(isNew ? [[problem.code, 'trouble' in problem ? problem.trouble : null] as const] : []),
		...(isOver ? [['kept-again', null] as const] : []),
		...(isAway ? [['kept-elsewhere', away] as const] : []),
		...noticed.map((one): Change => {
			if ('trouble' in one) return [one.code, one.trouble];
			return [one.code === 'file-changed' ? `file-${one.change}` : one.code, null];
		}),
	];
}

function append(disk: Disk, path: string, bytes: Uint8Array): void {
	const found = disk.stat(path);
	if (found === null) {
		writeWhole(disk, path, bytes);
		return;
	}
	if (found.sizeBytes > LARGEST_BYTES) shorten(disk, path, found.sizeBytes);
	const file = disk.openExisting(path);
	try {
		const before = disk.statOpen(file).sizeBytes;
		try {
			for (let at = 0; at < bytes.length; ) at += disk.write(file, bytes, at);
		} catch (error) {
			disk.truncate(file, before);
			throw error;
		}
	} finally {
		disk.close(file);
	}
}

function shorten(disk: Disk, path: string, sizeBytes: number): void {
	const start = sizeBytes - KEPT_BYTES;
	const bytes = Buffer.from(disk.read(path, { start, length: KEPT_BYTES }));
	const fresh = `${path}.new`;
	if (disk.stat(fresh) !== null) disk.remove(fresh);
	writeWhole(disk, fresh, bytes.subarray(bytes.indexOf('\n') + 1));
	disk.rename(fresh, path);
}
