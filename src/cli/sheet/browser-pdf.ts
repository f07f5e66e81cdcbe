// A page printed to a PDF by a browser that is at hand and prints by itself: found in PATH, without a window, with
// nothing but the page's own file to read.

import { spawnSync } from 'node:child_process';
import { accessSync, constants, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { delimiter, isAbsolute, join } from 'node:path';
import { pathToFileURL } from 'node:url';

/** Names under which systems have such a browser in PATH (common practice, no source). */
const BROWSERS = ['chromium', 'chromium-browser'];

/** One that has not printed by then does not. */
const PRINT_MS = 120_000;

/** It neither asks anybody anything nor looks anything up. */
const FLAGS = [
	'--headless',
	'--disable-gpu',
	'--disable-quic',
	'--no-first-run',
	'--disable-background-networking',
	'--disable-component-update',
	'--disable-sync',
	'--disable-extensions',
	'--host-resolver-rules=MAP * ~NOTFOUND',
	'--no-pdf-header-footer',
];

/** Where the browser is; null where none is in PATH. */
export function foundBrowser(env: Readonly<Record<string, string | undefined>>): string | null {
	const folders = (env.PATH ?? '').split(delimiter).filter(isAbsolute);
	const paths = BROWSERS.flatMap((name) => folders.map((folder) => join(folder, name)));
	return paths.find(canRun) ?? null;
}

function canRun(path: string): boolean {
	try {
		accessSync(path, constants.X_OK);
		return true;
	} catch {
		return false;
	}
}

/** The page as a PDF; null where the browser did not print it. */
export function pdfOf(browser: string, html: string): Uint8Array | null {
	const folder = mkdtempSync(join(tmpdir(), 'rackside-paper-'));
	try {
		const page = join(folder, 'sheet.html');
		const pdf = join(folder, 'sheet.pdf');
		writeFileSync(page, html, { mode: 0o600 });
		// Its sandbox does not start for the administrator; the page runs nothing.
		const asRoot = process.getuid?.() === 0 ? ['--no-sandbox'] : [];
		const profile = `--user-data-dir=${join(folder, 'profile')}`;
		const words = [...FLAGS, ...asRoot, profile, `--print-to-pdf=${pdf}`, pathToFileURL(page).href];
		const { status } = spawnSync(browser, words, { stdio: 'ignore', timeout: PRINT_MS });
		return status === 0 ? readFileSync(pdf) : null;
	} catch {
		return null;
	} finally {
		rmSync(folder, { recursive: true, force: true, maxRetries: 5 });
	}
}
