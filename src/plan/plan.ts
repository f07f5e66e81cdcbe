// What the plan says, as data: who plays what, what work that makes, and whether it fits.

import type { NightMs } from '../journal/entry.ts';
import type { InstrumentKind } from '../tuning/kind.ts';
import type { RetuneKind } from '../tuning/retune.ts';
import type { Tuning } from '../tuning/tuning.ts';

export type Plan = {
	/** True only when nothing better exists. */
	readonly isProved: boolean;
	/** The best cost that could still be possible, when not proved and known. */
	readonly bound: Cost | null;
	readonly cost: Cost;
	/** What is on and what is to come, in playing order. The song in progress comes first, from its present section. */
	readonly sections: readonly Section[];
	/** One for each player with something to play in each section. */
	readonly slots: readonly Slot[];
	/** Every change of hands still to be made, in order of time, then of the show file's players. */
	readonly handOvers: readonly PlannedHandOver[];
	/** Capos that players move themselves between songs: no hand-over, no work. */
	readonly capoMoves: readonly CapoMove[];
	/** Who stays, for the next song, on something else than it names or with another capo. */
	readonly stays: readonly Stay[];
	/** In the order in which to do it. */
	readonly work: readonly Work[];
	/** Strings that are down where nothing is to be played on them: no moment is wanted. */
	readonly idle: readonly IdleWork[];
	readonly warnings: readonly Warning[];
};

/** Strictly in this order; smaller is better. `lateness` in seconds. */
export type Cost = {
	/** Slots with nothing playable. */
	readonly missing: number;
	/** Named slots played on something else. */
	readonly substituted: number;
	/** Hand-overs that do not fit their gap. */
	readonly overGap: number;
	readonly lateness: number;
	/** Points against what stands in for what is named. */
	readonly backup: number;
	readonly handOvers: number;
	readonly retunings: number;
	readonly preference: number;
};

/** A song, or the part of one between two hand-overs inside it. */
export type Section = {
	/** Key of the night's list item. */
	readonly item: string;
	readonly song: string;
	/** The cue point at which it begins; 0 for a song's start. */
	readonly point: number;
	/** The song's place among the songs of the list, from 1. */
	readonly position: number;
	readonly startMs: NightMs;
	readonly endMs: NightMs;
	/** Seconds between the section before and this one; null for the first song, after an interval and at a cue: room for all. */
	readonly gapSeconds: number | null;
	/** When the section before ended, or is to end; null for the night's first. */
	readonly previousEndMs: NightMs | null;
	readonly isAfterInterval: boolean;
	/** It is on now. */
	readonly hasBegun: boolean;
};

/** Who plays what in a section. */
export type Slot = {
	readonly section: Section;
	readonly player: string;
	/** Null: nothing playable; the slot is missing. */
	readonly instrument: string | null;
	/** The instrument that the song names, had or not; null where it names none. */
	readonly named: string | null;
	/** That, or for a player it does not name, the one named above; null where none is. */
	readonly asked: string | null;
	/** The kind of instrument that is asked for; null where nothing is. */
	readonly kind: InstrumentKind | null;
	/** What the open strings are to be in, had or not. */
	readonly tuning: Tuning;
	readonly capo: number;
	/** They get it, or get it back in another tuning, just before this section. */
	readonly isHandOver: boolean;
	/** The player was not named: they keep what they have. */
	readonly isKept: boolean;
	/** The named instrument that this stands in for; null where nothing does. */
	readonly for: string | null;
	/** The plan chose it: a need, or what stands in. */
	readonly isChosen: boolean;
	/** Nothing can be had. */
	readonly isMissing: boolean;
	/** Why nothing can be played, or why the named one cannot be had. */
	readonly why: Unplayable | null;
	/** To be checked before it leaves the rack. */
	readonly leave: string | null;
	/** The wireless pack that goes on with it: the song's word, else its own; null for whatever is worn. */
	readonly pack: string | null;
};

export type PlannedHandOver = {
	readonly section: Section;
	readonly player: string;
	/** What they hold before. */
	readonly from: string | null;
	/** What they are to have; null for empty hands. */
	readonly instrument: string | null;
	/** The named instrument that it stands in for. */
	readonly for: string | null;
	readonly tuning: Tuning | null;
	readonly capo: number;
	/** 0 for taking away without giving. */
	readonly seconds: number;
	/** The moment at which the hand-overs of this section begin. */
	readonly wantedMs: NightMs;
	readonly fits: boolean;
	readonly leave: string | null;
	readonly pack: string | null;
};

