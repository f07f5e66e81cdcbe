// How a night's saving stands, from what its file knows about itself.

import type {
	SavePlace,
	SaveProblem,
	SaveState,
	SaveStatus,
	SaveWarning,
} from '../journal/night-journal.ts';

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
	readonly warnings: readonly SaveWarning[];
	readonly folder: string;
	readonly elsewhere: SavePlace | null;
	/** Whether a restart of the machine empties `folder`. */
	readonly isHomeWiped: boolean;
	/** Number of the last record that is confirmed in the night's own folder. */
	readonly homeSeq: number;
};

/** A disk that takes longer than this to confirm is called slow. */
const slowMs = 1000;

/** The status that these facts amount to. */
export function saveStatus(facts: SaveFacts): SaveStatus {
	const state = stateOf(facts);
	const { lastSeq, warnings, fault, syncingSinceUpMs, elsewhere } = facts;
	return {
		state,
		isSaved: state === 'saved',
		savedSeq: safeSeq(facts),
		lastSeq,
		problem: problemOf(state, facts),
		elsewhere,
		wipedHome: facts.isHomeWiped && facts.hasFile ? facts.folder : null,
		sinceUpMs: fault?.sinceUpMs ?? (state === 'slow' ? syncingSinceUpMs : null),
		warnings,
	};
}

/** The last record that would outlive a restart of the machine. */
function safeSeq({ isHomeWiped, elsewhere, homeSeq, savedSeq }: SaveFacts): number {
	if (isHomeWiped) return 0;
	return elsewhere?.isWiped ? Math.min(homeSeq, savedSeq) : savedSeq;
}

function stateOf(facts: SaveFacts): SaveState {
	if (facts.fault) return facts.hasFile ? 'unsaved' : 'memory';
	if (facts.savedSeq === facts.lastSeq && facts.isPlaced)
		return facts.isHomeWiped || facts.elsewhere?.isWiped ? 'unsafe' : 'saved';
	const since = facts.syncingSinceUpMs;
	return since !== null && facts.upMs - since > slowMs ? 'slow' : 'saving';
}

function problemOf(state: SaveState, { fault, folder }: SaveFacts): SaveProblem | null {
	if (state === 'slow') return { code: 'slow' };
	if (!fault) return null;
	const { code: trouble } = fault;
	return state === 'memory'
		? { code: 'memory-only', trouble, folder }
		: { code: 'unsaved', trouble };
}
