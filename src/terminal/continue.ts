// The return of a terminal that another program may have had and left in any state: after a stop, at
// a new size (some multiplexers say "draw anew" so), or when lines arrive that raw mode would not send.

import type { Clock } from './clock.ts';
import type { Emitter } from './end-on-signals.ts';
import { ENTER_MODES } from './terminal-modes.ts';

/** What is done on the return, in this order after raw mode. */
export type ContinueParts = {
	readonly process: Emitter;
	readonly clock: Pick<Clock, 'after'>;
	/** Takes raw mode anew: `InputSource.retake`. */
	readonly retake: () => void;
	readonly write: (text: string) => unknown;
	/** Enters the alternate screen again, hides the cursor and draws everything. */
	readonly redraw: () => unknown;
};

/** Drawing everything at each of a hundred sizes on the way to the last one would only flicker. */
const SIZE_SETTLED_MS = 100;

/**
 * Listens for the return from a stop (SIGCONT) and for new sizes (SIGWINCH), for as long as the
 * program lives; gives back what to do when the terminal is found changed by other signs.
 */
export function redrawOnContinue(parts: ContinueParts): () => void {
	const { process, clock, retake, write, redraw } = parts;
	let cancel = (): void => {};

	function takeBack(): void {
		retake();
		write(ENTER_MODES);
		redraw();
	}

	process.on('SIGCONT', takeBack);
	process.on('SIGWINCH', () => {
		cancel();
		cancel = clock.after(SIZE_SETTLED_MS, takeBack);
	});
	return takeBack;
}
