// Bundles src into dist: a small entry that runs on any Node and checks its version, then split files,
// because a command then reads only what it needs. Runs on `npm ci`, before tests and before packing.

import { chmod, copyFile, readdir, readFile, rm } from 'node:fs/promises';
import { builtinModules } from 'node:module';
import { basename, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { build } from 'esbuild';

const root = fileURLToPath(new URL('..', import.meta.url));
const cli = join(root, 'src/cli');
const dist = join(root, 'dist');

// A thread needs a file of its own, named for it, beside the others.
const workers = (await readdir(cli)).filter((name) => name.endsWith('-worker.ts'));

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

// What is required, by us or by bundled CommonJS packages, are only Node's own modules.
const banner = {
	js: 'import{createRequire as createRequireHere}from"node:module";const require=createRequireHere(import.meta.url);',
};

/** The entry stands alone, so that a Node too old for the rest can still read it. */
const mainStandsBeside = {
	name: 'main-stands-beside',
	setup({ onResolve }) {
		onResolve({ filter: /\/main\.ts$/ }, () => ({ path: './main.js', external: true }));
	},
};

const entry = await build({
	absWorkingDir: root,
	entryPoints: { rackside: join(cli, 'entry.ts') },
	outdir: dist,
	bundle: true,
	platform: 'node',
	format: 'esm',
	target: 'node18',
	plugins: [mainStandsBeside, requireBuiltIn],
	banner,
	metafile: true,
	logLevel: 'warning',
});

const rest = await build({
	absWorkingDir: root,
	entryPoints: {
		main: join(cli, 'main.ts'),
		...Object.fromEntries(workers.map((name) => [basename(name, '.ts'), join(cli, name)])),
	},
	outdir: dist,
	bundle: true,
	splitting: true,
	platform: 'node',
	format: 'esm',
	target: 'node22',
	plugins: [lateWidths, wholeRows, requireBuiltIn],
	jsx: 'automatic',
	// Yoga's loader looks at fetch, which makes Node load its HTTP client at start.
	define: { 'process.env.NODE_ENV': '"production"', fetch: 'undefined' },
	alias: {
		'react-devtools-core': join(root, '.ci/no-devtools.mjs'),
		// The same code as modules, so that what is not used stays out; for Node the package gives CommonJS.
		yaml: join(root, 'node_modules/yaml/browser/dist/index.js'),
	},
	banner,
	metafile: true,
	logLevel: 'warning',
});

await copyFile(join(cli, 'launch.sh'), join(dist, 'launch.sh'));
await chmod(join(dist, 'launch.sh'), 0o755);

// Files of earlier builds go last, so that dist is whole at every moment.
const made = new Set([
	'launch.sh',
	...Object.keys({ ...entry.metafile.outputs, ...rest.metafile.outputs }).map((path) =>
		basename(path),
	),
]);
for (const name of await readdir(dist)) {
	if (!made.has(name)) await rm(join(dist, name), { recursive: true });
}
