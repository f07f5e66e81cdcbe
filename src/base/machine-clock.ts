// The shape of the machine's clocks. The real one is made by the disk's side, a rehearsal turns its own,
// and the night reads either without knowing which.

/** Two clocks: the one on the wall, which can be set, and the one that only ever runs. */
export type MachineClock = {
	/** Milliseconds since 1970. */
	readonly wallMs: () => number;
	/** Milliseconds since the machine was started, time asleep included; never runs backwards. */
	readonly upMs: () => number;
	/**
	 * How many of those milliseconds the machine slept, counted from a moment of its own: only differences
	 * mean anything. Left out by a clock that knows of no sleep.
	 */
	readonly asleepMs?: () => number;
	/** Id of the machine's present start; empty when the system has none. */
	readonly bootId: string;
};
