// Whether the show file still says what the night goes by. The night carries its own copy, so a changed
// file changes nothing by itself: it is only said, once, and read when somebody asks.

import { dayTimeText } from '../base/show-clock.ts';
import type { Show } from '../showfile/show.ts';
import type { ShowReading } from '../showfile/show-from-files.ts';

/** The file of a night's show and what it includes, as often looked at as one likes. */
export type ShowFile = {
	/** A sum of what the files hold now, and since when by the wall clock. */
	readonly version: () => { readonly sum: string; readonly sinceMs: number };
	readonly read: () => ShowReading;
};

export type ShowWatch = {
	/** From now on looks after this file; `goesBy`: whether the night goes by what it says. */
	readonly watch: (file: ShowFile, goesBy: (read: Show) => boolean, show: Show) => void;
	/** Looks whether it has changed; to be called now and then, since a disk may take its time. */
	readonly look: () => void;
	/** When the file, as last looked at, came to say something else than this show of the night, by the wall clock; null while it does not. */
	readonly changedAtMs: (show: Show) => number | null;
	/** Reads it; null when there is no file to look after. */
	readonly read: (() => ShowReading) | null;
	/** This show of the night is what was read last. */
	readonly goesByIt: (show: Show) => void;
};

/** A watch over no file yet. */
export function createShowWatch(): ShowWatch {
	let file: ShowFile | null = null;
	let seen = { sum: '', sinceMs: 0 };
	let readSum = '';
	// By the night's own shows, so that undo finds its way back to what each was read from.
	const sums = new WeakMap<Show, string>();
	const read = (from: ShowFile): ShowReading => {
		const reading = from.read();
		// What a file includes is known once it was read.
		seen = from.version();
		readSum = seen.sum;
		return reading;
	};
	return {
		watch: (one, goesBy, show) => {
			const { show: found } = read(one);
			sums.set(show, found !== null && goesBy(found) ? readSum : '');
			file = one;
		},
		look: () => {
			if (file !== null) seen = file.version();
		},
		changedAtMs: (show) => {
			const known = sums.get(show);
			return known === undefined || known === seen.sum ? null : seen.sinceMs;
		},
		get read() {
			const from = file;
			return from === null ? null : () => read(from);
		},
		goesByIt: (show) => sums.set(show, readSum),
	};
}

/** What is said when the file has changed; `key` reads it again. */
export function changedWords(atMs: number, offsetMinutes: number, key: string): string {
	const clock = dayTimeText(atMs, offsetMinutes).slice(0, 5);
	return `The show file changed at ${clock}; ${key} in the set view reads it again.`;
}
