// Why a command makes no entries, as data. The sentence that a person reads of it is made in `words`.

export type Refusal =
	| { readonly code: 'show-closed' }
	| { readonly code: 'set-over' }
	| { readonly code: 'no-song-on' }
	| { readonly code: 'no-song-to-step-back' }
	| { readonly code: 'at-song-start' }
	/** `isOn`: a song is on, which can still be ended. */
	| { readonly code: 'no-song-beside'; readonly side: 'before' | 'after'; readonly isOn: boolean }
	| { readonly code: 'unknown-song' }
	| { readonly code: 'unknown-player' }
	| { readonly code: 'unknown-instrument' }
	| { readonly code: 'unknown-pedal' }
	| { readonly code: 'not-on-list' }
	| {
			readonly code:
				| 'next-already'
				| 'dropped-already'
				| 'listed-already'
				| 'there-already'
				| 'on-now'
				| 'played';
			readonly song: string;
	  }
	| { readonly code: 'behind-what-is-on' }
	| { readonly code: 'interval-stays' }
	| { readonly code: 'encore-takes-songs' }
	| { readonly code: 'named-already'; readonly player: string }
	| { readonly code: 'nothing-new-in-file' }
	| { readonly code: 'no-hand-over-open' }
	| { readonly code: 'no-break-open' }
	| { readonly code: 'given-since'; readonly player: string }
	/** `instrument`: null for empty hands. */
	| { readonly code: 'has-already'; readonly player: string; readonly instrument: string | null }
	| {
			readonly code: 'in-hands' | 'worked-in-hands';
			readonly player: string;
			readonly instrument: string;
	  }
	| {
			readonly code:
				| 'string-down'
				| 'not-ready-as-it-stands'
				| 'out'
				| 'out-already'
				| 'faulty'
				| 'not-put-aside'
				| 'not-on-rack';
			readonly instrument: string;
	  }
	| { readonly code: 'nothing-to-mark-ready' }
	| { readonly code: 'no-incident' }
	| { readonly code: 'nothing-added' }
	| { readonly code: 'empty-memo' }
	| { readonly code: 'time-already' }
	| {
			readonly code: 'stuck-already' | 'not-stuck';
			readonly player: string;
			readonly pedal: string;
	  }
	| { readonly code: 'no-fault-open' }
	| { readonly code: 'no-pack-on'; readonly player: string }
	| { readonly code: 'no-battery' }
	| { readonly code: 'suspect-already' | 'not-suspect'; readonly pack: string };
