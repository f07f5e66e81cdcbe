// Preferences while the live screen is open: read at a glance before the first frame, kept by the
// library that writes them only once one is changed, which takes longer than all else.

import { openSettings, type SettingsPlace, settingsNow } from '../disk/settings.ts';
import { usableKeys } from '../keys/key-choices.ts';
import type { Preferences } from '../keys/preferences.ts';
import type { PreferenceStore } from '../night/preference-store.ts';

/** The preferences kept in this place, and a sentence for each that cannot be used. */
export function livePreferences(place: SettingsPlace): PreferenceStore & {
	readonly problems: readonly string[];
} {
	const { looks, keys: kept } = settingsNow(place);
	const { keys, problems } = usableKeys(kept);
	let values: Preferences = { looks, keys };
	return {
		problems,
		values: () => values,
		change: async (changes) => {
			values = { ...values, ...changes };
			return (await openSettings(place)).change(changes);
		},
	};
}
