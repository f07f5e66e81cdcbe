// What the program's exit tells a script. A signal's is 128 and its number; see the terminal's ending.

/** Exit codes by what they mean. `bug` is BSD sysexits' `EX_SOFTWARE`. */
export const EXIT = {
	fine: 0,
	/** Done, and there is something to look at. */
	toLookAt: 1,
	/** The request or a file could not be used. */
	unusable: 2,
	/** The night's data could not be kept. */
	notKept: 3,
	bug: 70,
	/** Left with Ctrl-C: 128 and SIGINT's number. */
	interrupted: 130,
} as const;
