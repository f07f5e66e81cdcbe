// What can happen to an instrument or its way to the audience, each with the letter that says it.
// The kinds and their first acts are common practice, no source.

export type IncidentKind = {
	readonly letter: string;
	readonly kind: string;
	readonly words: string;
};

/** Kinds of incident, in the order in which they are shown. */
export const INCIDENT_KINDS: readonly IncidentKind[] = [
	{ letter: 's', kind: 'string-break', words: 'string' },
	{ letter: 'n', kind: 'no-sound', words: 'no sound' },
	{ letter: 'b', kind: 'battery', words: 'battery' },
	{ letter: 'w', kind: 'wireless', words: 'wireless' },
	{ letter: 'h', kind: 'hum', words: 'hum or crackle' },
	{ letter: 'a', kind: 'amp', words: 'amp' },
	{ letter: 'p', kind: 'pedal', words: 'pedal' },
	{ letter: 'd', kind: 'dropped', words: 'dropped or strap' },
	{ letter: 't', kind: 'tuning', words: 'tuning or capo' },
	{ letter: 'c', kind: 'cable', words: 'cable' },
	{ letter: 'o', kind: 'other', words: 'other' },
];

/** What can be wrong with an instrument put aside, by letter. */
export const FAULTS: readonly IncidentKind[] = [
	{ letter: 'e', kind: 'electronics', words: 'electronics' },
	{ letter: 'j', kind: 'jack', words: 'jack' },
	{ letter: 'b', kind: 'battery', words: 'battery' },
	{ letter: 't', kind: 'tuner', words: 'tuner' },
	{ letter: 'n', kind: 'nut-or-bridge', words: 'nut or bridge' },
	{ letter: 'k', kind: 'neck', words: 'neck' },
	{ letter: 'p', kind: 'strap', words: 'strap' },
	{ letter: 'o', kind: 'other', words: 'other' },
];
