// What was ticked off of the list for the day after a night, in a file beside the night's own: whole at every tick, so
// that nothing is lost with the program. A file that is not ours or makes no sense is never written over.

import { join } from 'node:path';
import type { DiskFault } from '../base/disk-fault.ts';
import type { Disk } from './disk.ts';
import { changeSmallFile, damaged, readSmallFile, type SmallFile } from './small-file.ts';

/** Where they are kept. */
export type TicksPlace = {
	readonly disk: Disk;
	/** The folder of nights. */
	readonly folder: string;
	/** The night's id. */
	readonly night: string;
};

const FORMAT = 'rackside-ticks/1';

/** The file of a night's ticks. */
export function ticksPath({ folder, night }: Omit<TicksPlace, 'disk'>): string {
	return join(folder, `${night}.ticks`);
}

/** The lines that were ticked off; none where there is no file, or where it cannot be read, which `problem` says. */
export function readTicks(place: TicksPlace): {
	readonly ticked: ReadonlySet<string>;
	readonly problem: DiskFault | null;
} {
	const { value: ticked, problem } = readSmallFile(fileOf(place));
	return { ticked, problem };
}

/** Ticks a line off, or takes the tick away, in what is kept now; says when that cannot be. */
export function keepTick(place: TicksPlace, line: string, isDone: boolean): DiskFault | null {
	return changeSmallFile(fileOf(place), (before) => {
		const ticked = new Set(before);
		if (isDone) ticked.add(line);
		else ticked.delete(line);
		return { format: FORMAT, ticked: [...ticked] };
	});
}

function fileOf(place: TicksPlace): SmallFile<ReadonlySet<string>> {
	return {
		disk: place.disk,
		path: ticksPath(place),
		largestBytes: 1_000_000,
		none: new Set(),
		valueOf: (stored) => {
			const { format, ticked } = (stored ?? {}) as { format?: unknown; ticked?: unknown };
			const isList = Array.isArray(ticked) && ticked.every((one) => typeof one === 'string');
			if (format !== FORMAT || !isList) throw damaged();
			return new Set(ticked as readonly string[]);
		},
	};
}