/** A player keeps what they have and moves its capo just before this section. */
export type CapoMove = {
	readonly section: Section;
	readonly player: string;
	readonly instrument: string;
	readonly tuning: Tuning;
	readonly capo: number;
	/** The named instrument that it stands in for. */
	readonly for: string | null;
};

/** What a player keeps for the next song that is not on yet, where it names another instrument or the capo moves. */
export type Stay = CapoMove;

export type Job = 'touch-up' | 'retune' | 'capo' | 'restring';

/** A restring that nothing waits for. */
export type IdleWork = {
	readonly job: 'restring';
	readonly instrument: string;
	readonly to: Tuning;
	readonly seconds: number;
};

/** One piece of work for one stint of one instrument: all that there is to do, or one part of it. */
export type Work = {
	readonly job: Job;
	readonly instrument: string;
	readonly player: string;
	readonly section: Section;
	readonly to: Tuning;
	/** What the capo is to be on once it is done. */
	readonly capo: number;
	/** Pitches or strings are put on early, and a touch-up follows. */
	readonly isEarly: boolean;
	readonly seconds: number;
	/** Not to be begun before: not back yet, or it would be stale when handed. */
	readonly fromMs: NightMs;
	/** When the hand-overs it serves begin. */
	readonly wantedMs: NightMs;
	/** Begun and finished when all is done in the order shown, beginning now. */
	readonly startMs: NightMs;
	readonly finishMs: NightMs;
	/** Seconds from finish to wanted; negative when late. */
	readonly slackSeconds: number;
	/** Working time that is short for it to be done when wanted: later than that hands are busy meanwhile. 0 when it is in time. */
	readonly shortSeconds: number;
	/** The latest moment at which it can be begun without making itself or anything after it late. */
	readonly beginByMs: NightMs;
};

/** Why an instrument, or any that would do, cannot be had. */
export type Unplayable =
	| {
			readonly code: 'out' | 'string-down' | 'not-in-show';
			readonly instrument: string;
	  }
	| { readonly code: 'faulty'; readonly instrument: string; readonly fault: string }
	/** `tuning`: what it is in, and stays in. */
	| { readonly code: 'floating-bridge'; readonly instrument: string; readonly tuning: string }
	| { readonly code: 'in-hands'; readonly instrument: string; readonly player: string }
	| { readonly code: 'none-free'; readonly kind: InstrumentKind; readonly sounds: string };

/** Why an instrument is no backup, or why none is. `tuning`: what it is strung for, or is in. */
export type LeftOut =
	| Unplayable
	| {
			readonly code: 'too-heavy' | 'too-light' | 'other-strings';
			readonly instrument: string;
			readonly tuning: string;
	  }
	/** There is no other of its family. */
	| { readonly code: 'no-other'; readonly kind: InstrumentKind };

/** What is to be in hands: an open tuning by its name and a capo. */
export type Tuned = { readonly tuning: string; readonly capo: number };

type OfPlayer = { readonly song: string; readonly player: string };
type OfInstrument = OfPlayer & { readonly instrument: string };

