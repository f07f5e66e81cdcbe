// The run sheet as data: song by song in the order of the list what to hand, what to do at the rack and when, what
// to press. Text and page are made from it, and two printings of it are compared by what it says.

import type { Show } from '../showfile/show.ts';
import type { RackPlace, Radio } from './sheet-gear.ts';

export type Sheet = {
	/** Its list is the one that the sheet is of. */
	readonly show: Show;
	/** What is left to do before the first song that is to come. */
	readonly before: readonly SheetWork[];
	readonly rows: readonly SheetRow[];
	/** What is said of the night and not of one song. */
	readonly warnings: readonly Mark[];
	readonly rack: readonly RackPlace[];
	readonly radio: Radio;
};

export type SheetRow = SheetSong | SheetInterval;

export type SheetInterval = {
	readonly kind: 'interval';
	/** `20:00`. */
	readonly length: string;
	/** When it begins; null where it is over. */
	readonly clock: string | null;
	/** What comes off: `ASH 2 Ember`. */
	readonly back: readonly { readonly player: string; readonly text: string }[];
	readonly work: readonly SheetWork[];
};

export type SheetSong = {
	readonly kind: 'song';
	/** The song, and which playing of it this is: the same in another printing. */
	readonly key: string;
	readonly position: number;
	readonly title: string;
	readonly isEncoreBegin: boolean;
	/** It is played, or was begun: nothing of it is to come. */
	readonly isDone: boolean;
	readonly clock: string | null;
	/** Before it; null where all there is to do fits. */
	readonly gap: string | null;
	/** The gap is hardly enough for its hand-overs, or too short. */
	readonly isTight: boolean;
	readonly length: string | null;
	/** `Bo starts, count 4`; empty where nobody is named. */
	readonly starts: string;
	/** `stop`, `ring`, `talk`, `SEGUE`. */
	readonly ends: string;
	/** What the file notes of the song; null for nothing. */
	readonly notes: string | null;
	readonly changes: readonly SheetChange[];
	/** Its start, where a board changes there, and each of its cues. */
	readonly points: readonly SheetPoint[];
	/** What is done at the rack from its start to the next. */
	readonly work: readonly SheetWork[];
	readonly marks: readonly Mark[];
};

/** What changes in a player's hands. */
export type SheetChange = {
	readonly player: string;
	/** In capitals. */
	readonly who: string;
	/** Before which cue; null for the song's start. */
	readonly at: string | null;
	/** What they have then; null where that is nothing. */
	readonly on: {
		readonly slot: string | null;
		readonly name: string;
		readonly tuning: string;
		readonly isKept: boolean;
	} | null;
	/** Why they have nothing, where they do. */
	readonly nothing: string | null;
	/** What they give back: `4 Anchor`. */
	readonly off: string | null;
	/** `CAPO ON 2`, `CAPO OFF`; null where there is none on it and none was. */
	readonly capo: string | null;
	/** What it takes at the rack besides a touch-up: `RETUNE drop D in the interval`. */
	readonly acts: readonly string[];
	/** The pack, what it is a backup for, offsets. */
	readonly notes: readonly string[];
	/** To be checked before it leaves the rack. */
	readonly leave: string | null;
};

/** A point at which somebody presses: what is pressed, and the whole boards from there on. */
export type SheetPoint = {
	/** What is heard or seen; null for the song's start. */
	readonly at: string | null;
	readonly say: string | null;
	readonly boards: readonly {
		readonly player: string;
		readonly who: string;
		/** `+DELAY −BOOST`, pedals in another order before it; empty where the board stays. */
		readonly presses: string;
		readonly whole: string;
	}[];
};

/** A piece of work at the rack. */
export type SheetWork = {
	readonly player: string;
	readonly slot: string | null;
	readonly name: string;
	/** `RETUNE drop D, CAPO ON 2`. */
	readonly what: string;
	/** `0:45, start by 20:36`. */
	readonly when: string;
	/** The song it is for: `3 Gravel`. */
	readonly song: string;
	readonly isShort: boolean;
};

/** A warning, of one player or of all. */
export type Mark = { readonly player: string | null; readonly text: string };
