// What keeps bytes from the port that pedals hang on, as data: who opens it says it, and who knows no port puts it
// into words.

export type MidiFault = {
	/** The path or the name, as it was asked for. */
	readonly port: string;
	/**
	 * The system's own word, as `ENOENT`; `STALLED`: it takes no bytes; `NO_LIBRARY`: what ports by name need is not
	 * installed; `NO_MIDI`: it is, and this machine has no MIDI for it; `NO_SUCH_PORT`: no port has this name.
	 */
	readonly trouble: string;
	/** It was open before. */
	readonly isGone: boolean;
	/** The names that there are, for `NO_SUCH_PORT`. */
	readonly ports: readonly string[];
};
