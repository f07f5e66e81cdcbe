// What a prompt shows, as the screen needs it: so that the screen knows no prompt by name.

import type { NightMs } from '../journal/entry.ts';
import type { Plan, StandIn } from '../plan/plan.ts';
import type { Session } from '../session/session.ts';
import type { TextLine } from './text-line.ts';

export type PromptView = {
	/** One line: what is asked. */
	readonly title: string;
	/** What to know before answering: stand-ins, what a jump changes, a list of kinds. */
	readonly lines: readonly string[];
	/** Blocks of lines that are good to know, the first one most: shown where there is room. */
	readonly more?: readonly (readonly string[])[];
	/** The text typed so far, in a prompt with a text field, on both sides of where the next letter goes. */
	readonly field: TextLine | null;
	/** Tonight's list as it would be, to be drawn in place of the one that stands; `item` is what it is about. */
	readonly tonight?: { readonly session: Session; readonly plan: Plan; readonly item: string };
	/** What enter would hand to a player whose sound is gone or spoilt, for the card of that player. */
	readonly backup?: OfferedBackup;
	/** The keys that answer, with their words. */
	readonly choices: readonly KeyWords[];
};

export type OfferedBackup = {
	readonly player: string;
	readonly standIn: StandIn;
	/** When that began. */
	readonly atMs: NightMs;
	/** `NO SOUND`. */
	readonly forWhat: string;
	/** Nothing is heard of the player. */
	readonly isSilent: boolean;
};

/** A key as it is shown, and what it does now in a few words. */
export type KeyWords = { readonly key: string; readonly words: string };
