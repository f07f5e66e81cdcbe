// Debian's browser, driven for the pages that the program writes. Where none is found the tests that need it are skipped,
// and say so.

import { existsSync, mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { type BrowserContext, chromium } from 'playwright-core';

const BROWSER = '/usr/bin/chromium';

const NEEDED = [BROWSER, '/usr/bin/pdftotext', '/usr/bin/pdfinfo'];

/** Whether tests in a browser can be run here; where not, it is said once. */
export const HAS_BROWSER = NEEDED.every((path) => existsSync(path));
if (!HAS_BROWSER) {
	process.stdout.write('Not tested in a browser: apt-get install chromium poppler-utils\n');
}

export type Browsing = {
	readonly context: BrowserContext;
	/** A folder of the test's own. */
	readonly folder: string;
	readonly close: () => Promise<void>;
};

/** A browser with a profile of its own, which asks nobody for anything by itself. */
export async function openBrowser(): Promise<Browsing> {
	const folder = mkdtempSync(join(tmpdir(), 'rackside-pages-'));
	const context = await chromium.launchPersistentContext(join(folder, 'profile'), {
		executablePath: BROWSER,
		// In a container of the root user its own sandbox cannot be made.
		chromiumSandbox: process.getuid?.() !== 0,
		args: [
			'--headless',
			'--disable-gpu',
			'--disable-quic',
			'--no-first-run',
			'--disable-background-networking',
			'--disable-component-update',
			'--disable-sync',
		],
	});
	const close = async (): Promise<void> => {
		await context.close();
		rmSync(folder, { recursive: true, force: true });
	};
	return { context, folder, close };
}
