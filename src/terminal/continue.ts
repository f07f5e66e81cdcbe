// The return from a stop: another program may have had the terminal and left it in any state.

import type { Emitter } from './end-on-signals.ts';
import { ENTER_MODES } from './terminal-modes.ts';

/** What is done on the return from a stop, in this order after raw mode. */
export type ContinueParts = {
	readonly process: Emitter;
	/** Takes raw mode anew: `InputSource.retake`. */
	readonly retake: () => void;
	readonly write: (text: string) => unknown;
	/** Enters the alternate screen again, hides the cursor and draws everything. */
	readonly redraw: () => unknown;
};

/** Listens for the return from a stop (SIGCONT), for as long as the program lives. */
export function redrawOnContinue({ process, retake, write, redraw }: ContinueParts): void {
	process.on('SIGCONT', () => {
		retake();
		write(ENTER_MODES);
		redraw();
	});
}
