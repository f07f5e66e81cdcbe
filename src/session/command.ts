// What can be asked of a night. Imperative; carries everything the decision needs, the plan's proposals
// included, so that deciding stays a pure function of the session, the command and the time.

import type { BatteryIn, NightMs, TonightPart } from '../journal/entry.ts';
import type { RecordId } from '../journal/record.ts';
import type { Show } from '../showfile/show.ts';
import type { Tuning } from '../tuning/tuning.ts';
import type { SetPlace } from './set-places.ts';

/** One player's planned hand-over. `instrument` null: hands are to be empty. */
export type HandOver = {
	readonly player: string;
	readonly instrument: string | null;
	readonly tuning: Tuning | null;
	readonly capo: number;
	/** The wireless pack that goes on with it; left out or null for its own. */
	readonly pack?: string | null;
	/** The item of the list that it is for; left out: the song on, or the next one. */
	readonly item?: string | null;
};

/** A capo that a player moves on the instrument in hands. */
export type CapoMove = {
	readonly player: string;
	readonly instrument: string;
	readonly capo: number;
};

/** What a player keeps for an item of the list, and where its capo is to be. */
export type Staying = {
	readonly item: string;
	readonly player: string;
	readonly instrument: string;
	readonly capo: number;
};

/** Where a song from off the list goes: before the next one, which stays, or into its place. */
export type JumpPlace = 'before-next' | 'instead-of-next';

/** Work that was due on an instrument and is recorded as done with `make-ready`, new strings where some are down included. */
export type Due = {
	readonly tuning: Tuning;
	readonly capo: number;
	/** The touch-up comes later: it is not ready yet. */
	readonly isEarly?: boolean;
};

/** What a test changed for good, to be written down as the fact that it is. */
export type RigChange =
	| {
			readonly kind: 'instrument';
			readonly instrument: string;
			/** As it was offered; null for as believed. */
			readonly tuning: Tuning | null;
			readonly capo: number | null;
	  }
	| { readonly kind: 'pack'; readonly pack: string }
	/** Stepped out: off from here on. */
	| { readonly kind: 'pedals'; readonly pedals: readonly string[] };

/** The cause of a fault: a part's id, and whether it is the pack or the instrument that the search began with. */
export type FaultCause = {
	readonly part: string;
	readonly is: 'pack' | 'instrument' | 'other';
};

export type Command =
	/** Next cue point, or the song's end, or the next song with its planned hand-overs. `handOvers`, `capoMoves` and `stays` are those of what is reached. */
	| {
			readonly do: 'step';
			readonly handOvers: readonly HandOver[];
			/** Capos that players move themselves on what they keep. */
			readonly capoMoves?: readonly CapoMove[];
			readonly stays?: readonly Staying[];
	  }
	| { readonly do: 'step-back' }
	/** The song is done, whatever cue points were left. `handOvers` are those of the song that a segue goes on to. */
	| {
			readonly do: 'finish-song';
			readonly handOvers: readonly HandOver[];
			readonly capoMoves?: readonly CapoMove[];
			readonly stays?: readonly Staying[];
	  }
	| { readonly do: 'go-to-next-song' }
	| { readonly do: 'go-to-previous-song' }
	/** The next song is this one, on the list and not yet played, else once more or from the catalogue: by `place`, before the next one unless said. */
	| { readonly do: 'choose-next'; readonly song: string; readonly place?: JumpPlace }
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
	/** In this song of the list, tonight, the player has that; null: what the song says. */
	| {
			readonly do: 'name-tonight';
			readonly item: string;
			readonly player: string;
			readonly part: TonightPart | null;
	  }
	| {
			readonly do: 'hand-over';
			readonly handOvers: readonly HandOver[];
			readonly stays?: readonly Staying[];
	  }
	| {
			readonly do: 'exchange';
			readonly player: string;
			readonly instrument: string | null;
			/** Which item of the list they stay on it for, where they have it already; the one concerned unless said. */
			readonly item?: string;
			/** It was in hands since then: a hand-over that was missed. */
			readonly sinceMs?: NightMs;
	  }
	/** `due` null: as it stands, and nothing due is done by it. */
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
	/** A pedal that does not switch; it stays as we believe it. */
	| { readonly do: 'mark-pedal-stuck'; readonly player: string; readonly pedal: string }
	| { readonly do: 'free-pedal'; readonly player: string; readonly pedal: string }
	/** Choosing a suspect pack clears it. */
	| { readonly do: 'change-pack'; readonly player: string; readonly pack: string }
	| { readonly do: 'suspect-pack'; readonly player: string }
	| { readonly do: 'clear-pack'; readonly pack: string }
	| ({ readonly do: 'change-battery' } & BatteryIn)
	/** What is at fault with a player's sound is sought from here on. */
	| {
			readonly do: 'seek-fault';
			readonly player: string;
			readonly symptom: string;
			/** Ids of what runs on a battery that is held to be empty. */
			readonly empty?: readonly string[];
			/** How often each part was the cause on earlier nights, by id. */
			readonly found?: Readonly<Record<string, number>>;
	  }
	/** A test was done. `cause`: what is known by it, where the sound is right again. */
	| {
			readonly do: 'test-fault';
			readonly fault: RecordId;
			readonly test: string;
			readonly answer: 'sound' | 'same' | 'not-now';
			readonly isHeard: boolean;
			readonly change: RigChange | null;
			readonly cause: FaultCause | null;
	  }
	/** Another instrument is in the hands of the player whose fault is sought; what that tells is not known yet. */
	| ({ readonly do: 'take-spare'; readonly fault: RecordId } & Omit<
			Extract<RigChange, { kind: 'instrument' }>,
			'kind'
	  >)
	/** Somebody saw what it was. */
	| { readonly do: 'find-cause'; readonly fault: RecordId; readonly cause: FaultCause }
	| { readonly do: 'leave-fault'; readonly fault: RecordId }
	/** From here on the technician's own time for this, by its name; null: the built-in one. */
	| { readonly do: 'change-time'; readonly time: string; readonly seconds: number | null }
	| { readonly do: 'end-show' };
