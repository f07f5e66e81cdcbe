// How the tests run: two workers suit the two cores of a small laptop or build machine.

import { fileURLToPath } from 'node:url';
import { defineConfig } from 'vitest/config';

export default defineConfig({
	root: fileURLToPath(new URL('..', import.meta.url)),
	test: {
		// Ink takes the console apart, and Vitest's own stand-in for it cannot be.
		disableConsoleIntercept: true,
		include: ['tests/**/*.test.{ts,tsx}'],
		maxWorkers: 2,
		// Real terminals and whole processes are slow to start on a busy machine.
		testTimeout: 30_000,
		hookTimeout: 60_000,
		// On a build machine others may hold the processor for seconds while a real terminal waits.
		retry: process.env.CI ? 1 : 0,
	},
});
