// Where a night has a user's preferences from, and how it changes them: the night knows no disk.

import type { Preferences } from '../keys/preferences.ts';
import type { OwnTimes } from '../showfile/show.ts';

export type PreferenceStore = {
	readonly values: () => Preferences;
	/** Takes up what was changed elsewhere meanwhile. */
	readonly readAgain: () => void;
	/** Changes hold at once; gives a sentence when they will not outlast the program. */
	readonly change: (changes: Partial<Preferences>) => Promise<string | null>;
};

/** Preferences for as long as the program runs; the times are those that the show was read with. */
export function unkeptPreferences(times: OwnTimes = {}): PreferenceStore {
	return preferencesFrom({ colours: 'dark', keys: {}, times });
}

/** The same, going on from these. */
export function preferencesFrom(first: Preferences): PreferenceStore {
	let values = first;
	return {
		values: () => values,
		readAgain: () => {},
		change: async (changes) => {
			values = { ...values, ...changes };
			return null;
		},
	};
}
