// How a night's saving stands, in a word and a sentence, from what its file knows about itself.

import type { SaveState, SaveStatus } from '../journal/night-journal.ts';
import { diskTrouble } from './disk-trouble.ts';

/** Why something is not saved, and since when. */
export type SaveFault = { readonly code: string; readonly sinceUpMs: number };

/** What a night's file knows. */
export type SaveFacts = {
	readonly savedSeq: number;
	readonly lastSeq: number;
	readonly fault: SaveFault | null;
	/** When the confirmation that is being waited for was asked for. */
	readonly syncingSinceUpMs: number | null;
	readonly upMs: number;
	/** Whether there is, or was, a file at all since the program was started. */
	readonly hasFile: boolean;
	/** Whether the file itself is confirmed. */
	readonly isPlaced: boolean;
	readonly warnings: readonly string[];
	readonly folder: string;
};

/** A disk that takes longer than this to confirm is called slow. */
const slowMs = 1000;

/** The status that these facts amount to. */
export function saveStatus(facts: SaveFacts): SaveStatus {
	const state = stateOf(facts);
	const { savedSeq, lastSeq, warnings, fault, syncingSinceUpMs } = facts;
	return {
		state,
		isSaved: state === 'saved',
		savedSeq,
		lastSeq,
		problem: problemOf(state, facts),
		sinceUpMs: fault?.sinceUpMs ?? (state === 'slow' ? syncingSinceUpMs : null),
		warnings,
	};
}

function stateOf(facts: SaveFacts): SaveState {
	if (facts.fault) return facts.hasFile ? 'unsaved' : 'memory';
	if (facts.savedSeq === facts.lastSeq && facts.isPlaced) return 'saved';
	const since = facts.syncingSinceUpMs;
	return since !== null && facts.upMs - since > slowMs ? 'slow' : 'saving';
}

function problemOf(state: SaveState, { fault, folder }: SaveFacts): string | null {
	if (state === 'slow') {
		return 'The disk is slow: the last steps are written but not yet confirmed.';
	}
	if (!fault) return null;
	const trouble = diskTrouble(fault.code);
	return state === 'memory'
		? `The night is kept in memory only: ${trouble} in ${folder}. Choose another folder with --data DIR.`
		: `Not saved: ${trouble}. The night goes on in memory and is written as soon as that works.`;
}
