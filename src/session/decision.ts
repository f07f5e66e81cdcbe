// What deciding comes to, and the two ways of saying it. Apart, since each group of commands decides in
// a file of its own.

import type { Entry } from '../journal/entry.ts';

export type Decision =
	| { readonly ok: true; readonly entries: readonly Entry[] }
	/** `why`: a whole sentence for the person at the keys. */
	| { readonly ok: false; readonly why: string };

/** These entries, all for one record. */
export function yes(...entries: readonly Entry[]): Decision {
	return { ok: true, entries };
}

/** None, and the whole sentence that says why. */
export function no(why: string): Decision {
	return { ok: false, why };
}
