// What `check` finds in a show that can be read: risky or worth a look, never a reason to refuse it. Data,
// things by their ids; the sentences are made in `words`.

import type { InstrumentKind } from '../tuning/kind.ts';

/** Where in the set; `cue`: the cue point's name, left out at a song's start. */
type At = { readonly song: string; readonly cue?: string };

/** What a player has where the one that is named cannot be had. */
export type Gets = 'nothing' | 'backup' | { readonly capo: number };

/** Who gets what in a gap; `isBackup`: a backup for it. */
export type Given = {
	readonly player: string;
	readonly instrument: string;
	readonly isBackup: boolean;
};

/** A risk goes wrong on the night if nobody does anything; a note is only good to know. */
export type Severity = 'risk' | 'note';

/** One thing to look at before the doors open. Codes are stable names for tests and JSON. */
export type Finding = {
	readonly severity: Severity;
	readonly song?: string;
	readonly player?: string;
	readonly instrument?: string;
} & (
	| ({
			readonly code: 'two-hands';
			readonly instrument: string;
			/** All who are, at once. */
			readonly named: readonly string[];
			/** Who keeps it from them without being named. */
			readonly keeper: string | null;
			readonly gets: Gets;
	  } & At)
	/** `until`: null for the whole set. */
	| {
			readonly code: 'nothing-to-keep';
			readonly song: string;
			readonly player: string;
			readonly until: At | null;
	  }
	| {
			readonly code: 'segue-hand-over' | 'gap-too-short';
			readonly song: string;
			readonly gapSeconds: number;
			readonly seconds: number;
			readonly given: readonly Given[];
	  }
	/** No song of the set has a gap; `songs`: before which the assumed one is filled or too short, and the seconds that each needs. */
	| {
			readonly code: 'no-gap';
			readonly songs: readonly string[];
			readonly needs: readonly number[];
			readonly gapSeconds: number;
			/** Null where there is no encore. */
			readonly encoreGapSeconds: number | null;
	  }
	/** `stays`: the tuning that its bridge is set to. */
	| ({
			readonly code: 'floating-retune';
			readonly player: string;
			readonly instrument: string;
			readonly tuning: string;
			readonly stays: string;
			readonly gets: Gets;
	  } & At)
	/** `entry`: what is listed among what is played instead of `instrument`. */
	| {
			readonly code: 'floating-retune';
			readonly instrument: string;
			readonly entry: string;
			readonly tuning: string;
			readonly stays: string;
	  }
	| ({
			readonly code: 'far-tuning';
			readonly instrument: string;
			readonly tuning: string;
			/** What its strings are for. */
			readonly from: string;
	  } & At)
	| ({
			readonly code: 'capo-on-bass';
			readonly instrument: string;
			readonly capo: number;
			readonly kind: InstrumentKind;
	  } & At)
	| {
			readonly code: 'capo-on-bass';
			readonly instrument: string;
			readonly entry: string;
			readonly capo: number;
			readonly kind: InstrumentKind;
	  }
	| ({
			readonly code: 'for-others';
			readonly player: string;
			readonly instrument: string;
			readonly owners: readonly string[];
	  } & At)
	| ({
			readonly code: 'needs-unmet';
			readonly player: string;
			readonly kind: InstrumentKind;
			readonly sounds: string;
			/** What would do, and somebody else has. */
			readonly inOtherHands: readonly string[];
	  } & At)
	| ({ readonly code: 'prefer-unfit'; readonly player: string; readonly instrument: string } & At)
	| ({
			readonly code: 'shared-pack';
			readonly players: readonly string[];
			readonly pack: string;
	  } & At)
	/** `pedal`: null where the player has no board at all. */
	| {
			readonly code: 'pedal-missing';
			readonly song: string;
			readonly player: string;
			readonly pedal: string | null;
	  }
	/** Minutes since midnight of the first day. */
	| {
			readonly code: 'past-curfew';
			readonly endMinutes: number;
			readonly curfewMinutes: number;
			readonly overSeconds: number;
	  }
	| { readonly code: 'no-slot'; readonly instrument: string }
	| { readonly code: 'not-played' | 'no-length'; readonly songs: readonly string[] }
	| {
			readonly code: 'near-past-end';
			readonly song: string;
			readonly cue: string;
			readonly nearSeconds: number;
			readonly lengthSeconds: number;
	  }
	/** `percentLeft`: of its strength; 0 or less is past it. */
	| {
			readonly code: 'string-tension';
			readonly instrument: string;
			readonly string: number;
			readonly tuning: string;
			readonly percentLeft: number;
			readonly isEstimated: boolean;
	  }
	| {
			readonly code: 'octaves-spoilt';
			readonly instrument: string;
			readonly tuning: string;
			readonly strings: readonly [number, number];
			/** Positive is wide. */
			readonly cents: number;
			readonly mostCents: number;
	  }
	/** `offsets`: which strings by how much, as on the run sheet; empty for none. */
	| {
			readonly code: 'offsets-differ';
			readonly instrument: string;
			readonly tuning: string;
			readonly wanted: readonly { readonly player: string; readonly offsets: string }[];
	  }
	/** `strings`: courses, where there are two strings each. */
	| {
			readonly code: 'shape-strings';
			readonly song: string;
			readonly player: string;
			readonly instrument: string;
			readonly shape: string;
			readonly frets: number;
			readonly strings: number;
			readonly isInCourses: boolean;
	  }
	| { readonly code: 'shape-without-hands'; readonly song: string; readonly player: string }
	| { readonly code: 'stage-drift'; readonly drifted: readonly Drifted[] }
	| { readonly code: 'stage-humidity'; readonly percent: number; readonly is: 'damp' | 'dry' }
);

/** How far an instrument can have moved, at most. */
export type Drifted = {
	readonly instrument: string;
	/** How much warmer the stage is than when it was tuned; negative is colder. */
	readonly kelvins: number;
	/** The string that can have gone furthest. */
	readonly string: number;
	/** How far at most; negative is flat. */
	readonly cents: number;
};
