// What an action is: one record for each, from which keys, footer, help and the README's table are made.

import type { Command } from '../session/command.ts';
import type { KeyContext, Outcome } from './key-context.ts';

export type Action = {
	readonly id: string;
	/** Default keys, the first shown. */
	readonly keys: readonly string[];
	/** What it does, for help and the README: one line. */
	readonly words: string;
	/** What it would do now, in two or three words; null when it is not worth a place in the footer now; left out when it never is. */
	readonly footer?: (context: KeyContext) => string | null;
	/** Why it cannot act now, a sentence; null when it can; left out when it always can. */
	readonly whyNot?: (context: KeyContext) => string | null;
	readonly act: (context: KeyContext) => Outcome;
	/** Works while the screen is dark. */
	readonly isForDark?: boolean;
	/** Every press counts, however fast: a key held down goes on through a list. */
	readonly isEachCounted?: boolean;
};

/** The outcome that is a command of the night. */
export function command(one: Command): Outcome {
	return { kind: 'command', command: one };
}
