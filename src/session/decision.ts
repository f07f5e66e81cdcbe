// What deciding comes to, and the two ways of saying it. Apart, since each group of commands decides in
// a file of its own.

import type { Entry } from '../journal/entry.ts';
import type { Refusal } from './refusal.ts';

export type Decision =
	| { readonly ok: true; readonly entries: readonly Entry[] }
	| { readonly ok: false; readonly why: Refusal };

/** These entries, all for one record. */
export function yes(...entries: readonly Entry[]): Decision {
	return { ok: true, entries };
}

/** None, and why. */
export function no(why: Refusal): Decision {
	return { ok: false, why };
}
