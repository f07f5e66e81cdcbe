// What a user prefers on the live screen, as far as it can be changed there.

import type { ColourSet } from '../base/colours.ts';
import type { OwnTimes } from '../showfile/show.ts';

/** Keys by action id, in place of the defaults. */
export type KeyChoices = Readonly<Record<string, string>>;

export type Preferences = {
	readonly colours: ColourSet;
	readonly keys: KeyChoices;
	/** What stands in for the built-in times of a show that is read. */
	readonly times: OwnTimes;
};
