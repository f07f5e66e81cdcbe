// A show as the rest of the program knows it: read, checked, every id resolved, nothing left to look
// up in a file. It is plain data, frozen, so that a night's journal can carry it whole.

import type { ChordShape } from '../tuning/chord-shape.ts';
import type { InstrumentKind } from '../tuning/kind.ts';
import type { Offsets } from '../tuning/offsets.ts';
import type { SetUpMeasures } from '../tuning/set-up-drift.ts';
import type { Tuning } from '../tuning/tuning.ts';
import type { Output, PedalTraits, Power, RigPart, Supply } from './rig.ts';

/** A whole show. Lists keep the order of the file. */
export type Show = {
	readonly title: string;
	readonly venue: string | null;
	/** `2026-06-12`, or null when the file gives none. */
	readonly date: string | null;
	/** Minutes after midnight on the show's day. */
	readonly startMinutes: number | null;
	/** Minutes after midnight; more than 1440 when the curfew is past midnight. */
	readonly curfewMinutes: number | null;
	/** Hz of A4. */
	readonly referenceHertz: number;
	/** How long "ready" lasts. */
	readonly staleAfterSeconds: number;
	/** The same for strings with less than an hour in hands. */
	readonly staleNewSeconds: number;
	readonly techs: readonly Tech[];
	readonly players: readonly Player[];
	readonly instruments: readonly Instrument[];
	/** The catalogue: songs on the list and off it. */
	readonly songs: readonly Song[];
	readonly set: readonly SetItem[];
	/** Each player's pedals in order, by player id. */
	readonly boards: Readonly<Record<string, readonly Pedal[]>>;
	readonly packs: readonly Pack[];
	readonly times: Times;
	readonly stock: readonly StockItem[];
	/** Short name to tuning name, as the file writes them. */
	readonly abbreviations: Readonly<Record<string, string>>;
	// Shows of nights that began before these were known do not have them.
	/** Gauges that can be had, beside those counted in the stock, as the file writes them. */
	readonly gauges?: readonly string[];
	/** Grams a metre by gauge as written, for all instruments. */
	readonly unitMass?: UnitMass;
	/** Cents added to targets. */
	readonly offsets?: readonly Offsets[];
	readonly stage?: Stage;
	/** Anything else about the night. */
	readonly notes?: string;
	/** Each player's sound path, the instrument before the first part; by player id. */
	readonly rigs?: Readonly<Record<string, readonly RigPart[]>>;
	readonly supplies?: readonly Supply[];
	/** The technician's own times that stood in for the built-in ones when the show was read; left out where there were none. */
	readonly ownTimes?: OwnTimes;
};

/** Seconds by the names of `own-times.ts`. */
export type OwnTimes = Readonly<Record<string, number>>;

export type UnitMass = Readonly<Record<string, number>>;

/** The stage as it is expected; degrees Celsius, per cent. */
export type Stage = {
	readonly temperature: number | null;
	/** At soundcheck, when instruments are tuned. */
	readonly soundcheck: number | null;
	readonly humidity: number | null;
};

/** How a player likes an instrument. */
export type SetUp = SetUpMeasures & {
	/** Millimetres that a saddle goes in one turn of its screw. */
	readonly saddleScrew?: number;
};

export type Tech = { readonly id: string; readonly name: string };

export type Player = {
	readonly id: string;
	readonly name: string;
	readonly plays: string | null;
	/** Whose hands, when there are several techs; a tech's id. */
	readonly tech: string | null;
	/** The letter that names this player in prompts: lower case, taken by no other player or slot. */
	readonly key: string;
};

export type Instrument = {
	readonly id: string;
	readonly name: string;
	/** One unshifted character but space, 0, - and =, lower case; null when it has no place on the rack. */
	readonly slot: string | null;
	readonly kind: InstrumentKind;
	/** Players who may have it; null for anybody. */
	readonly for: readonly string[] | null;
	/** What it is in when the night begins. */
	readonly tuning: Tuning;
	readonly scaleMillimetres: number | null;
	/** String 1 first, as sets are labelled. */
	readonly strings: readonly StringGauge[];
	readonly bridge: 'fixed' | 'floating';
	readonly features: readonly string[];
	readonly pack: string | null;
	readonly case: string | null;
	/** Kept back as a stand-in. */
	readonly spare: boolean;
	readonly strung: { readonly on: string | null; readonly hours: number | null };
	/** Seconds for each piece of work on this instrument: its own `times`, its kind's, `all`, the technician's, the built-in ones, in that order. */
	readonly times: WorkTimes;
	/** Its own `times` as the file writes them, in seconds; left out where it has none. */
	readonly givenTimes?: Readonly<Record<string, number>>;
	/** To be checked before it leaves the rack. */
	readonly leave: string | null;
	readonly notes: string | null;
	readonly pickups: string | null;
	/** Grams a metre by gauge as written; before the show's. */
	readonly unitMass?: UnitMass;
	readonly setUp?: SetUp;
	// Left out where the file gives none; shows of nights that began before these were known have none.
	/** How long "ready" lasts on this instrument, in seconds; before the show's own figures. */
	readonly recheckAfterSeconds?: number;
	/** What is played where this one cannot be had, best first; empty for nothing, left out for any of the kind that sounds the same. */
	readonly instead?: readonly Instead[];
	/** This very instrument in every file and year. */
	readonly gear?: string;
	/** The maker's number on it. */
	readonly serial?: string;
	/** Whose property it is. */
	readonly owner?: string;
	/** The firm that lends it for money. */
	readonly hiredFrom?: string;
	readonly output?: Output | readonly Output[];
	/** Of an active instrument. */
	readonly power?: Power;
};

