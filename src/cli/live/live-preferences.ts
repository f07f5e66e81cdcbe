// Preferences while the live screen is open: read at a glance before the first frame, kept by the
// library that writes them only once one is changed, which takes longer than all else.

import { openSettings, type SettingsPlace, settingsNow } from '../../disk/settings.ts';
import { usableKeys } from '../../keys/key-choices.ts';
import type { Preferences } from '../../keys/preferences.ts';
import type { PreferenceStore } from '../../night/preference-store.ts';
import { usableTimes } from '../../showfile/own-times.ts';
import { diskFaultWords } from '../../words/disk.ts';
import { unusableTimeWords } from '../../words/own-times.ts';

/** The preferences kept in this place, and a sentence for each that cannot be used. */
export function livePreferences(place: SettingsPlace): PreferenceStore & {
	readonly problems: readonly string[];
	/** The port that boards are sent over where nothing else is asked for. */
	readonly midi: string | null;
} {
	const { values: first, problems, midi } = usable(place);
	let values = first;
	let isKept = true;
	return {
		problems,
		midi,
		values: () => values,
		readAgain: () => {
			// What could be kept nowhere but here would be lost by looking there.
			if (isKept) ({ values } = usable(place));
		},
		change: async (changes) => {
			values = { ...values, ...changes };
			const trouble = (await openSettings(place)).change(changes);
			isKept &&= trouble === null;
			return trouble && diskFaultWords(trouble);
		},
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
