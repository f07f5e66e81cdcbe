// The program as one file for this machine, built when it is older than what it is built from, and a folder that
// has nothing but that file and the libraries that Node links.

import { execFileSync } from 'node:child_process';
import {
	copyFileSync,
	existsSync,
	mkdirSync,
	mkdtempSync,
	readdirSync,
	realpathSync,
	rmSync,
	statSync,
} from 'node:fs';
import { tmpdir } from 'node:os';
import { basename, dirname, join } from 'node:path';

const ROOT = join(import.meta.dirname, '../..');
const SOURCES = ['src', 'machines', 'shows', '.ci', 'package-lock.json'];
const PLATFORM = { linux: 'linux', darwin: 'macos' }[process.platform as 'linux' | 'darwin'];

/** Path of the file. */
export function singleFile(): string {
	const path = join(ROOT, `single/rackside-${PLATFORM}-${process.arch}`);
	const newest = Math.max(...SOURCES.map((name) => changedMs(join(ROOT, name))));
	if (!existsSync(path) || statSync(path).mtimeMs < newest) {
		execFileSync(process.execPath, ['.ci/single.mjs', '--here'], { cwd: ROOT, stdio: 'pipe' });
	}
	return path;
}

function changedMs(path: string): number {
	const stat = statSync(path);
	if (!stat.isDirectory()) return stat.mtimeMs;
	return Math.max(...readdirSync(path).map((name) => changedMs(join(path, name))));
}

/** Makes a folder that can be the root of a process, and is removed by `remove`. Only files are put into it. */
export function bareRoot(): { readonly root: string; readonly remove: () => void } {
	const root = mkdtempSync(join(tmpdir(), 'rackside-root-'));
	const file = singleFile();
	copyFileSync(file, join(root, 'rackside'));
	// What the system's own loader names: `libm.so.6 => /lib/x86_64-linux-gnu/libm.so.6 (0x…)`.
	for (const [library] of execFileSync('ldd', [file], { encoding: 'utf8' }).matchAll(/\/\S+/g)) {
		mkdirSync(join(root, dirname(library)), { recursive: true });
		copyFileSync(realpathSync(library), join(root, dirname(library), basename(library)));
	}
	return { root, remove: () => rmSync(root, { recursive: true, force: true }) };
}
