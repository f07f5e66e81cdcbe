// What makes a show file unusable, as data: what is wrong, where, and what stood there. Texts are as they
// stand in the file; the sentences are made, and the texts cleaned, in `words`. Codes are stable names for
// tests and JSON.

import type { Place } from '../base/problem.ts';
import type { InstrumentKind } from '../tuning/kind.ts';
import type { UnreadTuning } from '../tuning/tuning.ts';
import type { SourcePath } from './source-node.ts';

/** The lists whose entries have ids that other lines refer to. */
export type IdList = 'techs' | 'players' | 'instruments' | 'songs' | 'packs' | 'supplies';

/** What stood where a value belongs. */
export type FoundValue = { readonly text: string } | 'list' | 'keys' | 'nothing';

/** What a value may be, where it is none of it. */
export type ValueShape = 'text' | 'list' | 'keys';

/** Whose key is missing: the file's own, a key's, or a list entry's, with its id where it has one. */
export type Owner =
	| 'file'
	| { readonly key: string }
	| { readonly entryOf: string; readonly id: string | null };

/** What a single value is not. */
export type BadValue =
	| { readonly code: 'bad-text'; readonly isEmpty: boolean; readonly most: number }
	| { readonly code: 'bad-id'; readonly most: number | null }
	| { readonly code: 'bad-duration'; readonly example: string; readonly least: number }
	| {
			readonly code: 'bad-number';
			readonly from: number;
			readonly to: number;
			readonly isWhole: boolean;
	  }
	| {
			readonly code: 'unknown-word';
			readonly known: readonly string[];
			readonly near: string | null;
	  }
	| { readonly code: 'bad-on-off'; readonly isYesOrNo: boolean }
	| { readonly code: 'bad-length'; readonly most: number }
	| {
			readonly code:
				| 'bad-yes-no'
				| 'bad-date'
				| 'bad-day-time'
				| 'bad-gauge'
				| 'bad-scale'
				| 'bad-shape'
				| 'bad-ohms'
				| 'bad-capacity'
				| 'bad-metres'
				| 'bad-milliseconds'
				| 'bad-slot'
				| 'bad-player-key'
				| 'bad-value';
	  };

/** What a slip in the YAML itself is; `other`: what the library says of one that has no name here. */
export type SyntaxSlip =
	| 'escape'
	| 'indent'
	| 'text-start'
	| 'nested'
	| 'block-in-brackets'
	| 'long-key'
	| 'missing-sign'
	| 'key-over-lines'
	| 'tab'
	| 'unexpected'
	| { readonly other: string };

/** Why a player has no letter, or not the one that is wished. */
export type KeyRefusal = 'is-slot' | 'is-taken' | 'none-left';

