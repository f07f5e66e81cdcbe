// An empty file in a night's own folder while the night is kept elsewhere. A full disk takes a name when it
// takes no byte more; so a night whose other place was emptied is not forgotten without a word.

import { join } from 'node:path';
import { type Disk, diskErrorCode } from './disk.ts';

const ENDING = '.elsewhere';

/** A night, and the folder that it belongs into. */
export type AwayPlace = { readonly disk: Disk; readonly home: string; readonly id: string };

/** The path of the mark. */
export function awayMarkPath({ home, id }: Omit<AwayPlace, 'disk'>): string {
	return join(home, `${id}${ENDING}`);
}

/** The night that a file of this name is the mark of; null when it is none. */
export function markedNight(fileName: string): string | null {
	return fileName.endsWith(ENDING) ? fileName.slice(0, -ENDING.length) : null;
}

/** Marks the night as kept elsewhere, where the folder takes a name. */
export function markAway({ disk, ...place }: AwayPlace): void {
	try {
		disk.close(disk.openNew(awayMarkPath(place)));
	} catch (error) {
		// It is there already, or nothing can be left there at all.
		diskErrorCode(error);
	}
}

/** The night is in its own folder again. */
export function unmarkAway({ disk, ...place }: AwayPlace): void {
	try {
		const path = awayMarkPath(place);
		if (disk.stat(path) !== null) disk.remove(path);
	} catch (error) {
		diskErrorCode(error);
	}
}
