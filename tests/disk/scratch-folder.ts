// A folder on the real disk that one test has to itself.

import { execFileSync } from 'node:child_process';
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
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
