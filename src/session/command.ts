// What can be asked of a night. Imperative; carries everything the decision needs, the plan's proposals
// included, so that deciding stays a pure function of the session, the command and the time.

import type { Show } from '../showfile/show.ts';
import type { Tuning } from '../tuning/tuning.ts';
import type { SetPlace } from './set-places.ts';

/** One player's planned hand-over. `instrument` null: hands are to be empty. */
export type HandOver = {
	readonly player: string;
	readonly instrument: string | null;
	readonly tuning: Tuning | null;
	readonly capo: number;
};

/** A capo that a player moves on the instrument in hands. */
export type CapoMove = {
	readonly player: string;
	readonly instrument: string;
	readonly capo: number;
};

/** Work that was due on an instrument and is recorded as done with `make-ready`. */
export type Due = { readonly tuning: Tuning; readonly capo: number };

export type Command =
	/** Next cue point, or the song's end, or the next song with its planned hand-overs. `handOvers` are those of what is reached. */
	| {
			readonly do: 'step';
			readonly handOvers: readonly HandOver[];
			/** Capos that players move themselves on what they keep. */
			readonly capoMoves?: readonly CapoMove[];
	  }
	| { readonly do: 'step-back' }
	/** The song is done, whatever cue points were left. `handOvers` are those of the song that a segue goes on to. */
	| {
			readonly do: 'finish-song';
			readonly handOvers: readonly HandOver[];
			readonly capoMoves?: readonly CapoMove[];
	  }
	| { readonly do: 'go-to-next-song' }
	| { readonly do: 'go-to-previous-song' }
	/** The next song is this one, on the list (the next time it comes) or from the catalogue. */
	| { readonly do: 'choose-next'; readonly song: string }
	/** The night goes on by the show as its file is now. */
	| { readonly do: 'read-show-again'; readonly show: Show }
	/** A song to come, or one that was passed by unplayed, to another place in what is to come. */
	| ({ readonly do: 'move-song'; readonly item: string } & SetPlace)
	/** A song of the catalogue into what is to come. */
	| ({ readonly do: 'insert-song'; readonly song: string } & SetPlace)
	| { readonly do: 'drop-song'; readonly item: string }
	/** What was dropped or passed over is to come after all. */
	| { readonly do: 'restore-song'; readonly item: string }
	/** To the end of the encore; what was played already is played there once more. */
	| { readonly do: 'play-in-encore'; readonly item: string }
	| { readonly do: 'hand-over'; readonly handOvers: readonly HandOver[] }
	| { readonly do: 'exchange'; readonly player: string; readonly instrument: string | null }
	| { readonly do: 'make-ready'; readonly instrument: string; readonly due: Due | null }
	| { readonly do: 'make-all-ready' }
	| { readonly do: 'report-break'; readonly instrument: string }
	/** Answers the open break: a stand-in in hands. Tuning and capo as it was offered, or null as believed. */
	| {
			readonly do: 'stand-in';
			readonly instrument: string;
			readonly tuning: Tuning | null;
			readonly capo: number | null;
	  }
	| { readonly do: 'play-on' }
	| { readonly do: 'note-incident' }
	| {
			readonly do: 'describe-incident';
			readonly string: number | null;
			readonly kind: string | null;
			readonly words: string;
	  }
	| { readonly do: 'write-memo'; readonly words: string }
	| {
			readonly do: 'correct-instrument';
			readonly instrument: string;
			readonly tuning: Tuning | null;
			readonly capo: number | null;
	  }
	| { readonly do: 'put-aside'; readonly instrument: string; readonly fault: string | null }
	| { readonly do: 'bring-back'; readonly instrument: string }
	| { readonly do: 'stage'; readonly instrument: string }
	| { readonly do: 'doubt-all'; readonly celsius: number | null }
	| { readonly do: 'correct-pedal'; readonly player: string; readonly pedal: string }
	| { readonly do: 'change-pack'; readonly player: string; readonly pack: string }
	| { readonly do: 'suspect-pack'; readonly player: string }
	/** From here on the technician's own time for this, by its name; null: the built-in one. */
	| { readonly do: 'change-time'; readonly time: string; readonly seconds: number | null }
	| { readonly do: 'end-show' };
