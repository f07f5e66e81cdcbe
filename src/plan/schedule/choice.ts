// What was decided for one player in one section: all that follows, work and hand-overs, follows from it.

import type { Demand } from '../demand/demand.ts';
import type { Hand } from '../demand/hand.ts';
import type { OpenWithCapo } from '../demand/same-pitches.ts';
import type { Section, Unplayable } from '../plan.ts';

/** What a player should have: open tuning and capo, and the instrument where it is settled which. */
export type Wanted = OpenWithCapo & { readonly instrument: string | null };

/** One player's part in one section. */
export type Choice = {
	readonly section: Section;
	readonly player: string;
	readonly demand: Demand;
	/** The song, a cue or the technician names the player. */
	readonly isNamed: boolean;
	/** In hands as the section comes. */
	readonly before: Hand | null;
	/** What is asked for, whether or not it can be had; null for empty hands. */
	readonly wanted: Wanted | null;
	/** What is to be played; null for nothing. */
	readonly play: Hand | null;
	/** In hands from here on: what is to be played, or what is left in hands. */
	readonly after: Hand | null;
	/** The named instrument that what is to be played stands in for. */
	readonly for: string | null;
	/** What was chosen among several: a need, or what stands in. */
	readonly isChosen: boolean;
	/** Nothing can be had. */
	readonly isMissing: boolean;
	/** Why nothing, or not the named one, can be had; null otherwise. */
	readonly why: Unplayable | null;
	/** It stays in hands as it is, its capo perhaps moved. */
	readonly goesOn: boolean;
	/** Their hands are left alone here. */
	readonly isSettled: boolean;
	/** To be checked before it leaves the rack. */
	readonly leave: string | null;
	/** The wireless pack that goes on with it. */
	readonly pack: string | null;
};
