// What a user's file, request or key got wrong, as data. It becomes words only at the edge, so that
// the same problem can stand in a terminal, in JSON and in a test.

/** A place in a file: one-based line and column, as editors count them. */
export type Place = {
	readonly file: string;
	readonly line?: number;
	readonly column?: number;
};

/** Something a user can put right: what is wrong, where, what stood there, what would do. */
export type Problem = {
	/** Stable name for tests and JSON, e.g. `unknown-key`. */
	readonly code: string;
	/** What is wrong, as the beginning of a sentence without its full stop. */
	readonly what: string;
	readonly where?: Place;
	readonly found?: string;
	readonly expected?: string;
	/** What to do, as a whole sentence. */
	readonly hint?: string;
};
