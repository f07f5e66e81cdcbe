// All that a night shows and does not record: the view, the prompt, what is said, dark and lock.

import type { RecordId } from '../journal/record.ts';
import type { Outcome, Prompt, ViewName } from '../keys/key-context.ts';
import { openFaults } from '../session/find.ts';
import type { Session } from '../session/session.ts';

/** A prompt closes by itself after this long without a key. */
const PROMPT_MS = 5000;

export type OpenPrompt = {
	readonly prompt: Prompt;
	readonly beganMs: number;
	/** On the clock of the hand at the keys. */
	readonly lastKeyMs: number;
};

export type Said = string | ((nowSeconds: number) => string);

/** What is said as it is to be read at that show time; null for nothing. */
export function saidAt(said: Said | null, nowSeconds: number): string | null {
	return typeof said === 'function' ? said(nowSeconds) : said;
}

export type Look = {
	readonly view: ViewName;
	readonly picked: number;
	/** The words that the log view is narrowed to. */
	readonly narrowedTo: string;
	readonly open: OpenPrompt | null;
	/** What is said, by the show time in seconds where it counts down. */
	readonly message: Said | null;
	/** How many of the things noticed about the night's files were looked at. */
	readonly noticesSeen: number;
	readonly isDark: boolean;
	readonly isLocked: boolean;
	readonly unlockFromMs: number | null;
	/** Breaks and searches for a fault that were put off. */
	readonly deferred: readonly RecordId[];
	readonly isLeaving: boolean;
	/** What was typed into fields that were left before they were entered, by the prompt's own name. */
	readonly drafts: Readonly<Record<string, string>>;
};

/** What a night shows first. */
export function firstLook(message: string | null, drafts: Look['drafts']): Look {
	return {
		view: 'stage',
		picked: 0,
		narrowedTo: '',
		open: null,
		message,
		noticesSeen: 0,
		isDark: false,
		isLocked: false,
		unlockFromMs: null,
		deferred: [],
		isLeaving: false,
		drafts,
	};
}

/** Whether the open prompt has waited for a key for so long that it closes. */
export function isOverdue({ open }: Look, handMs: number): boolean {
	return (
		open !== null &&
		!open.prompt.isText &&
		!open.prompt.isLasting &&
		handMs - open.lastKeyMs >= PROMPT_MS
	);
}

/** What is kept of fields when one is left, and no longer once it was entered. */
export function draftsAfter({ open, drafts }: Look, by: Outcome['kind']): Look['drafts'] {
	const draft = open?.prompt.draft;
	if (draft === undefined) return drafts;
	const { [draft.id]: _, ...others } = drafts;
	const isKept = by === 'close' && draft.text !== '';
	return isKept ? { ...others, [draft.id]: draft.text } : others;
}

/** The searches for a fault that were put off and are not over: another break, or a step undone, leaves them so. */
export function faultsPutOff({
	look,
	session,
}: {
	readonly look: () => Look;
	readonly session: () => Session;
}): readonly RecordId[] {
	const open = openFaults(session()).map(({ id }) => id);
	return look().deferred.filter((id) => open.includes(id));
}
