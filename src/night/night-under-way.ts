// What every part of a night under way works on: its past and journal, its clock, what it shows. Apart,
// so that a part knows only this and what it calls.

import type { MachineClock } from '../base/machine-clock.ts';
import type { Measured } from '../gear/gear-entry.ts';
import type { Entry } from '../journal/entry.ts';
import type { NightJournal, SaveStatus } from '../journal/night-journal.ts';
import type { JournalRecord, RecordId } from '../journal/record.ts';
import { keyOfAction } from '../keys/key-choices.ts';
import type { Rang } from '../keys/key-context.ts';
import { sendBoardsPrompt } from '../keys/prompts.ts';
import { openSession } from '../session/open-session.ts';
import type { Session } from '../session/session.ts';
import { NOTES } from '../session/timeline.ts';
import type { Instrument, Show } from '../showfile/show.ts';
import type { DraftStore } from './draft-store.ts';
import { type EffectsPort, outsideOf } from './effects-port.ts';
import { firstLook, type Look } from './look.ts';
import { goOn, type NightClock } from './night-clock.ts';
import { type NightPast, openPast } from './night-past.ts';
import { movedZero } from './planned-zero.ts';
import { type PreferenceStore, unkeptPreferences } from './preference-store.ts';

export type NightOptions = {
	readonly show: Show;
	readonly journal: NightJournal;
	readonly clock: MachineClock;
	/** When the first song is meant to start. */
	readonly plannedZeroMs: number;
	/** What to add to UTC for the time of day where the show is. */
	readonly dayOffsetMinutes: number;
	readonly isRehearsal: boolean;
	/** Milliseconds that the hand at the keys lives by, where the clock runs faster than it. */
	readonly handMs?: () => number;
	/** What the user prefers; by default what is usual, for as long as the program runs. */
	readonly preferences?: PreferenceStore;
	/** What was measured on an instrument at the bench, whatever show, the newest first. */
	readonly measuredOn?: (instrument: Instrument) => readonly Measured[];
	/** How often each part of a player's rig was the cause of a fault on earlier nights, by id. */
	readonly foundBefore?: (show: Show, player: string) => Readonly<Record<string, number>>;
	/** Keeps with an instrument what it rang at; gives a sentence where it could not. By default nowhere. */
	readonly keepRinging?: (rang: Rang, of: RecordId) => Promise<string | null>;
	/** The step of this record was undone, or redone: so is what was kept with an instrument by it. As `keepRinging`. */
	readonly ringingUndone?: (of: RecordId, isBack: boolean) => Promise<string | null>;
	/** Where unfinished texts outlast the program; by default nowhere. */
	readonly drafts?: DraftStore;
	/** What switches things outside; by default nothing. */
	readonly effects?: EffectsPort;
	/** Whether a resume asks whether the outside is to be told how things stand. */
	readonly asksToSend?: boolean;
	/** Why the outside cannot be told, a sentence; null while it can. */
	readonly outsideTrouble?: () => string | null;
	/** Sentences about what was found on opening the journal, to be shown first. */
	readonly findings?: readonly string[];
	/** A sentence to be seen until the first key, where nothing was found. */
	readonly says?: string;
};

export type NightUnderWay = {
	readonly past: NightPast;
	readonly clock: NightClock;
	readonly handMs: () => number;
	readonly preferences: PreferenceStore;
	readonly session: () => Session;
	/** When the first song is meant to start, as the show stands in this session, by default now. */
	readonly plannedZeroMs: (of?: Session) => number;
	/** Zero of the show clock: the first song's start, meant or real. */
	readonly zeroMs: () => number;
	/** The key that does an action now. */
	readonly keyOf: (action: string) => string;
	readonly look: () => Look;
	readonly setLook: (change: Partial<Look>) => void;
	/** How many things were noticed about the night's files. */
	readonly noticeCount: () => number;
	/** How many steps the disk has refused so far. */
	readonly unsavedSteps: () => number;
	/** Keeps what one command came to, and goes by it from now on; gives the record. */
	readonly record: (entries: readonly Entry[]) => RecordId;
	/** Tells the outside how things stand, whatever it was told before. */
	readonly sendAgain: () => void;
	readonly keepRinging: (rang: Rang, of: RecordId) => Promise<string | null>;
	readonly ringingUndone: (of: RecordId, isBack: boolean) => Promise<string | null>;
	/** Tells everybody who listens that something changed. */
	readonly changed: () => void;
	/** Says later what is in the way of keeping something; `failed` where nothing is known but that it was not kept. */
	readonly sayTrouble: (kept: Promise<string | null>, failed: string) => void;
	/** Calls back after every change; gives back how to stop. */
	readonly onChange: (listener: () => void) => () => void;
};

