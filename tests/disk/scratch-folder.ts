// A folder on the real disk that one test has to itself.

import { execFileSync } from 'node:child_process';
import { mkdtempSync, renameSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import { onTestFinished } from 'vitest';

/** A new, empty folder, removed when the test is over. */
export function scratchFolder(): string {
	const folder = mkdtempSync(join(tmpdir(), 'rackside-test-'));
	onTestFinished(() => rmSync(folder, { recursive: true, force: true }));
	return folder;
}

/** Makes a pipe, at which whoever opens it waits for the other end. */
export function makePipe(path: string): void {
	execFileSync('/usr/bin/env', ['mkfifo', path]);
}

/** Makes a socket that nobody listens to; opening one gives ENXIO, as a device does that is gone (unix(7)). */
export function makeSocket(path: string): void {
	const made = "require('net').createServer().listen('made', () => process.exit())";
	// Its whole path may be too long for the name of a socket.
	execFileSync(process.execPath, ['-e', made], { cwd: dirname(path) });
	renameSync(join(dirname(path), 'made'), path);
}
