// What a prompt shows, as the screen needs it: words only, so that the screen knows no prompt by name.

export type PromptView = {
	/** One line: what is asked. */
	readonly title: string;
	/** What to know before answering: stand-ins, what a jump changes, a list of kinds. */
	readonly lines: readonly string[];
	/** The text typed so far, in a prompt with a text field. */
	readonly field: string | null;
	/** The keys that answer, with their words. */
	readonly choices: readonly KeyWords[];
};

/** A key as it is shown, and what it does now in a few words. */
export type KeyWords = { readonly key: string; readonly words: string };
