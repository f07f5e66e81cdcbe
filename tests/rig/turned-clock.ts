// A clock that a test turns: what is due runs when its time is passed, in its order.

import type { Clock } from '../../src/terminal/clock.ts';

export type TurnedClock = Pick<Clock, 'nowMs' | 'after'> & {
	/** So many milliseconds go by. */
	readonly pass: (ms: number) => void;
};

export function turnedClock(): TurnedClock {
	let nowMs = 0;
	let due: { readonly atMs: number; readonly run: () => void }[] = [];
	return {
		nowMs: () => nowMs,
		after: (milliseconds, run) => {
			const one = { atMs: nowMs + milliseconds, run };
			due.push(one);
			return () => {
				due = due.filter((other) => other !== one);
			};
		},
		pass: (ms) => {
			const untilMs = nowMs + ms;
			for (;;) {
				const [next] = due.toSorted((one, other) => one.atMs - other.atMs);
				if (next === undefined || next.atMs > untilMs) break;
				due = due.filter((one) => one !== next);
				nowMs = Math.max(nowMs, next.atMs);
				next.run();
			}
			nowMs = untilMs;
		},
	};
}
