// The answers of a show half made, in the data folder.

import { createHash } from 'node:crypto';
import { resolve } from 'node:path';
import { realDisk } from '../../disk/real-disk.ts';
import { takeDraft } from '../../disk/take-draft.ts';
import type { FileThere } from '../../new-show/making.ts';
import { type Kept, keptOf, type NewShow } from '../../new-show/new-show.ts';
import { draftKept, draftNotKept, NOTHING_BEGUN } from '../../words/new-show.ts';
import type { Io } from '../io.ts';
import { shellWord } from '../shell/shell-word.ts';

const NAME = 'new-show';

export type KeptDraft = {
	readonly kept: () => Kept | null;
	readonly keep: (kept: Kept | null) => void;
	/** What is to be said when the questions are left: whether the draft is on the disk. */
	readonly words: (state: NewShow) => string;
	readonly release: () => void;
};

/** Where nothing is kept, since it is there the next time without that. */
export const NO_DRAFT: KeptDraft = {
	kept: () => null,
	keep: () => {},
	words: () => NOTHING_BEGUN,
	release: () => {},
};

/** A draft in the data folder that no other window has. What is added to a file is of that file as it stands, and of no other. */
export async function keptDraft(
	folder: string,
	{ file, adding }: { readonly file: string | null; readonly adding?: FileThere },
	io: Io,
): Promise<KeptDraft> {
	const about = file === null ? null : resolve(io.cwd, file);
	const sum = createHash('sha256').update(`${about}\n${adding?.text}`).digest('hex').slice(0, 12);
	const name = adding && about !== null ? `${NAME}-${sum}` : NAME;
	// What is added to a file is offered with that file alone.
	const named = adding && file !== null ? shellWord(file) : null;
	const store = await takeDraft(realDisk, { folder, name, about });
	const asStored = ({ answers, typed }: Kept) => ({ answers: JSON.stringify(answers), typed });
	return {
		kept: () => {
			const { answers, typed = '' } = store.kept();
			return answers === undefined ? null : { answers: textsIn(answers), typed };
		},
		keep: (kept) => store.keep(kept === null ? {} : asStored(kept)),
		words: (state) => {
			const kept = keptOf(state);
			if (kept === null) return draftKept(named);
			if (kept.answers.length === 0 && kept.typed === '') return NOTHING_BEGUN;
			const isKept = store.kept().answers === asStored(kept).answers;
			return isKept ? draftKept(named) : draftNotKept;
		},
		release: store.release,
	};
}

function textsIn(json: string): readonly string[] {
	try {
		const found: unknown = JSON.parse(json);
		return Array.isArray(found) ? found.filter((one) => typeof one === 'string') : [];
	} catch {
		return [];
	}
}