export type ShowFaultSaid =
	| { readonly code: 'no-file'; readonly path: string }
	/** `trouble`: the system's own word for it. */
	| { readonly code: 'file-unreadable'; readonly path: string; readonly trouble: string }
	| { readonly code: 'no-show'; readonly isEmpty: boolean }
	| { readonly code: 'include-name'; readonly name: string }
	| { readonly code: 'include-twice'; readonly name: string; readonly isItself: boolean }
	| { readonly code: 'include-many'; readonly most: number }
	| { readonly code: 'nested-include' | 'misplaced-show' }
	| { readonly code: 'in-two-files'; readonly key: string; readonly otherFile: string }
	/** `bytes`: of the files; null where what they come to is too much for a night. */
	| { readonly code: 'too-large'; readonly bytes: number | null }
	| { readonly code: 'not-utf8'; readonly isUtf16: boolean }
	| { readonly code: 'not-text' | 'lone-return' | 'lone-surrogate' | 'many-documents' }
	| { readonly code: 'control-character'; readonly character: number }
	| { readonly code: 'too-deep' | 'too-many-values'; readonly most: number }
	| { readonly code: 'repeated-key'; readonly key: string; readonly firstLine: number | null }
	| { readonly code: 'no-colon' | 'forbidden-key'; readonly key: string }
	/** `found`: null where the library does not say. */
	| { readonly code: 'alias' | 'anchor' | 'tag'; readonly found: string | null }
	| { readonly code: 'merge-key' | 'odd-key' }
	/** `version`: of YAML, where that is said. */
	| { readonly code: 'yaml-directive'; readonly version: string | null }
	| { readonly code: 'syntax'; readonly slip: SyntaxSlip }
	| { readonly code: 'missing-format' | 'empty-set' }
	/** `found`: null where it is no text. */
	| { readonly code: 'unknown-format'; readonly found: string | null }
	| { readonly code: 'more-problems'; readonly more: number }
	| { readonly code: 'renamed-key'; readonly key: string; readonly now: string }
	| {
			readonly code: 'unknown-key';
			readonly key: string;
			readonly known: readonly string[];
			readonly near: string | null;
			/** Where players are keys too. */
			readonly isInCue: boolean;
	  }
	| { readonly code: 'missing-key'; readonly key: string; readonly owner: Owner }
	| { readonly code: 'empty-value'; readonly at: SourcePath }
	| ({ readonly at: SourcePath; readonly value: FoundValue } & BadValue)
	/** `wanted`: nothing where that cannot be told. */
	| {
			readonly code: 'wrong-shape';
			readonly at: SourcePath;
			readonly value: FoundValue;
			readonly wanted: readonly ValueShape[];
	  }
	| {
			readonly code: 'unknown-id';
			readonly list: IdList;
			readonly id: string;
			/** All of the list; none where they are too many to be said. */
			readonly known: readonly string[];
			readonly near: string | null;
	  }
	| {
			readonly code: 'duplicate-id';
			readonly list: string;
			readonly id: string;
			/** Null for a pedal, whose list is in sight. */
			readonly first: Place | null;
	  }
	| { readonly code: 'reserved-id'; readonly list: string; readonly id: string }
	| {
			readonly code: 'unknown-tuning';
			readonly at: SourcePath;
			readonly text: string;
			readonly kind: InstrumentKind;
			readonly unread: UnreadTuning;
	  }
	/** `short`: what the file has it for; null where it stands for itself. */
	| { readonly code: 'unknown-tuning'; readonly text: string; readonly short: string | null }
	/** An output that its supply does not have; `known`: those that it has. */
	| {
			readonly code: 'unknown-output';
			readonly supply: string;
			readonly id: string;
			readonly known: readonly string[];
	  }
	/** A message that says nothing, a controller without its value, a scene that the pedal does not have. */
	| { readonly code: 'midi-unclear'; readonly lacks: 'anything' | 'value' | 'cc' | 'note' }
	| { readonly code: 'mass-key'; readonly key: string }
	| { readonly code: 'unknown-string'; readonly key: string; readonly most: number }
	| { readonly code: 'instead-of-itself' | 'instead-twice'; readonly id: string }
	| {
			readonly code: 'string-count';
			readonly id: string;
			readonly strings: number;
			readonly gauges: number;
	  }
	| {
			readonly code: 'duplicate-slot' | 'duplicate-gear';
			readonly key: string;
			readonly id: string;
			readonly owner: string;
	  }
	| { readonly code: 'interval-place' | 'empty-encore' }
	| {
			readonly code: 'set-item-unclear';
			readonly isSeveral: boolean;
			readonly isGapAstray: boolean;
	  }
	| {
			readonly code: 'player-key';
			readonly id: string;
			readonly refusal: KeyRefusal;
			readonly wished: string | null;
	  }
	| { readonly code: 'part-unclear'; readonly player: string; readonly isBoth: boolean }
	/** `key`: one that stands beside `needs`. */
	| { readonly code: 'part-unclear'; readonly key: string };

/** `where`: left out where the whole is meant. */
export type ShowFault = ShowFaultSaid & { readonly where?: Place };
