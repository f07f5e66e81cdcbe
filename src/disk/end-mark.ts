// An empty file beside a night whose name tells how many records it had when it was left; none while it is under
// way for the first time. A full disk takes a name when it takes no byte more; so steps that could not be saved are
// missed at the next start, and so are what was cut off a file exactly at a line's end and a night that is gone.

import { join } from 'node:path';
import type { LeftAs } from '../journal/night-journal.ts';
import { type Disk, diskErrorCode } from './disk.ts';

/** How far a night had come when it was left: the number of its last record, kept or not; 0 for one just begun. */
export type NightEnd = { readonly id: string; readonly seq: number; readonly as: LeftAs | 'begun' };

const PATTERN = /^(.+)\.(?:(left|over)-([1-9]\d{0,14})|begun)$/;

/** The end that a file of this name tells; null when it tells none. */
export function markedEnd(fileName: string): NightEnd | null {
	const [, id, as, seq] = PATTERN.exec(fileName) ?? [];
	if (id === undefined) return null;
	if (as === undefined) return { id, seq: 0, as: 'begun' };
	return { id, seq: Number(seq), as: as === 'over' ? 'over' : 'left' };
}

/** Marks the night's end, or its beginning, in the first of these folders that takes the name. */
export function markEnd(disk: Disk, folders: readonly string[], { id, seq, as }: NightEnd): void {
	if (seq === 0 && as !== 'begun') return;
	for (const folder of folders) {
		try {
			const path = join(folder, as === 'begun' ? `${id}.begun` : `${id}.${as}-${seq}`);
			const before = disk.list(folder).find((name) => markedEnd(name)?.id === id);
			if (before === undefined) disk.close(disk.openNew(path));
			else if (join(folder, before) !== path) disk.rename(join(folder, before), path);
			return;
		} catch (error) {
			// Where no folder takes it, it stays unknown what is missing.
			diskErrorCode(error);
		}
	}
}
