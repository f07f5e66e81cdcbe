// A row of the settings view, apart because settings of several kinds are made in several places.

import type { Outcome } from './key-context.ts';

/** What one preference shows, and what enter asks for. */
export type SettingRow = {
	readonly name: string;
	readonly value: string;
	/** What may be said besides: what it is by default, or where it comes from. */
	readonly note: string;
	/** What enter does on it. */
	readonly open: () => Outcome;
};
