// What an action or a prompt may look at, and what it may ask for. Keys decide nothing about the
// night themselves: they turn a press into a command, a prompt, or a sentence.

import type { Measured } from '../gear/gear-entry.ts';
import type { RecordId } from '../journal/record.ts';
import type { Later, Plan, StandIn } from '../plan/plan.ts';
import type { Command, JumpPlace } from '../session/command.ts';
import type { Session } from '../session/session.ts';
import type { Instrument } from '../showfile/show.ts';
import type { ShowReading } from '../showfile/show-from-files.ts';
import type { Preferences } from './preferences.ts';
import type { PromptView } from './prompt-view.ts';

export type ViewName =
	| 'stage'
	| 'rack'
	| 'list'
	| 'log'
	| 'far'
	| 'rig'
	| 'warnings'
	| 'help'
	| 'settings';

export type KeyContext = {
	readonly session: Session;
	readonly plan: Plan;
	readonly nowMs: number;
	/** When the first song is meant to start. */
	readonly plannedZeroMs: number;
	readonly view: ViewName;
	readonly preferences: Preferences;
	/** The key that does an action now, to be named in sentences. */
	readonly keyOf: (action: string) => string;
	/** How many steps the disk has refused so far; quitting loses them. */
	readonly unsavedSteps: number;
	/** The row picked in rack, list, log and settings. */
	readonly picked: number;
	readonly canTakeBack: boolean;
	readonly canPutBack: boolean;
	/** Best first, for what the player holds or is about to get. */
	readonly standInsFor: (player: string) => readonly StandIn[];
	/** What it costs later when they play on with what they hold. */
	readonly playOnLater: (player: string) => readonly Later[];
	/** The words that the log is narrowed to; empty for none. */
	readonly narrowedTo: string;
	/** The log's entry at this row, in full; null when there is none. */
	readonly logWords: (row: number) => string | null;
	/** What was measured on an instrument at the bench, the newest first. */
	readonly measuredOn: (instrument: Instrument) => readonly Measured[];
	/** How often each part of a player's rig was the cause of a fault on earlier nights, by id. */
	readonly foundBefore: (player: string) => Readonly<Record<string, number>>;
	/** Reads the show file again; null where there is none to read. */
	readonly readShow: (() => ShowReading) | null;
	/** What was typed into a field that was left before it was entered; empty for none. */
	readonly draftOf: (id: string) => string;
	/** What changes if this song becomes the next, a line each. */
	readonly previewOf: (song: string, place: JumpPlace) => readonly string[];
};

/** An instrument that rang at so many hertz. */
export type Rang = { readonly instrument: string; readonly hertz: number };

export type Outcome =
	/** `isStampedNow`: with this key's moment, not with that of the prompt's first key. */
	| {
			readonly kind: 'command';
			readonly command: Command;
			readonly isStampedNow?: boolean;
			/** The item of the list that is picked from then on. */
			readonly follows?: string;
			/** What is to be known of it once it is recorded, a sentence. */
			readonly says?: string;
			/** What is kept with an instrument beside the night. */
			readonly keeps?: Rang;
	  }
	| { readonly kind: 'prompt'; readonly prompt: Prompt }
	| { readonly kind: 'say'; readonly words: string }
	| { readonly kind: 'view'; readonly view: ViewName }
	| { readonly kind: 'pick'; readonly by: number }
	/** Narrows the log to lines with these words. */
	| { readonly kind: 'narrow'; readonly words: string }
	/** Changes preferences, and says so; the night may follow at once. */
	| {
			readonly kind: 'prefer';
			readonly changes: Partial<Preferences>;
			readonly words: string;
			readonly command?: Command;
	  }
	| {
			readonly kind:
				| 'take-back'
				| 'put-back'
				| 'dark'
				| 'lock'
				| 'close'
				| 'leave'
				/** Tells the outside how boards are to be now. */
				| 'send-boards'
				/** What the picked row of the settings view is for. */
				| 'open-setting';
	  }
	/** The question of this record is put off. */
	| { readonly kind: 'decide-later'; readonly of: RecordId }
	/** The key is not for this prompt: it does what it does without one. */
	| { readonly kind: 'pass' };

/** A question being answered. Each key gives the next outcome; a prompt never changes in place. */
export type Prompt = {
	/** Text and list fields: every press counts, space is a letter, and the prompt never closes by itself. */
	readonly isText: boolean;
	/** A list is gone through with up and down: held down, they go on. */
	readonly isList?: boolean;
	/** What is typed so far, to be kept when the prompt is left, and by what it is known. */
	readonly draft?: { readonly id: string; readonly text: string };
	/** Stays through space and time. */
	readonly isLasting: boolean;
	readonly view: (context: KeyContext) => PromptView;
	readonly press: (key: string, context: KeyContext) => Outcome;
};
