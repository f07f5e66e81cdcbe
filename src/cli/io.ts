// What a command may touch of the world around it, so that a test can run one without a process.

import { fs } from '../disk/node-fs.ts';

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

export type ProcessIo = Io & {
	/** Whether all that was written is out of the process. */
	readonly isAllSent: () => boolean;
};

/** The process's own; `onLost` ends it when the output cannot be written, for which it is told the error's code. */
export function processIo(onLost: (code: string | undefined) => never): ProcessIo {
	// Opening input or output takes longer than the rest of a small command, and few ask for it.
	let stream: NodeJS.WriteStream | null = null;
	let complaints: NodeJS.WriteStream | null = null;
	const opened = (): NodeJS.WriteStream => {
		stream ??= process.stdout.on('error', ({ code }: NodeJS.ErrnoException) => onLost(code));
		return stream;
	};
	return {
		write: (text) => {
			const left = stream === null ? notTaken(Buffer.from(text), onLost) : text;
			if (left.length > 0) opened().write(left);
		},
		complain: (text) => {
			// Where complaints cannot be written nobody can be told, and the exit code still says what it was.
			complaints ??= process.stderr.on('error', () => {});
			complaints.write(text);
		},
		env: process.env,
		cwd: process.cwd(),
		get isInputTerminal() {
			return process.stdin.isTTY === true;
		},
		get isOutputTerminal() {
			// To know that a file or a pipe is no terminal it need not be opened.
			return fs.fstatSync(OUTPUT).isCharacterDevice() && opened().isTTY === true;
		},
		wallMs: () => Date.now(),
		// What failed has no length any more, and is yet to be told.
		isAllSent: () =>
			[stream, complaints].every(
				(one) => one === null || (one.writableLength === 0 && !one.errored),
			),
	};
}

const OUTPUT = 1;

/** Writes until the reader has to be waited for; gives back what is left then. */
function notTaken(bytes: Uint8Array, onLost: (code: string | undefined) => never): Uint8Array {
	let left = bytes;
	try {
		while (left.length > 0) left = left.subarray(fs.writeSync(OUTPUT, left));
	} catch (error) {
		const { code } = error as NodeJS.ErrnoException;
		if (code !== 'EAGAIN') onLost(code);
	}
	return left;
}
