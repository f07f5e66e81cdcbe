// Where the trace of a bug goes: into a file, since the terminal that would show it may be a live
// screen, and since it can then be passed on.

import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { cleanText } from '../base/clean-text.ts';
import { fs } from '../disk/node-fs.ts';
import { traceIn, traceText } from '../words/program.ts';
import type { Io } from './io.ts';

/** Writes the trace into a new file of the system's folder for such; gives back where, as words for a sentence. */
export function writeTrace(error: unknown, io: Io): string {
	const text = error instanceof Error ? (error.stack ?? error.message) : String(error);
	const path = join(tmpdir(), `rackside-trace-${process.pid}-${io.wallMs()}.txt`);
	try {
		const lines = `${new Date(io.wallMs()).toISOString()}\n${text}\n`;
		fs.writeFileSync(path, lines, { flag: 'wx', mode: 0o600 });
		return traceIn(cleanText(path));
	} catch {
		// With no place for a file the trace is better on the terminal than nowhere.
		return traceText(cleanText(text));
	}
}