/** What somebody has to be told; the sentence is made in `words`. Things by their ids, lengths in seconds. */
export type Warning = Partial<OfInstrument> &
	(
		| (OfInstrument & {
				readonly code: 'wrong-tuning';
				/** What is wrong about it; what is said is this, and not the rest of what is wanted. */
				readonly wrong: 'instrument' | 'tuning' | 'capo';
				readonly is: Tuned;
				/** `instrument`: another one; null for the same, or where the song leaves it open. */
				readonly wants: Tuned & { readonly instrument: string | null };
				readonly isOpen: boolean;
		  })
		/** `instrument`: left out where the song leaves it open. */
		| (OfPlayer & { readonly code: 'empty-hands'; readonly tuning: string })
		| {
				readonly code: 'tight-gap';
				readonly song: string;
				readonly handOvers: number;
				readonly seconds: number;
				readonly gapSeconds: number;
		  }
		/** `standIn`: of another kind, where nothing of what is asked can be had. */
		| (OfPlayer & { readonly code: 'missing'; readonly why: Unplayable; readonly standIn?: string })
		/** `for`: what was asked for; the same one, where it is played in another way. */
		| (OfInstrument & {
				readonly code: 'substituted';
				readonly for: string;
				readonly why: Unplayable;
		  })
		| (OfInstrument & { readonly code: 'kept-unsaid' | 'stale' })
		/** `songs`: in which of tonight's it is played without a backup; left out on a night under way. */
		| {
				readonly code: 'no-stand-in';
				readonly player: string;
				readonly instrument: string;
				readonly leftOut: readonly LeftOut[];
				readonly songs?: readonly string[];
		  }
		| { readonly code: 'short-curfew'; readonly overSeconds: number }
		| { readonly code: 'shared-pack'; readonly pack: string; readonly players: readonly string[] }
		/** Each wears the other's: `packs` are those they wear, in the same order. */
		| {
				readonly code: 'crossed-packs';
				readonly players: readonly [string, string];
				readonly packs: readonly [string, string];
		  }
		/** `pack`: the one that belongs to what they have in hands, on `wearer`, where anybody wears it. */
		| {
				readonly code: 'no-pack';
				readonly player: string;
				readonly instrument: string;
				readonly pack: string;
				readonly wearer: string | null;
		  }
		/** `instrument`: in hands, its own pack suspect and not put on; left out where they wear it. */
		| {
				readonly code: 'suspect-pack';
				readonly player: string;
				readonly pack: string;
				readonly worn: string | null;
		  }
		| {
				readonly code: 'pack-channel';
				readonly player: string;
				readonly from: string | null;
				readonly to: string;
		  }
		/** Logged so with its hand-over though nobody had marked it; null for what it was in already. */
		| {
				readonly code: 'unmarked';
				readonly player: string;
				readonly instrument: string;
				readonly tuning: string | null;
				readonly capo: number | null;
		  }
		| {
				readonly code: 'stuck-pedal';
				readonly player: string;
				readonly pedal: string;
				readonly isOn: boolean;
		  }
		/** `instrument`: left out where the file leaves the choice open. */
		| (OfPlayer & { readonly code: 'missed-hand-over' })
		/** Without a song: it has a string down in their hands. */
		| {
				readonly code: 'not-ready';
				readonly player: string;
				readonly instrument: string;
				readonly standIn?: string;
		  }
		| (OfInstrument & {
				readonly code: 'late';
				readonly lateSeconds: number;
				/** As `Work` has it. */
				readonly shortSeconds: number;
				/** It is a restring, late if it is begun only now: what stands first in the list is planned as if it had been. */
				readonly isRestring?: true;
				readonly standIn?: string;
				/** They have that in hands already; `capo`: what it is to be moved to, null to leave it. */
				readonly keeps?: { readonly capo: number | null };
		  })
	);

/** An instrument that could take over from another. */
export type StandIn = {
	readonly instrument: string;
	/** Seconds until it can be in hands: the walk and what work it needs now. */
	readonly readyInSeconds: number;
	/** What is to be put on it. */
	readonly tuning: Tuning;
	readonly capo: number;
	/** Why it would do, the first thing first. */
	readonly why: readonly StandInReason[];
	/** What it costs later; empty until the plan is made again for each choice. */
	readonly later: readonly Later[];
};

/** Why something would do in place of another, or what speaks against it. */
export type StandInReason =
	| {
			readonly code: 'in-hands' | 'same-tuning' | 'ready' | 'not-ready' | 'stale' | 'other-scale';
	  }
	/** Among more strings, so many that are wanted. */
	| { readonly code: 'has-strings'; readonly strings: number }
	/** With a capo it sounds so. */
	| { readonly code: 'sounds'; readonly tuning: string }
	/** `capo`: what it is moved to besides; null where it stays. */
	| {
			readonly code: 'retune';
			readonly change: Exclude<RetuneKind, 'none'>;
			readonly capo: number | null;
	  }
	| { readonly code: 'capo'; readonly capo: number }
	| { readonly code: 'kind'; readonly kind: InstrumentKind }
	| { readonly code: 'bridge'; readonly bridge: 'fixed' | 'floating' }
	| { readonly code: 'no-feature'; readonly feature: string }
	| { readonly code: 'meant-for'; readonly players: readonly string[] }
	| { readonly code: 'needed-by'; readonly player: string };

/** What a choice makes worse later on. */
export type Later =
	| {
			readonly code: 'missing' | 'backup';
			readonly player: string;
			readonly songs: readonly string[];
	  }
	/** In hands so many seconds after the first song's start. */
	| ({
			readonly code: 'late';
			readonly song: string;
			readonly instrument: string;
			readonly inHandsSeconds: number;
	  } & Tuned)
	| { readonly code: 'tight-gap'; readonly song: string }
	| { readonly code: 'short-curfew'; readonly overSeconds: number }
	/** In a large show not every choice is planned for. */
	| { readonly code: 'unknown' };
