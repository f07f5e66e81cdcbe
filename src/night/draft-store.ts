// Where what is typed and not yet entered outlasts the program: it is no fact of the night, so it stands
// beside the journal, and may be lost without harm.

import { draftsAfter, type Look } from './look.ts';

export type DraftStore = {
	/** Text by the prompt's own name. */
	readonly kept: () => Look['drafts'];
	/** Keeps these in place of those before; what cannot be kept is not. */
	readonly keep: (drafts: Look['drafts']) => void;
};

/** Drafts for as long as whoever holds this lives. */
export function unkeptDrafts(): DraftStore {
	let drafts: Look['drafts'] = {};
	return {
		kept: () => drafts,
		keep: (others) => {
			drafts = others;
		},
	};
}

/** Keeps what the night holds of unfinished texts, the open field's too, whenever it is another. */
export function draftKeeper(store: DraftStore, look: () => Look): () => void {
	let last = JSON.stringify(look().drafts);
	return () => {
		const drafts = draftsAfter(look(), 'close');
		const now = JSON.stringify(drafts);
		if (now === last) return;
		last = now;
		store.keep(drafts);
	};
}
