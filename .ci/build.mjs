// Bundles src into dist: a small entry that runs on any Node and checks its version, then split files,
// because a command then reads only what it needs. Runs on `npm ci`, before tests and before packing.

import { chmod, copyFile, readdir, rm } from 'node:fs/promises';
import { basename, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { build } from 'esbuild';

const root = fileURLToPath(new URL('..', import.meta.url));
const cli = join(root, 'src/cli');
const dist = join(root, 'dist');

// A thread needs a file of its own, named for it, beside the others.
const workers = (await readdir(cli)).filter((name) => name.endsWith('-worker.ts'));

const { metafile } = await build({
	absWorkingDir: root,
	entryPoints: {
		rackside: join(cli, 'entry.ts'),
		...Object.fromEntries(workers.map((name) => [basename(name, '.ts'), join(cli, name)])),
	},
	outdir: dist,
	bundle: true,
	splitting: true,
	platform: 'node',
	format: 'esm',
	target: 'node22',
	jsx: 'automatic',
	// Yoga's loader looks at fetch, which makes Node load its HTTP client at start.
	define: { 'process.env.NODE_ENV': '"production"', fetch: 'undefined' },
	alias: { 'react-devtools-core': join(root, '.ci/no-devtools.mjs') },
	// Bundled CommonJS packages still call require for Node's own modules.
	banner: {
		js: 'import{createRequire as createRequireHere}from"node:module";const require=createRequireHere(import.meta.url);',
	},
	metafile: true,
	logLevel: 'warning',
});

await copyFile(join(cli, 'launch.sh'), join(dist, 'launch.sh'));
await chmod(join(dist, 'launch.sh'), 0o755);

// Files of earlier builds go last, so that dist is whole at every moment.
const made = new Set(['launch.sh', ...Object.keys(metafile.outputs).map((path) => basename(path))]);
for (const name of await readdir(dist)) {
	if (!made.has(name)) await rm(join(dist, name), { recursive: true });
}
