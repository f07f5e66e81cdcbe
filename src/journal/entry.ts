// The facts that a night is made of, in past tense. Everything a night knows is a fold over these; once
// released, a kind of entry keeps its meaning for ever.

import type { RecordId } from './record.ts';

/** Milliseconds of the night's clock: since 1970, but never running backwards and never jumping. */
export type NightMs = number;

/** What one player was given. `instrument` null: hands left empty. */
export type Handed = {
	readonly player: string;
	readonly instrument: string | null;
	/** The tuning and capo recorded as on; left out where what is believed stands. */
	readonly tuning?: { readonly name: string; readonly notes: readonly string[] };
	readonly capo?: number;
};

/** What the technician named for a player in one song tonight: an instrument and what is to be on it, or empty hands. */
export type TonightPart =
	| {
			readonly kind: 'named';
			readonly instrument: string;
			readonly tuning: { readonly name: string; readonly notes: readonly string[] };
			readonly capo: number;
			/** To be checked before it leaves the rack; null for what the instrument says. */
			readonly leave: string | null;
			readonly pack: string | null;
	  }
	| { readonly kind: 'none' };

/** An instrument that people were told of, and what is to be on it. */
export type ToldHand = {
	readonly instrument: string;
	readonly tuning: { readonly name: string; readonly notes: readonly string[] };
	readonly capo: number;
};

/** What a battery is in: a wireless pack, a pedal of a board, another part of a rig, an active instrument. */
export type BatteryIn = {
	readonly what: 'pack' | 'pedal' | 'part' | 'instrument';
	/** Whose pedal or part; null for packs and instruments. */
	readonly player: string | null;
	readonly id: string;
};

export type SongEnd = 'played' | 'cut-short' | 'skipped';

