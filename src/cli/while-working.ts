// Says on a terminal that work goes on, once it has taken a second. Planning keeps the thread of the
// program busy, so that another one has to say it.

import { createRequire } from 'node:module';
import type * as tty from 'node:tty';
import type * as threads from 'node:worker_threads';
import { fs } from '../disk/node-fs.ts';

const ERRORS = 2;
const AFTER_MS = 1000;
/** More than the other thread ever needs to take its words back. */
const LEAVE_MS = 500;

const WORKING = 0;
const DONE = 1;
const GONE = 2;

/** Once a second what it is, and for how long; gone from the line when the work is done. */
const SIGN = `
	const { writeSync } = require('node:fs');
	const { workerData: { state, to, words, afterMs } } = require('node:worker_threads');
	let seconds = 0;
	while (Atomics.wait(state, 0, ${WORKING}, seconds === 0 ? afterMs : 1000) === 'timed-out') {
		seconds += 1;
		writeSync(to, '\\r' + words + ' ' + seconds + ' s');
	}
	if (seconds > 0) writeSync(to, '\\r\\x1b[K');
	Atomics.store(state, 0, ${GONE});
	Atomics.notify(state, 0);
`;

// Where there is no terminal nothing of this is needed, and loading it takes longer than reading the command line.
const load = (name: string): unknown => createRequire(import.meta.url)(name);

export type Shown = {
	/** The terminal's file descriptor; null where there is none. */
	readonly to: number | null;
	readonly afterMs?: number;
};

/**
 * What the work gives back. Where it takes longer than a second, these words stand on the terminal meanwhile.
 *
 * @example
 * whileWorking('planning', () => 7, { to: null }) // => 7
 */
export function whileWorking<T>(
	words: string,
	work: () => T,
	{ to, afterMs = AFTER_MS }: Shown = { to: terminalOfErrors() },
): T {
	if (to === null) return work();
	const { Worker } = load('node:worker_threads') as typeof threads;
	const state = new Int32Array(new SharedArrayBuffer(Int32Array.BYTES_PER_ELEMENT));
	const sign = new Worker(SIGN, { eval: true, workerData: { state, to, words, afterMs } });
	sign.unref();
	const began = performance.now();
	try {
		return work();
	} finally {
		Atomics.store(state, 0, DONE);
		Atomics.notify(state, 0);
		// What comes next on the terminal waits for the line to be empty again.
		if (performance.now() - began > afterMs) Atomics.wait(state, 0, DONE, LEAVE_MS);
	}
}

function terminalOfErrors(): number | null {
	try {
		if (!fs.fstatSync(ERRORS).isCharacterDevice()) return null;
	} catch {
		// Closed by whoever started the program.
		return null;
	}
	const { isatty } = load('node:tty') as typeof tty;
	return isatty(ERRORS) ? ERRORS : null;
}
