// What `check` finds in a show that can be read: risky or worth a look, never a reason to refuse it.

/** Stable names for tests and JSON. */
export type FindingCode =
	| 'two-hands'
	| 'nothing-to-keep'
	| 'segue-hand-over'
	| 'gap-too-short'
	| 'floating-retune'
	| 'far-tuning'
	| 'capo-on-bass'
	| 'for-others'
	| 'needs-unmet'
	| 'prefer-unfit'
	| 'shared-pack'
	| 'pedal-missing'
	| 'past-curfew'
	| 'no-stand-in'
	| 'no-slot'
	| 'not-played'
	| 'no-length'
	| 'near-past-end'
	| 'string-tension'
	| 'octaves-spoilt'
	| 'offsets-differ'
	| 'shape-strings'
	| 'shape-without-hands'
	| 'stage-drift'
	| 'stage-humidity';

/** One thing to look at before the doors open. */
export type Finding = {
	readonly code: FindingCode;
	/** A risk goes wrong on the night if nobody does anything; a note is only good to know. */
	readonly severity: 'risk' | 'note';
	readonly song?: string;
	readonly player?: string;
	readonly instrument?: string;
	/** One or two whole sentences. */
	readonly text: string;
};
