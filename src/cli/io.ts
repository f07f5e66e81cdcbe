// What a command may touch of the world around it, so that a test can run one without a process.

import process from 'node:process';

export type Io = {
	/** To standard output, as it is. */
	readonly write: (text: string) => void;
	/** To standard error, as it is. */
	readonly complain: (text: string) => void;
	readonly env: Readonly<Record<string, string | undefined>>;
	/** Where relative paths begin and exports go. */
	readonly cwd: string;
	readonly isInputTerminal: boolean;
	readonly isOutputTerminal: boolean;
	/** Milliseconds since 1970 by the machine's clock. */
	readonly wallMs: () => number;
};

/** The process's own. */
export function processIo(): Io {
	return {
		write: (text) => process.stdout.write(text),
		complain: (text) => process.stderr.write(text),
		env: process.env,
		cwd: process.cwd(),
		// Opening the input takes longer than the rest of a small command, and few ask for it.
		get isInputTerminal() {
			return process.stdin.isTTY === true;
		},
		isOutputTerminal: process.stdout.isTTY === true,
		wallMs: () => Date.now(),
	};
}
