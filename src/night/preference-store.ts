// Where a night has a user's preferences from, and how it changes them: the night knows no disk.

import type { Preferences } from '../keys/preferences.ts';

export type PreferenceStore = {
	readonly values: () => Preferences;
	/** Changes hold at once; gives a sentence when they will not outlast the program. */
	readonly change: (changes: Partial<Preferences>) => Promise<string | null>;
};

/** Preferences for as long as the program runs. */
export function unkeptPreferences(): PreferenceStore {
	let values: Preferences = { looks: 'dark', keys: {} };
	return {
		values: () => values,
		change: async (changes) => {
			values = { ...values, ...changes };
			return null;
		},
	};
}
