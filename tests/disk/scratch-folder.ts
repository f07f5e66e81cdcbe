// A folder on the real disk that one test has to itself.

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
