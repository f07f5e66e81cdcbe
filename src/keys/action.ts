// What an action is: one record for each, from which keys, footer, help and the README's table are made.

import type { KeyContext, Outcome } from './key-context.ts';

export type Action = {
	readonly id: string;
	/** Default keys, the first shown. */
	readonly keys: readonly string[];
	/** What it does, for help and the README: one line. */
	readonly words: string;
	/** What it would do now, in two or three words; null when it is not worth a place in the footer now. */
	readonly footer: (context: KeyContext) => string | null;
	/** Why it cannot act now, a sentence; null when it can. */
	readonly whyNot: (context: KeyContext) => string | null;
	readonly act: (context: KeyContext) => Outcome;
	/** Works while the screen is dark. */
	readonly isForDark?: boolean;
	/** Every press counts, however fast: a key held down goes on through a list. */
	readonly isEachCounted?: boolean;
};
