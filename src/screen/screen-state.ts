// Everything that a drawn screen depends on. The night fills it; the screen turns it into rows.

import type { SaveStatus } from '../journal/night-journal.ts';
import type { RecordId } from '../journal/record.ts';
import type { ViewName } from '../keys/key-context.ts';
import type { Preferences } from '../keys/preferences.ts';
import type { KeyWords, PromptView } from '../keys/prompt-view.ts';
import type { Plan, StandIn } from '../plan/plan.ts';
import type { Session } from '../session/session.ts';

export type ScreenState = {
	readonly session: Session;
	readonly plan: Plan;
	readonly nowMs: number;
	/** Zero of the show clock: the first song's start, or when it is planned. */
	readonly zeroMs: number;
	/** Add to night milliseconds for the time of day where the show is. */
	readonly dayOffsetMinutes: number;
	readonly view: ViewName;
	/** Row picked in rack, list and log; first row drawn follows it. */
	readonly picked: number;
	readonly prompt: PromptView | null;
	/** One sentence in answer to the last key: why it could not act, or what a mismatch is. */
	readonly message: string | null;
	/** Stand-ins for each player with a break not answered yet. */
	readonly standIns: Readonly<Record<string, readonly StandIn[]>>;
	readonly save: SaveStatus;
	/** What was found on opening the night's files, a sentence each. */
	readonly findings: readonly string[];
	/** How many of what was noticed about the night's files were looked at, the oldest first. */
	readonly noticesSeen: number;
	readonly isDark: boolean;
	readonly isLocked: boolean;
	readonly isRehearsal: boolean;
	/** Where another copy of the program keeps the night and this one only shows it: what is wrong with that; null where it is kept here. */
	readonly follows: Follows | null;
	/** Why nothing of what boards are to be gets there, a sentence; null or left out while it does. */
	readonly outsideTrouble?: string | null;
	/** When the show file came to say something else than the night goes by; null while it does not. */
	readonly showChangedAtMs: number | null;
	/** What happened, newest first, made as far as it is read; what was taken back is marked. */
	readonly log: Iterable<LogLine>;
	/** The words that the log view is narrowed to; empty for none. */
	readonly narrowedTo: string;
	/** The step that `u` takes back; null when there is none. */
	readonly takeableStep: RecordId | null;
	/** The keys that work now, most needed first. */
	readonly footer: readonly KeyWords[];
	readonly preferences: Preferences;
	/** Every key, for the help view. */
	readonly help: readonly KeyWords[];
	/** What somebody who leads through a rehearsal says; left out where nobody does. */
	readonly band?: Band;
};

/** Two rows: how far one is and what to do; below, with which keys or in what time, and how to leave. */
export type Band = {
	readonly label: string;
	readonly words: string;
	readonly under: string;
	readonly hint: string;
};

export type Follows = {
	/** Why nothing more comes, in whole and for one row; null while all is well. */
	readonly trouble: {
		readonly words: string;
		readonly short: string;
		readonly isEnd: boolean;
	} | null;
};

export type LogLine = {
	readonly atMs: number;
	readonly words: string;
	readonly isTakenBack: boolean;
	/** The step that it belongs to: lines of one step have the same number. */
	readonly step: RecordId;
	/** That a song began or ended, which the rest of the screen says as well. */
	readonly isOfSong?: true;
};
