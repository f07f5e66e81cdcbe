// What a night under way needs from its journal, whether that is a file or only memory. Stands apart
// so that the night itself never knows a disk.

import type { AnyEntry, Checkpoint, ClockReading, JournalRecord } from './record.ts';

/**
 * `saving`: on its way to the disk. `slow`: for more than a second. `unsafe`: confirmed, but in a place
 * that a restart of the machine empties. `unsaved`: the disk refused it. `memory`: there is no file.
 */
export type SaveState = 'saved' | 'saving' | 'slow' | 'unsafe' | 'unsaved' | 'memory';

/** Where a night is kept that its own folder does not take. */
export type SavePlace = {
	readonly folder: string;
	/** The folder that it belongs into, and goes back to by itself. */
	readonly home: string;
	/** Why that takes nothing, in the system's own word; null until it was tried. */
	readonly trouble: string | null;
	/** A restart of the machine empties `folder`. */
	readonly isWiped: boolean;
};

/** Why a night is not being kept; `trouble` is the system's own word for it, as `ENOSPC`. */
export type SaveProblem =
	| { readonly code: 'slow' }
	| { readonly code: 'memory-only'; readonly trouble: string; readonly folder: string }
	| { readonly code: 'unsaved'; readonly trouble: string };

/** What happened to a night's file while it was open. */
export type SaveWarning =
	/** It goes on in a new one. */
	| { readonly code: 'file-left' | 'not-confirmed'; readonly trouble: string }
	/** Nobody can see whether its file is still where it was; what is written there is kept. */
	| { readonly code: 'not-seen'; readonly trouble: string }
	| { readonly code: 'file-changed'; readonly path: string; readonly change: 'gone' | 'cut-short' }
	/** It is in its own folder again, all of it. */
	| { readonly code: 'moved-back'; readonly from: string; readonly folder: string }
	/** `writer`: null when it cannot be told. */
	| { readonly code: 'written-by-other'; readonly writer: string | null };

/** How much of a night would outlive a power cut, and why not all of it. */
export type SaveStatus = {
	readonly state: SaveState;
	/** True when every record is confirmed by the disk and would outlive a restart of the machine. */
	readonly isSaved: boolean;
	/** Number of the last record of which that is true; 0 for none. */
	readonly savedSeq: number;
	/** Number of the last record; 0 for none. */
	readonly lastSeq: number;
	/** While something is wrong with saving. */
	readonly problem: SaveProblem | null;
	/** While it is kept elsewhere than in its own folder. */
	readonly elsewhere: SavePlace | null;
	/** Its own folder, where a restart of the machine empties that; else null. */
	readonly wipedHome: string | null;
	/** Uptime in milliseconds at which the problem began. */
	readonly sinceUpMs: number | null;
	/** What was noticed and stays worth knowing, oldest first. */
	readonly warnings: readonly SaveWarning[];
};

/** Whether a night that is left is to be gone on with, or its show is over. */
export type LeftAs = 'left' | 'over';

/** What a night's past is read from, be it kept here or by another copy of the program. */
export type ReadableJournal = Pick<
	NightJournal,
	'checkpoint' | 'checkpointBefore' | 'isWhole' | 'records' | 'recordsAfter' | 'keepStates'
>;

/** A journal that takes records one after the other and never refuses. */
export type NightJournal = {
	readonly id: string;
	/** The last state that was kept whole before the night was opened. */
	readonly checkpoint: Checkpoint | null;
	/** The last state that was kept whole, by then, after an earlier record than this one; null when there is none. */
	checkpointBefore(seq: number): Checkpoint | null;
	/** Whether every record above `after` up to `to` is there; says it without reading them. */
	isWhole(range: { readonly after: number; readonly to: number }): boolean;
	/** Has the state after all records kept whole now and then: `state` is asked for it and must not throw. */
	keepStates(state: () => unknown): void;
	/** Keeps the entries of one command as the next record and gives it back as it was kept: apply its entries, not those passed in. Never throws for the disk's sake. */
	append<E extends AnyEntry>(entries: readonly E[], at: ClockReading): JournalRecord<E>;
	/** All records from the first, in order, checkpoints and headers left out. The array grows with each append. */
	records(): readonly JournalRecord[];
	/** The records with a number above this one, in order, without a look at the others. */
	recordsAfter(seq: number): readonly JournalRecord[];
	status(): SaveStatus;
	/** To be called at least every second: tries again what failed, looks after the file. */
	tick(upMs: number): void;
	/** Tries at once to write what is not written; for the last moments of the program. */
	flushNow(): SaveStatus;
	/** Waits so long at most for the disk to confirm (1,900 ms if left out), then lets go of everything; open if `as` is left out. */
	close(limitMs?: number, as?: LeftAs): Promise<SaveStatus>;
};
