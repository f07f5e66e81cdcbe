// Bundles src into dist: a small entry that runs on any Node and checks its version, the program as two
// scripts, of which it loads one, and as modules beside them what few starts need or what has to wait.
// Runs on `npm ci`, before tests and before packing.

import { execFile } from 'node:child_process';
import { createHash } from 'node:crypto';
import {
	chmod,
	copyFile,
	mkdir,
	mkdtemp,
	readdir,
	readFile,
	rename,
	rm,
	writeFile,
} from 'node:fs/promises';
import { builtinModules } from 'node:module';
import { tmpdir } from 'node:os';
import { basename, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { build } from 'esbuild';
import { DESK_COMMANDS } from '../src/cli/desk-commands.ts';

const root = fileURLToPath(new URL('..', import.meta.url));
const cli = join(root, 'src/cli');
const dist = join(root, 'dist');

/**
 * When it is loaded, the width library makes a pattern of all emoji and a splitter of graphemes, each of
 * which costs tens of milliseconds at every start. Here they are made when the first text comes that
 * needs them: every emoji has one of these properties.
 */
const lateWidths = {
	name: 'late-widths',
	setup({ onLoad }) {
		onLoad({ filter: /string-width[\\/]index\.js$/ }, async ({ path }) => {
			const source = await readFile(path, 'utf8');
			const eager = 'const rgiEmojiRegex = /^\\p{RGI_Emoji}$/v;';
			const eagerSplitter = 'const segmenter = new Intl.Segmenter();';
			if (!source.includes(eager) || !source.includes(eagerSplitter)) {
				throw new Error(`${path} has changed: look at lateWidths again`);
			}
			const late = `
				const mayBeEmoji = /[\\p{Extended_Pictographic}\\p{Regional_Indicator}\\p{Emoji_Modifier}\\u20E3]/u;
				let allEmoji;
				const rgiEmojiRegex = {
					test: (text) => mayBeEmoji.test(text) && (allEmoji ??= new RegExp('^\\\\p{RGI_Emoji}$', 'v')).test(text),
				};`;
			const lateSplitter = `
				let splitter;
				const segmenter = { segment: (text) => (splitter ??= new Intl.Segmenter()).segment(text) };`;
			return {
				contents: source.replace(eager, () => late).replace(eagerSplitter, () => lateSplitter),
				loader: 'js',
			};
		});
	},
};

/**
 * The renderer takes every row of text apart into cells for each frame and puts them together again. A
 * row that is written once, from its first cell on, comes out as it went in: where all are so, no cell
 * is needed.
 */
const wholeRows = {
	name: 'whole-rows',
	setup({ onLoad }) {
		onLoad({ filter: /ink[\\/]build[\\/]output\.js$/ }, async ({ path }) => {
			const source = await readFile(path, 'utf8');
			const begin = '    get() {\n';
			if (source.split(begin).length !== 2)
				throw new Error(`${path} has changed: look at wholeRows again`);
			const whole = `
				function wholeRows({ operations, height }) {
					const rows = Array(height).fill('');
					for (const { type, x, y, text, transformers } of operations) {
						if (type !== 'write' || x !== 0 || rows[y] !== '' || text.includes('\\n')) return null;
						rows[y] = transformers.reduce((row, transform) => transform(row, 0), text).trimEnd();
					}
					return { output: rows.join('\\n'), height };
				}`;
			return {
				contents:
					source.replace(
						begin,
						() => `${begin}const rows = wholeRows(this); if (rows !== null) return rows;\n`,
					) + whole,
				loader: 'js',
			};
		});
	},
};

const builtIn = new Set([...builtinModules, ...builtinModules.map((name) => `node:${name}`)]);

/**
 * An import of Node's own modules reads every property that they have, and so opens the input and loads
 * streams and decoders that nobody asked for, two milliseconds at every start. A require reads none.
 */
const requireBuiltIn = {
	name: 'require-built-in',
	setup({ onResolve, onLoad }) {
		onResolve({ filter: /^[\w:/]+$/ }, ({ path, kind }) =>
			kind === 'import-statement' && builtIn.has(path)
				? { path, namespace: 'built-in' }
				: undefined,
		);
		onLoad({ filter: /.*/, namespace: 'built-in' }, ({ path }) => ({
			contents: `module.exports = require(${JSON.stringify(path)});`,
		}));
	},
};

/** What a few commands call once, and what others need not wait for: each takes milliseconds to be loaded. */
const LATE = ['crypto', 'net', 'os', 'readline/promises', 'v8', 'zlib'];

/** These are loaded when one of their functions is called; in the program nothing but functions is asked of them. */
const lateBuiltIn = {
	name: 'late-built-in',
	setup({ onResolve, onLoad }) {
		const filter = new RegExp(`^node:(${LATE.join('|')})$`);
		onResolve({ filter }, ({ path, kind }) =>
			kind === 'import-statement' ? { path, namespace: 'late' } : undefined,
		);
		onLoad({ filter: /.*/, namespace: 'late' }, async ({ path }) => {
			const functions = Object.entries(await import(path)).filter(
				([name, value]) => name !== 'default' && typeof value === 'function',
			);
			const late = ([name]) =>
				`export const ${name} = (...given) => require(${JSON.stringify(path)}).${name}(...given);`;
			return { contents: functions.map(late).join('\n') };
		});
		// An import of it would go through all that it has.
		onResolve({ filter: /^node:process$/ }, () => ({ path: 'process', namespace: 'global' }));
		onLoad({ filter: /.*/, namespace: 'global' }, ({ path }) => ({
			contents: `export default ${path};`,
		}));
	},
};

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
	plugins: [lateWidths, wholeRows, requireBuiltIn],
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

await keepCode(join(dist, 'code'));

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

/** Has each command run once on the example, and puts the code that it kept into the folder. */
async function keepCode(folder) {
	const show = join(root, 'shows/club.yaml');
	const commands = [
		['check', show],
		['plan', show],
		['tuning', show, 'A1', '--to', 'drop D'],
		['strings', show, 'A1'],
		['setup', show, 'A1'],
		['nights'],
		['settings'],
		['--help'],
		[],
	];
	const home = await mkdtemp(join(tmpdir(), 'rackside-build-'));
	const env = { PATH: process.env.PATH, XDG_CACHE_HOME: home, RACKSIDE_DATA: join(home, 'data') };
	const entry = join(dist, 'rackside.js');
	const run = (args) =>
		new Promise((done) => execFile(process.execPath, [entry, ...args], { env }, done));
	await rm(folder, { recursive: true, force: true });
	await Promise.all(commands.map(run));
	await mkdir(folder);
	const kept = join(home, 'rackside/code');
	for (const name of await readdir(kept)) {
		await rename(join(kept, name), join(folder, name));
		await chmod(join(folder, name), 0o644);
	}
	await rm(home, { recursive: true });
}
