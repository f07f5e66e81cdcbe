// How things stand when a plan is made, as plain data: all that the enumeration reads. Before the doors it
// is made from a show (before-doors.ts); during the night a test fills it from a session.
//
// What a test has to do to fill it from a session: leave out of `cells` (or give `keep`) whoever's hand-over
// in the song that is on is settled; give `isOn` to that song, with its remaining open hand-overs, and leave
// it out where there are none; shift the songs ahead as the model says; give every cell its demand as the
// file was read, with `isAsAbove` where the song itself does not name the player.
//
// Seconds are of one clock whose zero the caller chooses; before the doors it is the first song's start.
//
//   now        the moment from which work can be done.
//   players    in the order of the show file. `holds` is what is in hands now; `putDown` what they had when
//              the interval began that is on now (null otherwise). `hasBegun` says that the player has had a
//              stint since the show or the last interval began, so that the next one counts as a hand-over.
//   gear       in the order of the show file; each instrument with how it is now (see `Gear`).
//   sections   what is on, if anything, and what is to come, in playing order. A song is one section, and
//              one more for each cue that hands over. See `Section`.
//   whenMissing 'empties': who finds nothing playable puts down what they have (the plan before the doors);
//              'keeps': it stays in their hands unless another player of that section gets it (the night).
//   told       by slot (`slotKey`), what people were told of it; slots that stand here and come out
//              otherwise are `changed`. Leave out those whose change nobody would notice.
//   worked     what stands first in the list of work, and since when it may have been worked on; only
//              with-restrings.ts asks.

import type { Instrument } from '../../../src/showfile/show.ts';
import type { Pitches } from './sounding.ts';

export type LiveState = {
	readonly now: number;
	readonly players: readonly LivePlayer[];
	readonly gear: readonly Gear[];
	readonly sections: readonly Section[];
	readonly whenMissing: 'empties' | 'keeps';
	readonly told: Readonly<Record<string, Played | null>>;
	readonly worked: { readonly instrument: string; readonly since: number } | null;
};

export type LivePlayer = {
	readonly id: string;
	readonly holds: Played | null;
	readonly putDown: Played | null;
	readonly hasBegun: boolean;
};

/** An instrument in an open tuning with a capo. */
export type Played = {
	readonly instrument: string;
	readonly open: Pitches;
	readonly capo: number;
};

/** An instrument and how it is now. */
export type Gear = {
	readonly instrument: Instrument;
	/** False in its case, out or faulty. Strings that are down are told apart, below. */
	readonly canBeHad: boolean;
	/** The open tuning it is in. */
	readonly open: Pitches;
	readonly capo: number;
	/** In hands since it was last wiped. */
	readonly isToWipe: boolean;
	/** When it was made ready as it is; null when it was not, or was used or doubted since. */
	readonly readyAt: number | null;
	/** When it last came back on the rack; null when it has hung there all the while. */
	readonly backAt: number | null;
	readonly stringsDown: number;
	/** The first section for which its strings are on again; null where none is promised. Asked only with strings down. */
	readonly restrungFor: number | null;
	/** How long "ready" lasts on it, and on new strings. */
	readonly recheck: number;
	readonly recheckNew: number;
};

export type Section = {
	/** Names the section in slots; told apart from all others. */
	readonly key: string;
	readonly start: number;
	/** End of the song before; for a cue its own start. */
	readonly previousEnd: number;
	/** Room for hand-overs before it; null where all fit: the first song, after an interval, a cue. */
	readonly gap: number | null;
	readonly isCue: boolean;
	readonly isAfterInterval: boolean;
	/** It is on, and its hand-overs are still open: their work is wanted now. */
	readonly isOn: boolean;
	/** By player id; a player who is left out keeps what they have. */
	readonly cells: Readonly<Record<string, Cell>>;
	/** When the technician presses for a board in this section. */
	readonly boardCues: readonly number[];
};

/** What a player is to have, and whether the song itself says so or a line above it. */
export type Cell = {
	readonly demand: Demand;
	readonly isAsAbove: boolean;
	/** A cue within a song that hands this player nothing: what is in hands goes on, whatever it is. */
	readonly goesOn?: boolean;
};

export type Demand =
	| {
			readonly kind: 'named';
			readonly instrument: string;
			readonly open: Pitches;
			readonly capo: number;
	  }
	| {
			readonly kind: 'needs';
			readonly instrumentKind: Instrument['kind'];
			readonly sounds: Pitches;
			readonly features: readonly string[];
			readonly prefer: string | null;
	  }
	| { readonly kind: 'none' }
	/** They keep what they have, whatever it is: nothing stands above, or the song is off the list. */
	| { readonly kind: 'keep' };

/** The name of one player's slot in a section. */
export function slotKey(section: string, player: string): string {
	return `${section} ${player}`;
}
