// Whether the show file still says what the night goes by. The night carries its own copy, so a changed
// file changes nothing by itself: it is only said, once, and read when somebody asks.

import { dayTimeText } from '../base/show-clock.ts';
import type { Show } from '../showfile/show.ts';
import type { ShowReading } from '../showfile/show-from-files.ts';
import { showFileChanged } from '../words/questions.ts';

/** The file of a night's show and what it includes, as often looked at as one likes. */
export type ShowFile = {
	/** A sum of what the files hold now, and since when by the wall clock. */
	readonly version: () => { readonly sum: string; readonly sinceMs: number };
	readonly read: () => ShowReading;
};

export type ShowWatch = {
	/** From now on looks after this file; reads it once, since what it includes is known only then. */
	readonly watch: (file: ShowFile) => void;
	/** Looks whether it has changed; to be called now and then, since a disk may take its time. */
	readonly look: () => void;
	/** When the file, as last looked at, came to say something else than this show of the night, by the wall clock; null while it does not. */
	readonly changedAtMs: (show: Show) => number | null;
	/** Reads it; null when there is no file to look after. */
	readonly read: (() => ShowReading) | null;
	/** This show of the night is what was read last. */
	readonly goesByIt: (show: Show) => void;
};

/** A watch over no file yet; `goesBy`: whether the night, as it stands, goes by a show that was read. */
export function createShowWatch(goesBy: (read: Show) => boolean): ShowWatch {
	let file: ShowFile | null = null;
	let seen = { sum: '', sinceMs: 0 };
	let last: { readonly sum: string; readonly show: Show | null } = { sum: '', show: null };
	// By the night's own shows, so that undo finds its way back to what each was read from.
	const sums = new WeakMap<Show, string>();
	const read = (from: ShowFile): ShowReading => {
		const reading = from.read();
		seen = from.version();
		last = { sum: seen.sum, show: reading.show };
		return reading;
	};
	return {
		watch: (one) => {
			read(one);
			file = one;
		},
		look: () => {
			if (file !== null) seen = file.version();
		},
		changedAtMs: (show) => {
			if (file === null) return null;
			// Undo and putting back make a night's show anew, and may reach one from before this watch.
			const sum = sums.get(show) ?? (last.show !== null && goesBy(last.show) ? last.sum : '');
			sums.set(show, sum);
			return sum === seen.sum ? null : seen.sinceMs;
		},
		get read() {
			const from = file;
			return from === null ? null : () => read(from);
		},
		goesByIt: (show) => sums.set(show, last.sum),
	};
}

/** What is said when the file has changed; `key` reads it again. */
export function changedWords(atMs: number, offsetMinutes: number, key: string): string {
	const clock = dayTimeText(atMs, offsetMinutes).slice(0, 5);
	return showFileChanged(clock, key);
}
