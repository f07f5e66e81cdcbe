// Bundles src into dist: a small entry that runs on any Node and checks its version, the program as two
// scripts, of which it loads one, and as modules beside them what few starts need or what has to wait.
// Runs on `npm ci`, before tests and before packing.

import { createHash } from 'node:crypto';
import { chmod, copyFile, readdir, readFile, rm, writeFile } from 'node:fs/promises';
import { basename, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { build } from 'esbuild';
import { DESK_COMMANDS } from '../src/cli/desk-commands.ts';
import { lateBuiltIn, requireBuiltIn } from './built-ins.mjs';
import { keepCode } from './keep-code.mjs';
import { lateWidths } from './library-changes.mjs';

const root = fileURLToPath(new URL('..', import.meta.url));
const cli = join(root, 'src/cli');
const dist = join(root, 'dist');

// What is required, by us or by bundled CommonJS packages, are only Node's own modules.
const banner = {
	js: 'import{createRequire as createRequireHere}from"node:module";const require=createRequireHere(import.meta.url);',
};

const shared = {
	absWorkingDir: root,
	outdir: dist,
	bundle: true,
	platform: 'node',
	target: 'node22',
	jsx: 'automatic',
	metafile: true,
	logLevel: 'warning',
};

// Yoga's loader looks at fetch, which makes Node load its HTTP client at start.
const define = { 'process.env.NODE_ENV': '"production"', fetch: 'undefined' };

// The same code as modules, so that what is not used stays out; for Node the package gives CommonJS.
const alias = { yaml: join(root, 'node_modules/yaml/browser/dist/index.js') };

// Modules that the program imports at run time, by what it calls them.
const modules = {
	'../ui/start-ui.tsx': join(root, 'src/ui/start-ui.tsx'),
	'../showfile/read-show.ts': join(root, 'src/showfile/read-show.ts'),
	conf: 'conf',
};
const fileOf = (name) => `${basename(name).replace(/\.tsx?$/, '')}.js`;

/** The named of those modules stay beside the script. */
const besideScript = (...names) => ({
	name: 'beside-script',
	setup({ onResolve }) {
		onResolve({ filter: /./ }, ({ path, kind }) =>
			kind === 'dynamic-import' && names.includes(path)
				? { path: `./${fileOf(path)}`, external: true }
				: undefined,
		);
	},
});

/**
 * Without what is loaded only when it is asked for, all modules of a script can be put together
 * beforehand: so the commands of the desk are imported at once there, and all others left out.
 */
const deskOnly = {
	name: 'desk-only',
	setup({ onLoad, onResolve }) {
		onLoad({ filter: /cli[\\/]command-list\.ts$/ }, async ({ path }) => {
			const imports = [];
			const source = await readFile(path, 'utf8');
			const contents = source.replace(
				/\(await import\('(\.\/commands\/(\w+)\.ts)'\)\)\.(\w+)/g,
				(late, file, command, name) => {
					if (!DESK_COMMANDS.includes(command)) return late;
					imports.push(`import { ${name} } from '${file}';`);
					return name;
				},
			);
			if (imports.length !== DESK_COMMANDS.length)
				throw new Error(`${path} has changed: look at deskOnly again`);
			return { contents: `${imports.join('\n')}\n${contents}`, loader: 'ts' };
		});
		onResolve({ filter: /^\.\/commands\// }, ({ path, kind }) =>
			kind === 'dynamic-import' ? { path, external: true } : undefined,
		);
	},
};

const beside = await build({
	...shared,
	entryPoints: Object.fromEntries(
		Object.entries(modules).map(([name, path]) => [basename(fileOf(name), '.js'), path]),
	),
	splitting: true,
	format: 'esm',
	plugins: [lateWidths, requireBuiltIn],
	define,
	alias: { ...alias, 'react-devtools-core': join(root, '.ci/no-devtools.mjs') },
	banner,
});

/** Makes a script of `main`; gives back the name of its file. */
async function buildScript(name, plugins) {
	const {
		outputFiles: [bundle],
	} = await build({
		...shared,
		entryPoints: { [name]: join(cli, 'main.ts') },
		format: 'cjs',
		plugins: [lateWidths, lateBuiltIn, ...plugins],
		define: { ...define, 'import.meta.url': 'programEntry.url' },
		alias,
		banner: { js: '(function (require, module, programEntry) {' },
		footer: { js: '})' },
		legalComments: 'none',
		write: false,
	});
	const script = bundle.text
		// A script cannot import: the entry does it.
		.replaceAll('import("./', 'programEntry.load("./')
		// It is read as Latin-1, in which a file is a text already.
		.replace(/[^\0-\x7f]/g, (unit) => `\\u${unit.charCodeAt(0).toString(16).padStart(4, '0')}`);
	// A name for what is in it, since compiled code is kept for the script of that name.
	const sum = createHash('sha256').update(script).digest('hex').slice(0, 12);
	const file = `${name}-${sum}.cjs`;
	await writeFile(join(dist, file), script);
	return file;
}

const scripts = {
	whole: await buildScript('whole', [besideScript('../ui/start-ui.tsx', 'conf')]),
	desk: await buildScript('desk', [deskOnly, besideScript(...Object.keys(modules))]),
};

/** The entry stands alone, so that a Node too old for the rest can still read it. */
await build({
	...shared,
	entryPoints: { rackside: join(cli, 'entry.ts') },
	format: 'esm',
	target: 'node18',
	plugins: [lateBuiltIn, requireBuiltIn],
	define: { SCRIPTS: JSON.stringify(scripts) },
	banner,
});

await copyFile(join(cli, 'launch.sh'), join(dist, 'launch.sh'));
await chmod(join(dist, 'launch.sh'), 0o755);

await keepCode(dist, join(root, 'shows/club.yaml'));

// Files of earlier builds go last, so that dist is whole at every moment.
const made = new Set([
	'launch.sh',
	'rackside.js',
	'code',
	...Object.values(scripts),
	...Object.keys(beside.metafile.outputs).map((path) => basename(path)),
]);
for (const name of await readdir(dist)) {
	if (!made.has(name)) await rm(join(dist, name), { recursive: true });
}