/** What is played in place of an instrument. */
export type Instead = {
	readonly instrument: string;
	/** The open tuning that it is played in; null: whichever way it sounds the same. */
	readonly tuning: Tuning | null;
	/** 0 where the tuning is null. */
	readonly capo: number;
};

export type StringGauge = { readonly millimetres: number; readonly isWound: boolean };

/** Seconds for each piece of work; a change of tuning has its touch-up in it. */
export type WorkTimes = {
	readonly touchUp: number;
	readonly oneString: number;
	readonly twoStrings: number;
	readonly allStrings: number;
	readonly otherTuning: number;
	readonly wipe: number;
	readonly capo: number;
	/** Each way. */
	readonly walk: number;
	/** One string with settling, wiping and tuning in it. */
	readonly restring: number;
	/** Each further string of the same restring. */
	readonly furtherString: number;
	readonly handOver: number;
};

/** The file's `times`, kept as written: by kind, or `all`; keys as in the file, values in seconds. */
export type Times = Readonly<Record<string, Readonly<Record<string, number>>>>;

export type Song = {
	readonly id: string;
	readonly title: string;
	/** Null when the file gives none: it then counts as the median of those given (240 s when none is). */
	readonly lengthSeconds: number | null;
	/** Beats a minute. */
	readonly tempo: number | null;
	/** What each player named in this song needs; who is not named has what the song above in the set says. */
	readonly parts: Readonly<Record<string, Part>>;
	/** Whole boards at the song's start, by player. */
	readonly board: Readonly<Record<string, PedalStates>>;
	readonly cues: readonly Cue[];
	readonly starts: string | null;
	readonly count: number | null;
	readonly ends: 'stop' | 'ring' | 'segue' | 'talk';
	readonly notes: string | null;
	/** Chord shapes that are heard exposed, by player; shows of nights that began before these were known have none. */
	readonly shapes?: Readonly<Record<string, readonly ChordShape[]>>;
	/** Pedals that stand in this order for this song, by player; those not named stay. Left out where the file gives none. */
	readonly order?: Readonly<Record<string, readonly string[]>>;
};

/** What a player needs in a song: exactly this, anything like that, or empty hands. */
export type Part =
	| {
			readonly kind: 'named';
			readonly instrument: string;
			/** Null: the instrument's own tuning as the file gives it. */
			readonly tuning: Tuning | null;
			readonly capo: number;
			readonly leave: string | null;
			readonly pack: string | null;
	  }
	| {
			readonly kind: 'needs';
			readonly instrumentKind: InstrumentKind;
			/** What is heard, with any capo on. */
			readonly sounds: Tuning;
			readonly features: readonly string[];
			/** An instrument's id. */
			readonly prefer: string | null;
			readonly leave: string | null;
			readonly pack: string | null;
	  }
	| { readonly kind: 'none' };

export type Cue = {
	/** What is heard or seen: "Ch1", "solo". */
	readonly at: string;
	/** Seconds from the song's start; helps the plan only. */
	readonly nearSeconds: number | null;
	readonly say: string | null;
	/** Hand-overs before this point, by player. */
	readonly hand: Readonly<Record<string, Part>>;
	/** Whole boards from this point on, by player. */
	readonly boards: Readonly<Record<string, PedalStates>>;
};

/** A whole board: pedals not named are off (at rest). By pedal id. */
export type PedalStates = Readonly<Record<string, PedalState>>;

/** `on` with whatever settings the file gives, as text. */
export type PedalState = {
	readonly on: boolean;
	readonly settings?: Readonly<Record<string, string>>;
};

export type Pedal = PedalTraits & {
	readonly id: string;
	readonly name: string;
	/** What the file says besides, as it is written. */
	readonly extra: Readonly<Record<string, unknown>>;
};

export type Pack = {
	readonly id: string;
	readonly name: string | null;
	readonly channel: string | null;
	/** Hours that a fresh battery gives and those already used. */
	readonly battery?: { readonly hours: number; readonly used: number };
};

export type StockItem = { readonly gauge: string; readonly count: number };

export type SetItem =
	| {
			readonly kind: 'song';
			readonly song: string;
			/** Seconds between the end of the song before and the start of this one; null when the file gives none. */
			readonly gapSeconds: number | null;
			readonly isEncore: boolean;
	  }
	| { readonly kind: 'interval'; readonly seconds: number };
