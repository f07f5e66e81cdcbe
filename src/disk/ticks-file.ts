// What was ticked off of the list for the day after a night, in a file beside the night's own: whole at every tick, so
// that nothing is lost with the program. A file that is not ours or makes no sense is never written over.

import { join } from 'node:path';
import type { DiskFault } from '../base/disk-fault.ts';
import { type Disk, diskError, diskErrorCode } from './disk.ts';
import { ensureFolder } from './folders.ts';
import { whyNotOwn } from './own-file.ts';
import { writeWhole } from './write-whole.ts';

/** Where they are kept. */
export type TicksPlace = {
	readonly disk: Disk;
	/** The folder of nights. */
	readonly folder: string;
	/** The night's id. */
	readonly night: string;
};

const FORMAT = 'rackside-ticks/1';

/** Longer is none of ours. */
const LARGEST_BYTES = 1_000_000;

/** The file of a night's ticks. */
export function ticksPath({ folder, night }: Omit<TicksPlace, 'disk'>): string {
	return join(folder, `${night}.ticks`);
}

/** The lines that were ticked off; none where there is no file, or where it cannot be read, which `problem` says. */
export function readTicks(place: TicksPlace): {
	readonly ticked: ReadonlySet<string>;
	readonly problem: DiskFault | null;
} {
	const path = ticksPath(place);
	try {
		return { ticked: ticksIn(place.disk, path), problem: null };
	} catch (error) {
		return {
			ticked: new Set(),
			problem: { code: 'file-unreadable', path, trouble: troubleOf(error) },
		};
	}
}

/** Ticks a line off, or takes the tick away, in what is kept now; says when that cannot be. */
export function keepTick(place: TicksPlace, line: string, isDone: boolean): DiskFault | null {
	const { disk, folder } = place;
	const path = ticksPath(place);
	try {
		ensureFolder(disk, folder);
		const ticked = new Set(ticksIn(disk, path));
		if (isDone) ticked.add(line);
		else ticked.delete(line);
		const fresh = `${path}.new`;
		if (disk.stat(fresh) !== null) disk.remove(fresh);
		const text = `${JSON.stringify({ format: FORMAT, ticked: [...ticked] })}\n`;
		if (!writeWhole(disk, fresh, Buffer.from(text))) throw diskError('EEXIST');
		disk.rename(fresh, path);
		return null;
	} catch (error) {
		return { code: 'export-failed', path, trouble: troubleOf(error) };
	}
}

function ticksIn(disk: Disk, path: string): ReadonlySet<string> {
	const stat = disk.stat(path);
	if (stat === null) return new Set();
	const trouble = whyNotOwn(disk, path, 'file');
	if (trouble !== null) throw diskError(trouble);
	if (stat.sizeBytes > LARGEST_BYTES) throw diskError('DAMAGED');
	const stored: unknown = JSON.parse(Buffer.from(disk.read(path)).toString('utf8'));
	const { format, ticked } = (stored ?? {}) as { format?: unknown; ticked?: unknown };
	const isList = Array.isArray(ticked) && ticked.every((one) => typeof one === 'string');
	if (format !== FORMAT || !isList) throw diskError('DAMAGED');
	return new Set(ticked as readonly string[]);
}

function troubleOf(error: unknown): string {
	return error instanceof SyntaxError ? 'DAMAGED' : diskErrorCode(error);
}
