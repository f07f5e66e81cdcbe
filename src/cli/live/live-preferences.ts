// Preferences while the live screen is open: read at a glance before the first frame, kept only once one is
// changed, since loading what writes them takes longer than all else.

import { realClock } from '../../disk/clock.ts';
import { type SettingsPlace, settingsNow } from '../../disk/settings.ts';
import { type KeeperClock, settingsKeeper } from '../../disk/settings-keeper.ts';
import { usableKeys } from '../../keys/key-choices.ts';
import type { Preferences } from '../../keys/preferences.ts';
import type { PreferenceStore } from '../../night/preference-store.ts';
import { usableTimes } from '../../showfile/own-times.ts';
import { diskFaultWords, settingsLostWords } from '../../words/disk.ts';
import { unusableTimeWords } from '../../words/own-times.ts';

/** The preferences kept in this place, and a sentence for each that cannot be used. */
export function livePreferences(place: SettingsPlace): PreferenceStore & {
	readonly problems: readonly string[];
	/** The port that boards are sent over where nothing else is asked for. */
	readonly midi: string | null;
	/** What was changed and is lost with the program, a sentence; null where nothing is. */
	readonly lost: () => string | null;
} {
	const { values: first, problems, midi } = usable(place);
	const keeper = settingsKeeper(place, keeperClock());
	let values = first;
	return {
		problems,
		midi,
		values: () => values,
		readAgain: () => {
			// What could be kept nowhere but here would be lost by looking there.
			if (keeper.unkept() === null) ({ values } = usable(place));
		},
		change: async (changes) => {
			values = { ...values, ...changes };
			const trouble = await keeper.change(changes);
			return trouble && diskFaultWords(trouble);
		},
		lost: () => {
			const fault = keeper.unkept();
			return fault && settingsLostWords(fault);
		},
	};
}

/** Keeps the path of the show that was opened last among the preferences, for the first page to offer it again. */
export function rememberShow(place: SettingsPlace, path: string): void {
	if (settingsNow(place).values.lastShow === path) return;
	settingsKeeper(place, keeperClock())
		.change({ lastShow: path })
		// No show ends for want of preferences.
		.catch(() => {});
}

function keeperClock(): KeeperClock {
	return {
		nowMs: realClock().upMs,
		wait: (milliseconds) =>
			new Promise((done) => {
				setTimeout(done, milliseconds).unref();
			}),
	};
}

function usable(place: SettingsPlace): {
	readonly values: Preferences;
	readonly problems: readonly string[];
	readonly midi: string | null;
} {
	const { values: kept, problem } = settingsNow(place);
	const { keys, problems } = usableKeys(kept.keys);
	const { times, problems: ofTimes } = usableTimes(kept.times);
	return {
		values: { colours: kept.colours, keys, times },
		midi: kept.midi,
		problems: [
			...(problem === null ? [] : [diskFaultWords(problem)]),
			...problems,
			...ofTimes.map(unusableTimeWords),
		],
	};
}