export type Entry =
	/** `item` is a key of the night's list. */
	| { readonly k: 'song-began'; readonly at: NightMs; readonly item: string }
	/** `index` counts from the song's start, which is 0; `item` is left out by version 1, here and below: what was on. */
	| {
			readonly k: 'cue-reached';
			readonly at: NightMs;
			readonly item?: string;
			readonly index: number;
	  }
	| {
			readonly k: 'song-ended';
			readonly at: NightMs;
			readonly item?: string;
			readonly how: SongEnd;
	  }
	/**
	 * The next song was chosen; `inserted` is a song from off the list, before `before` (null: at the end),
	 * whose key is the record's identity, but with version 1, which gave it in \`item\`. With a gap it was put in, and what it stands before is still to come;
	 * without one it has that song's place.
	 */
	| {
			readonly k: 'next-chosen';
			readonly at: NightMs;
			/** Left out of what is inserted. */
			readonly item?: string;
			readonly inserted?: {
				readonly song: string;
				readonly before: string | null;
				readonly gapSeconds?: number;
			};
	  }
	/**
	 * The show file was read again: from here on the night goes by this show, whole. Items of the list that
	 * are new have keys from the record's identity; with version 1 (\`isCounted\`) they were counted on.
	 */
	| {
			readonly k: 'show-read-again';
			readonly at: NightMs;
			readonly show: unknown;
			readonly isCounted?: boolean;
	  }
	/** A song of the list stands before `before` now (null: at the end), in the encore or not. */
	| {
			readonly k: 'song-moved';
			readonly at: NightMs;
			readonly item: string;
			readonly before: string | null;
			readonly isEncore: boolean;
	  }
	/** A song was put into the list; its key is the record's identity, but with version 1, which gave it. */
	| {
			readonly k: 'song-inserted';
			readonly at: NightMs;
			readonly item?: string;
			readonly song: string;
			readonly before: string | null;
			readonly isEncore: boolean;
	  }
	/** Off tonight's list. */
	| { readonly k: 'song-dropped'; readonly at: NightMs; readonly item: string }
	/** On the list again, where it was dropped or passed over. */
	| { readonly k: 'song-restored'; readonly at: NightMs; readonly item: string }
	/** `by`: how it came to be known: the plan's hand-over, a stand-in, or an exchange typed in. `incident`: the break it answers. */
	| ({
			readonly k: 'handed-over';
			readonly at: NightMs;
			readonly by: 'plan' | 'stand-in' | 'exchange';
			readonly incident?: string;
			/** The wireless pack that they wear with it, where that is not the one that belongs to it; null: none. */
			readonly pack?: string | null;
			/** The item of the list that it is for, where that is a later one than the song on. */
			readonly item?: string;
	  } & Handed)
	/** The hand-over to this player in the record `of` (left out by version 1: the last one) was really of this instrument: it keeps that one's time. */
	| ({
			readonly k: 'hand-over-corrected';
			readonly at: NightMs;
			readonly of?: RecordId;
			/** As with a hand-over. */
			readonly pack?: string | null;
	  } & Handed)
	/** For this item of the list (null: none is to come) they stay on what they have; `capo`: with the capo there from now on. */
	| ({
			readonly k: 'stayed';
			readonly at: NightMs;
			readonly item: string | null;
	  } & Omit<Handed, 'tuning'>)
	/** In this song of the list, tonight, the player has that; null: what the song says. */
	| {
			readonly k: 'named-tonight';
			readonly at: NightMs;
			readonly item: string;
			readonly player: string;
			readonly part: TonightPart | null;
	  }
	/** Back on the rack with nobody's hand-over, as at an interval. */
	| { readonly k: 'came-back'; readonly at: NightMs; readonly instrument: string }
	/** Ready, with what was done: the tuning and capo it has now, new strings. `isEarly`: that, but not yet ready, since the touch-up is to be fresh and comes later. */
	| {
			readonly k: 'made-ready';
			readonly at: NightMs;
			readonly instrument: string;
			readonly tuning?: { readonly name: string; readonly notes: readonly string[] };
			readonly capo?: number;
			readonly isRestrung?: boolean;
			readonly isEarly?: boolean;
	  }
	/** An incident's identity is that of its record, but with version 1, which gave it. */
	| {
			readonly k: 'string-broke';
			readonly at: NightMs;
			readonly incident?: string;
			readonly instrument: string;
			readonly player: string | null;
	  }
	/** The player goes on with what they have. */
	| { readonly k: 'played-on'; readonly at: NightMs; readonly incident: string }
	| { readonly k: 'incident-noted'; readonly at: NightMs; readonly incident?: string }
	| {
			readonly k: 'incident-described';
			readonly at: NightMs;
			readonly incident: string;
			readonly string?: number;
			readonly kind?: string;
			readonly words?: string;
	  }
	| { readonly k: 'memo-written'; readonly at: NightMs; readonly words: string }
	/** The capo or tuning as it really is. */
	| {
			readonly k: 'found-as';
			readonly at: NightMs;
			readonly instrument: string;
			readonly tuning?: { readonly name: string; readonly notes: readonly string[] };
			readonly capo?: number;
	  }
	/** Aside for tonight; `fault` null: simply out. */
	| {
			readonly k: 'put-aside';
			readonly at: NightMs;
			readonly instrument: string;
			readonly fault: string | null;
	  }
	| { readonly k: 'brought-back'; readonly at: NightMs; readonly instrument: string }
	| { readonly k: 'staged'; readonly at: NightMs; readonly instrument: string }
	/** Light, heat or rain: nothing on the rack is to be trusted until checked. */
	| { readonly k: 'all-doubted'; readonly at: NightMs; readonly celsius?: number }
	| {
			readonly k: 'pedal-corrected';
			readonly at: NightMs;
			readonly player: string;
			readonly pedal: string;
			readonly on: boolean;
	  }
	/** It does not switch: an incident too. */
	| {
			readonly k: 'pedal-stuck';
			readonly at: NightMs;
			readonly incident?: string;
			readonly player: string;
			readonly pedal: string;
	  }
	/** It switches again. */
	| {
			readonly k: 'pedal-freed';
			readonly at: NightMs;
			readonly player: string;
			readonly pedal: string;
	  }
	| {
			readonly k: 'pack-changed';
			readonly at: NightMs;
			readonly player: string;
			readonly pack: string;
	  }
	| {
			readonly k: 'pack-suspected';
			readonly at: NightMs;
			readonly player: string;
			readonly pack: string;
	  }
	/** Not suspect any more. */
	| { readonly k: 'pack-cleared'; readonly at: NightMs; readonly pack: string }
	/** A fresh battery is in it. */
	| ({ readonly k: 'battery-changed'; readonly at: NightMs } & BatteryIn)
	/**
	 * What is at fault with a player's sound is sought; the search's identity is that of its record. `symptom`:
	 * what is heard; `incident`: the one that it belongs to, and left out, the search is one itself; `empty`: ids of what
	 * runs on a battery that was held to be empty; `found`: how often each part was the cause on earlier nights, by id.
	 */
	| {
			readonly k: 'fault-sought';
			readonly at: NightMs;
			readonly player: string;
			readonly symptom: string;
			readonly incident?: RecordId;
			readonly empty?: readonly string[];
			readonly found?: Readonly<Record<string, number>>;
	  }
	/** One test of the search `fault`. `not-now`: it could not be done; `isHeard`: with it done the player has sound again. */
	| {
			readonly k: 'fault-tested';
			readonly at: NightMs;
			readonly fault: RecordId;
			readonly test: string;
			readonly answer: 'sound' | 'same' | 'not-now';
			readonly isHeard?: boolean;
	  }
	/** This part was the cause, and the sound is right again. */
	| {
			readonly k: 'fault-found';
			readonly at: NightMs;
			readonly fault: RecordId;
			readonly part: string;
	  }
	/** The search was given up. */
	| { readonly k: 'fault-left'; readonly at: NightMs; readonly fault: RecordId }
	/** From here on the technician's own time for a piece of work, by its name; null: the built-in one. */
	| {
			readonly k: 'time-changed';
			readonly at: NightMs;
			readonly time: string;
			readonly seconds: number | null;
	  }
	| { readonly k: 'show-ended'; readonly at: NightMs }
	/**
	 * Where songs leave a choice, the plan after the step `of` chose otherwise than people had been told; with
	 * version 1 it stands in that step's record. It is taken back with the step. `slots`:
	 * by list item, cue point and player (`4 0 ash`) the place in `hands`, null for nothing to play.
	 */
	| {
			readonly k: 'plan-told';
			readonly at: NightMs;
			readonly of?: RecordId;
			readonly hands: readonly ToldHand[];
			readonly slots: Readonly<Record<string, number | null>>;
	  }
	/** The night's first record; `boot` is the machine's start in which it was written. */
	| { readonly k: 'night-opened'; readonly at: NightMs; readonly boot: string }
	/** The program was started again after a stop; `seconds` since the record before, since nothing tells when it stopped. */
	| { readonly k: 'resumed'; readonly at: NightMs; readonly seconds: number; readonly boot: string }
	/** The machine slept. */
	| { readonly k: 'slept'; readonly at: NightMs; readonly seconds: number }
	/** The machine's clock was set; the night's own clock went on. */
	| { readonly k: 'clock-set'; readonly at: NightMs; readonly bySeconds: number }
	/** `of` is the record taken back, or put back again. */
	| { readonly k: 'taken-back'; readonly at: NightMs; readonly of: RecordId }
	| { readonly k: 'put-back'; readonly at: NightMs; readonly of: RecordId };
