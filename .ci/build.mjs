// Bundles src into dist: an entry that any Node can read and that checks its version, and beside it the
// program in modules that are loaded when a command asks for them. Runs on `npm ci`, before tests and before
// packing.

import { execFileSync } from 'node:child_process';
import { chmod, copyFile, mkdir, readdir, readFile, rename, rm, writeFile } from 'node:fs/promises';
import { basename, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { billOfMaterials } from './bill-of-materials.mjs';
import { bundleOptions } from './bundle-options.mjs';
import { bundledLicenses } from './bundled-licenses.mjs';
import { bundledPackages } from './bundled-packages.mjs';
import { buildInFewerFiles } from './fewer-files.mjs';
import { oneByteEach } from './one-byte.mjs';

const root = fileURLToPath(new URL('..', import.meta.url));
const cli = join(root, 'src/cli');
const dist = join(root, 'dist');

const { metafile, outputFiles } = await buildInFewerFiles({
	...bundleOptions(root),
	entryPoints: { rackside: join(cli, 'entry.ts') },
	outdir: dist,
	splitting: true,
	target: 'node22.2',
	// What bundled CommonJS packages require are only Node's own modules; few files hold such a package.
	banner: {
		js: 'import{createRequire as createRequireHere}from"node:module";const require=name=>createRequireHere(import.meta.url)(name);',
	},
	metafile: true,
	write: false,
});
await mkdir(dist, { recursive: true });
for (const { path, text } of outputFiles) await writeFile(path, oneByteEach(text));

// A shell reads its script as it goes: one that runs keeps the old file, since the new one only takes its name.
const launchNew = join(dist, 'launch.sh.new');
await copyFile(join(cli, 'launch.sh'), launchNew);
await chmod(launchNew, 0o755);
await rename(launchNew, join(dist, 'launch.sh'));

const program = JSON.parse(await readFile(join(root, 'package.json'), 'utf8'));
const packages = await bundledPackages(metafile.inputs, root);
await writeFile(join(dist, 'licenses.txt'), await bundledLicenses(packages));
await writeFile(join(dist, 'bom.json'), billOfMaterials(program, packages));

const man = execFileSync(process.execPath, [join(dist, 'rackside.js'), 'completion', 'man']);
await writeFile(join(dist, 'rackside.1'), man);

// Files of earlier builds go last, so that dist is whole at every moment.
const made = new Set([
	'launch.sh',
	'rackside.1',
	'licenses.txt',
	'bom.json',
	...Object.keys(metafile.outputs).map((path) => basename(path)),
]);
for (const name of await readdir(dist)) {
	if (!made.has(name)) await rm(join(dist, name), { recursive: true });
}
