// Entries of version 1 told incidents and records apart by numbers counted on one laptop, and instruments that
// were measured by their id in whichever show file. As identities those stay what they were.

import type { AnyEntry } from './record.ts';

/** An entry of version 1 with its numbers as identities. */
export function identified(entry: AnyEntry): AnyEntry {
	const { incident, of, instrument } = entry as Readonly<Record<string, unknown>>;
	return {
		...entry,
		...(typeof incident === 'number' ? { incident: String(incident) } : {}),
		...(typeof of === 'number' ? { of: String(of) } : {}),
		...(entry.k === 'set-up-measured' ? { gear: `id ${instrument}` } : {}),
		...(entry.k === 'show-read-again' ? { isCounted: true } : {}),
	};
}
