// The last thing written to the terminal. Apart from the strings because it must be waited for:
// with writes that do not block, leaving at once would lose it.

import { LEAVE_MODES, RESET } from './terminal-modes.ts';

/** What of standard output is needed. */
export type ResetStream = {
	readonly write: (text: string, done: (error?: Error | null) => void) => unknown;
};

/**
 * Gives back the shutdown's reset step: settled once the terminal has the reset, or can have
 * nothing any more. A stalled terminal never has it; the shutdown's deadline ends the wait.
 */
export function resetTerminal(stdout: ResetStream): (isUnmounted: boolean) => Promise<void> {
	return (isUnmounted) =>
		new Promise((resolve) => {
			stdout.write(isUnmounted ? LEAVE_MODES : RESET, () => resolve());
		});
}
