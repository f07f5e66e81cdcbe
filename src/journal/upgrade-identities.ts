// Entries of version 1 told incidents and records apart by numbers counted on one laptop. As identities those
// numbers stay what they were.

import type { AnyEntry } from './record.ts';

/** An entry of version 1 with its numbers as identities. */
export function identified(entry: AnyEntry): AnyEntry {
	const { incident, of } = entry as { readonly incident?: unknown; readonly of?: unknown };
	return {
		...entry,
		...(typeof incident === 'number' ? { incident: String(incident) } : {}),
		...(typeof of === 'number' ? { of: String(of) } : {}),
		...(entry.k === 'show-read-again' ? { isCounted: true } : {}),
	};
}
