// Runs the project's own lint configuration over planted files, in a folder of its own, so that a test
// can see the checks fail.

import { execFile } from 'node:child_process';
import { cp, mkdir, mkdtemp, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { promisify } from 'node:util';

const root = fileURLToPath(new URL('../..', import.meta.url));

/** One finding: the rule without its group, or `plugin`, and the one-based line. */
export type Finding = { readonly rule: string; readonly line: number; readonly path: string };

type Printed = {
	readonly diagnostics: readonly {
		readonly category: string;
		readonly location: { readonly path: string; readonly start: { readonly line: number } };
	}[];
};

/** What Biome finds in `files` (path from the root to lines), laid out as in the project. */
export async function lintPlanted(
	files: ReadonlyMap<string, readonly string[]>,
): Promise<readonly Finding[]> {
	const folder = await mkdtemp(join(tmpdir(), 'rackside-planted-'));
	try {
		await cp(join(root, '.biome.json'), join(folder, '.biome.json'));
		for (const name of ['chance.grit', 'inline-import.grit', 'sentences.grit'])
			await cp(join(root, '.ci', name), join(folder, '.ci', name));
		for (const [path, lines] of files) {
			await mkdir(dirname(join(folder, path)), { recursive: true });
			await writeFile(join(folder, path), `${lines.join('\n')}\n`);
		}
		const biome = join(root, 'node_modules/@biomejs/biome/bin/biome');
		const options = ['--max-diagnostics=none', '--reporter=json', '--vcs-enabled=false'];
		const args = [biome, 'lint', ...options, 'src', 'machines', 'tests'];
		// Findings make Biome end with 1; what it printed is read either way.
		const { stdout } = await promisify(execFile)(process.execPath, args, {
			cwd: folder,
			maxBuffer: 64 * 1024 * 1024,
		}).catch((error: { stdout: string }) => error);
		const printed = JSON.parse(stdout) as Printed;
		return printed.diagnostics.map(({ category, location }) => ({
			rule: category.split('/').at(-1) ?? category,
			line: location.start.line,
			path: location.path,
		}));
	} finally {
		await rm(folder, { recursive: true });
	}
}
