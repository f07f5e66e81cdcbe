// Why the program ends, and which exit code that is, so that the way out and its callers agree.

/** Signals that end the program, with their numbers (POSIX, the `kill` utility). */
export const SIGNAL_NUMBERS = { SIGHUP: 1, SIGINT: 2, SIGQUIT: 3, SIGTERM: 15 } as const;

/** A signal that ends the program. */
export type EndingSignal = keyof typeof SIGNAL_NUMBERS;

/** Why the program ends. */
export type Ending =
	| { readonly kind: 'quit'; readonly code: number }
	| { readonly kind: 'signal'; readonly signal: EndingSignal }
	/** A bug of ours. */
	| { readonly kind: 'fault'; readonly error: unknown }
	/** The terminal is gone, or one of its three streams. */
	| { readonly kind: 'terminal-lost'; readonly stream: string; readonly error?: unknown };

/** What the program gives back when the night's data could not be kept. */
const NOT_KEPT_CODE = 3;

/** What the program gives back for a bug of ours (BSD sysexits, `EX_SOFTWARE`). */
const FAULT_CODE = 70;

/**
 * Gives back the exit code: 128 + n for a signal, and for a lost terminal what a hang-up gives; a
 * quit gives its own code, or NOT_KEPT_CODE if it was 0 or 1 and the journal could not be synced.
 */
export function exitCodeOf(ending: Ending, isKept: boolean): number {
	switch (ending.kind) {
		case 'quit':
			return ending.code <= 1 && !isKept ? NOT_KEPT_CODE : ending.code;
		case 'signal':
			return 128 + SIGNAL_NUMBERS[ending.signal];
		case 'fault':
			return FAULT_CODE;
		case 'terminal-lost':
			return 128 + SIGNAL_NUMBERS.SIGHUP;
	}
}
