// The show file beside a night that goes by its own copy: read when somebody asks, and said once that it
// has changed, as soon as there is room to say it.

import { decide } from '../session/decide.ts';
import { withOwnTimes } from '../showfile/own-times.ts';
import type { Show } from '../showfile/show.ts';
import type { ShowReading } from '../showfile/show-from-files.ts';
import type { NightUnderWay } from './night-under-way.ts';
import { changedWords, createShowWatch, type ShowFile } from './show-watch.ts';

export type NightShow = {
	/** Looks after this file from now on. */
	readonly watch: (file: ShowFile) => void;
	/** Reads it again; null where there is none to read. */
	readonly read: () => (() => ShowReading) | null;
	/** The night goes by what was read last. */
	readonly goesByIt: () => void;
	/** When the file came to say something else than the night goes by; null while it does not. */
	readonly changedAtMs: () => number | null;
	/** Looks after the file, and says it when it has changed. */
	readonly sayWhenChanged: () => void;
};

/** The show file of the night under way; `dayOffsetMinutes`: what to add to UTC for the time of day there. */
export function nightShow(underWay: NightUnderWay, dayOffsetMinutes: number): NightShow {
	const { session, clock, look, setLook, preferences } = underWay;
	const watch = createShowWatch(goesBy);
	/** The change that was said already. */
	let saidMs: number | null = null;
	const changedAtMs = () => watch.changedAtMs(session().show);

	/** The technician's own times are not in the file, and may be others by now. */
	function goesBy(read: Show): boolean {
		const mine = withOwnTimes(read, session().show.ownTimes ?? {});
		return !decide(session(), { do: 'read-show-again', show: mine }, clock.nowMs()).ok;
	}

	/** One that says what the night goes by is not news any more. */
	function read(): ShowReading {
		const { show, problems } = watch.read?.() ?? { show: null, problems: [] };
		if (show !== null && goesBy(show)) watch.goesByIt(session().show);
		preferences.readAgain();
		return { show: show && withOwnTimes(show, preferences.values().times), problems };
	}

	return {
		watch: watch.watch,
		read: () => watch.read && read,
		goesByIt: () => watch.goesByIt(session().show),
		changedAtMs,
		sayWhenChanged: () => {
			watch.look();
			const atMs = changedAtMs();
			const { message, open } = look();
			if (atMs === null || atMs === saidMs || message !== null || open) return;
			saidMs = atMs;
			setLook({ message: changedWords(atMs, dayOffsetMinutes, underWay.keyOf('read-show')) });
		},
	};
}
