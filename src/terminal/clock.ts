// Time as the input layer, the way out and the stall gate need it, so that tests can turn it by
// hand; and the real one.

import { clearTimeout, setImmediate, setTimeout } from 'node:timers';

/** Time and waiting, passed in. */
export type Clock = {
	/** Milliseconds that never go back; only differences mean anything. */
	readonly nowMs: () => number;
	/** Runs once after so many milliseconds; what it gives back cancels it. */
	readonly after: (milliseconds: number, run: () => void) => () => void;
	/** Runs once what has already arrived was read. */
	readonly afterReading: (run: () => void) => void;
};

const NANOSECONDS_IN_MS = 1e6;

/** Gives back the machine's own clock: monotonic, in milliseconds. */
export function nodeClock(): Clock {
	return {
		// The clock of node:perf_hooks, which takes milliseconds to load for a first picture.
		nowMs: () => Number(process.hrtime.bigint()) / NANOSECONDS_IN_MS,
		after: (milliseconds, run) => {
			const timer = setTimeout(run, milliseconds);
			return () => clearTimeout(timer);
		},
		// Node looks at timers before it polls the streams, and runs immediates after.
		afterReading: (run) => {
			setImmediate(run);
		},
	};
}
