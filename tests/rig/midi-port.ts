// Ports as pedals hang on them, and who reads at their other end: a FIFO, and a terminal in raw mode.

import { execFileSync } from 'node:child_process';
import { closeSync, constants, openSync, readSync, symlinkSync, unlinkSync } from 'node:fs';
import { spawn } from '@lydell/node-pty';
import { pause } from '../terminal/pty-screen.ts';

export type Reader = {
	/** All that has come since it was asked last. */
	readonly read: () => number[];
	readonly leave: () => void;
};

export function makeFifo(path: string): void {
	execFileSync('mkfifo', [path]);
}

/** Somebody who reads a FIFO from now on, without waiting. */
export function fifoReader(path: string): Reader {
	const file = openSync(path, constants.O_RDONLY | constants.O_NONBLOCK);
	const part = Buffer.alloc(65_536);
	return {
		read: () => {
			const bytes: number[] = [];
			for (;;) {
				let count = 0;
				try {
					count = readSync(file, part);
				} catch (error) {
					if ((error as NodeJS.ErrnoException).code !== 'EAGAIN') throw error;
				}
				if (count === 0) return bytes;
				bytes.push(...part.subarray(0, count));
			}
		},
		leave: () => closeSync(file),
	};
}

/** A terminal that changes no byte, under a name that leads to it, as a system names a device. */
export async function rawTerminal(path: string): Promise<Reader> {
	const pty = spawn('sh', ['-c', 'stty raw -echo; tty; exec sleep 600'], { encoding: null });
	let got: number[] = [];
	pty.onData((data) => got.push(...Buffer.from(data)));
	while (!got.includes(0x0a)) await pause(5);
	const text = Buffer.from(got).toString('latin1');
	symlinkSync(text.trim(), path);
	got = [];
	return {
		read: () => {
			const bytes = got;
			got = [];
			return bytes;
		},
		leave: () => {
			unlinkSync(path);
			pty.kill('SIGKILL');
		},
	};
}
