// How the tests run: two workers suit the two cores of a small laptop or build machine.

import { tmpdir } from 'node:os';
import { fileURLToPath } from 'node:url';
import { defineConfig } from 'vitest/config';
import { lastingTemporary } from '../tests/lasting-temporary.ts';

export default defineConfig({
	root: fileURLToPath(new URL('..', import.meta.url)),
	test: {
		// Ink takes the console apart, and Vitest's own stand-in for it cannot be.
		disableConsoleIntercept: true,
		// Nights in a folder that a restart empties are told not to be safe, which is a matter of a few tests alone.
		env: { TMPDIR: lastingTemporary(tmpdir()) },
		include: ['tests/**/*.test.{ts,tsx}'],
		maxWorkers: 2,
		// Real terminals and whole processes are slow to start on a busy machine.
		testTimeout: 30_000,
		hookTimeout: 60_000,
		// On a build machine others may hold the processor for seconds while a real terminal waits.
		retry: process.env.CI ? 1 : 0,
	},
});
