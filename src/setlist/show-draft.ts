// A show as it is being made from a set list, from answers or from an earlier night: what a person would
// write into the file, before it is written. It may be incomplete; the file that comes of it can be read all the same.

import type { InstrumentKind } from '../tuning/kind.ts';

/** Lists keep the order in which they are written. */
export type ShowDraft = {
	readonly title: string;
	readonly venue: string | null;
	/** `2026-06-12` */
	readonly date: string | null;
	/** `20:30` */
	readonly start: string | null;
	readonly curfew: string | null;
	readonly players: readonly DraftPlayer[];
	readonly instruments: readonly DraftInstrument[];
	/** The catalogue, in the order of the list. */
	readonly songs: readonly DraftSong[];
	readonly set: readonly DraftItem[];
	/** Written above the file's first key, one line each, as sentences. */
	readonly remarks: readonly string[];
	/** Files of the same folder that hold the rest, such as the gear; what they hold is not written here. */
	readonly include?: readonly string[];
	/** Written behind a value of `show`, such as where it comes from. */
	readonly showRemarks?: Readonly<Partial<Record<ShowKey, string>>>;
	/** Written above a part of the file, one line each. */
	readonly partRemarks?: Readonly<Partial<Record<DraftPart, readonly string[]>>>;
	/** Written above an entry in a further key, one sentence each: the key, then ids and keys down to the entry. */
	readonly furtherRemarks?: readonly { readonly at: readonly string[]; readonly text: string }[];
	/** Further keys of `show` as they are written there. */
	readonly furtherShow?: Readonly<Record<string, unknown>>;
	/** Further keys at the file's top, such as `packs`, as they are written there. */
	readonly further?: Readonly<Record<string, unknown>>;
};

export type ShowKey = 'title' | 'venue' | 'date' | 'start' | 'curfew';

export type DraftPart = 'players' | 'instruments' | 'songs' | 'set';

export type DraftPlayer = {
	readonly id: string;
	readonly name: string;
	readonly plays: string | null;
	/** Further keys of the file as they are written there. */
	readonly further?: Readonly<Record<string, unknown>>;
	readonly remarks?: readonly string[];
};

export type DraftInstrument = {
	readonly id: string;
	readonly name: string;
	readonly slot: string | null;
	readonly kind: InstrumentKind;
	/** Ids of players; null for anybody who plays its kind. */
	readonly for: readonly string[] | null;
	/** As the file writes it: a name, or notes. */
	readonly tuning: string;
	/** Further keys of the file as they are written there, such as `strung` of an earlier night. */
	readonly further?: Readonly<Record<string, unknown>>;
	readonly remarks?: readonly string[];
};

/** What a player has in a song; a player who is left out keeps what they have. */
export type DraftCell =
	| { readonly kind: 'none' }
	| {
			readonly kind: 'named';
			readonly instrument: string;
			/** Null: what it is in. */
			readonly tuning: string | null;
			readonly capo: number;
			/** Further keys of the file as they are written there. */
			readonly further?: Readonly<Record<string, unknown>>;
	  }
	| {
			readonly kind: 'needs';
			readonly instrumentKind: InstrumentKind;
			readonly sounds: string;
			readonly features?: readonly string[];
			/** An instrument's id. */
			readonly prefer?: string | null;
			readonly further?: Readonly<Record<string, unknown>>;
	  };

export type DraftSong = {
	readonly id: string;
	readonly title: string;
	readonly seconds: number | null;
	/** Beats a minute. */
	readonly tempo: number | null;
	readonly starts: string | null;
	readonly ends: 'stop' | 'ring' | 'segue' | 'talk' | null;
	readonly notes: string | null;
	/** By the player's id. */
	readonly hands: Readonly<Record<string, DraftCell>>;
	readonly further?: Readonly<Record<string, unknown>>;
	/** Written beside the song: what a cell could mean, what was guessed. */
	readonly remarks?: readonly string[];
};

export type DraftItem =
	| {
			readonly kind: 'song';
			readonly song: string;
			readonly gapSeconds: number | null;
			readonly isEncore: boolean;
			readonly remarks?: readonly string[];
	  }
	| {
			/** Between two songs that are no encore: the file can have none elsewhere. */
			readonly kind: 'interval';
			readonly seconds: number;
			readonly remarks?: readonly string[];
	  };
