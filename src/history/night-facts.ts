// What is known of one night to those who look at many: numbers out of its journal, nothing guessed. Instruments are
// known by an identity that holds from night to night, see `gearId`.

import type { OwnTimeName } from '../showfile/own-times.ts';
import type { StringGauge } from '../showfile/show.ts';
import type { InstrumentKind } from '../tuning/kind.ts';

export type NightFacts = {
	/** The night's id. */
	readonly night: string;
	readonly title: string;
	/** `2026-06-12` where it was played. */
	readonly day: string;
	readonly songs: readonly PlayedSong[];
	readonly gaps: readonly Gap[];
	readonly pieces: readonly Piece[];
	/** Hand-overs that were noted late, and those of which it is known that they were not. */
	readonly lateHandOvers: number;
	readonly timelyHandOvers: number;
	readonly breaks: readonly StringBreak[];
	readonly instruments: readonly InstrumentNight[];
};

/** A song each time it was on to its end or cut short; seconds null while it was still on. */
export type PlayedSong = {
	/** Its id. */
	readonly song: string;
	readonly title: string;
	/** By the show file; null where it gives no length. */
	readonly plannedSeconds: number | null;
	readonly seconds: number;
	readonly isWhole: boolean;
};

/** Between two songs with no interval between. */
export type Gap = {
	/** The song that it is before. */
	readonly song: string;
	readonly title: string;
	readonly plannedSeconds: number;
	readonly seconds: number;
	readonly handOvers: number;
	/** Seconds that these hand-overs take by the plan, one after the other. */
	readonly neededSeconds: number;
	/** From the last of them until the song began; null where one was noted only with the song's start or later. */
	readonly leftSeconds: number | null;
	readonly isLate: boolean;
};

/** A hand-over or a piece of work by what its time is called. */
export type Piece = {
	readonly work: OwnTimeName;
	/** The instrument, as `1 Amber`. */
	readonly shown: string;
	/** The song that was on or to come; null after the last. */
	readonly title: string | null;
	/** What the plan takes for this part. */
	readonly usedSeconds: number;
	/** What the plan takes for all that was done in one go. */
	readonly plannedSeconds: number;
	/**
	 * Seconds as the journal has them: of a hand-over from the song's end to the key that notes it, several in one gap with an
	 * equal share each; of work from when the instrument came back until its mark, where that was the first since. Waiting in
	 * between is in it.
	 */
	readonly seconds: number;
};

export type StringBreak = {
	readonly gear: string;
	/** `1 Amber`. */
	readonly shown: string;
	readonly player: string | null;
	/** Null where nobody said which. */
	readonly string: number | null;
	/** Null where the string or the gauge is not known. */
	readonly gauge: StringGauge | null;
	/** Seconds until there was sound again; null where there was none to lose, or that is not known. */
	readonly silentSeconds: number | null;
};

export type InstrumentNight = {
	readonly gear: string;
	readonly shown: string;
	readonly kind: InstrumentKind;
	/** What the show file says of its strings. */
	readonly strung: { readonly on: string | null; readonly hours: number | null };
	/** Hours in hands tonight. */
	readonly hours: number;
	/** New strings tonight, oldest first. */
	readonly restrings: readonly Restring[];
};

export type Restring = {
	/** Hours in hands that this night had given before it. */
	readonly afterHours: number;
	/** The strings that were broken; empty for a whole set. */
	readonly strings: readonly (number | null)[];
};