/** What is recorded without a word to the outside. */
const UNSENT: ReadonlySet<string> = new Set([...NOTES, 'plan-told']);

/** A night that goes on from what its journal holds, or begins; that it does is recorded. */
export function nightUnderWay(options: NightOptions): NightUnderWay {
	const { show, journal } = options;
	const past = openPast(openSession(show), journal);
	const { session } = past;
	const known = past.lastKnown();
	const clock = goOn(options.clock, known);
	const { effects } = options;
	const record = (entries: readonly Entry[]): RecordId => {
		const kept = journal.append(entries, clock.reading()) as JournalRecord<Entry>;
		past.take(kept);
		// What a resume changes outside is sent when somebody asks for it: nothing jumps by itself.
		if (effects && entries.some(({ k }) => !UNSENT.has(k)))
			effects.become(outsideOf(session()), kept.id);
		return kept.id;
	};
	const at = clock.nowMs();
	const boot = options.clock.bootId;
	if (known) {
		const seconds = Math.round(Math.max(0, (at - known.atMs) / 1000));
		record([{ k: 'resumed', at, seconds, boot }]);
	} else {
		record([{ k: 'night-opened', at, boot }]);
	}

	const first = firstLook(
		options.findings?.[0] ?? (known ? null : (options.says ?? null)),
		options.drafts?.kept() ?? {},
	);
	const isAsking = known && options.asksToSend === true && session().zeroAtMs !== null;
	const asked = { prompt: sendBoardsPrompt(), beganMs: at, lastKeyMs: at };
	return nightShown({
		...options,
		past,
		clock,
		first: isAsking ? { ...first, open: asked } : first,
		noticeCount: () => (options.findings?.length ?? 0) + journal.status().warnings.length,
		unsavedSteps: () => stepsNotTaken(journal.status()),
		record,
		sendAgain: () => effects?.become(outsideOf(session()), null),
	});
}

/** What is late alone is on its way to the disk all the same. */
function stepsNotTaken({ problem, lastSeq, savedSeq }: SaveStatus): number {
	return problem === null || problem.code === 'slow' ? 0 : lastSeq - savedSeq;
}

export type ShownParts = Pick<
	NightUnderWay,
	'past' | 'clock' | 'noticeCount' | 'unsavedSteps' | 'record' | 'sendAgain'
> &
	Pick<
		NightOptions,
		'show' | 'plannedZeroMs' | 'handMs' | 'preferences' | 'keepRinging' | 'ringingUndone'
	> & {
		/** What is shown first. */
		readonly first: Look;
	};

/** A past and a clock with what is shown of them, and who is told when that changes. */
export function nightShown(parts: ShownParts): NightUnderWay {
	const { show, past, clock, noticeCount, unsavedSteps, record, sendAgain } = parts;
	const { session } = past;
	const listeners = new Set<() => void>();
	const preferences = parts.preferences ?? unkeptPreferences(show.ownTimes);
	const plannedZeroMs = (of = session()) => movedZero(parts.plannedZeroMs, show, of.show);
	let look = parts.first;
	const setLook = (change: Partial<Look>): void => {
		look = { ...look, ...change };
	};
	const changed = (): void => {
		for (const listener of listeners) listener();
	};
	return {
		past,
		clock,
		handMs: parts.handMs ?? clock.nowMs,
		preferences,
		session,
		plannedZeroMs,
		zeroMs: () => session().zeroAtMs ?? plannedZeroMs(),
		keyOf: (id) => keyOfAction(id, preferences.values().keys),
		look: () => look,
		setLook,
		noticeCount,
		unsavedSteps,
		record,
		sendAgain,
		keepRinging: parts.keepRinging ?? (async () => null),
		ringingUndone: parts.ringingUndone ?? (async () => null),
		changed,
		sayTrouble: (kept, failed) => {
			const say = (message: string): void => {
				setLook({ message });
				changed();
			};
			kept.then(
				(trouble) => trouble !== null && say(trouble),
				() => say(failed),
			);
		},
		onChange: (listener) => {
			listeners.add(listener);
			return () => listeners.delete(listener);
		},
	};
}
