// What an owner of an old Node sees: one sentence that says what to do, and no trace.

import { spawnSync } from 'node:child_process';
import {
	chmodSync,
	mkdirSync,
	mkdtempSync,
	readdirSync,
	readFileSync,
	rmSync,
	statSync,
	symlinkSync,
	writeFileSync,
} from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { transformSync } from 'esbuild';
import { describe, expect, test } from 'vitest';
import { COMMANDS } from '../../src/cli/command-list.ts';
import { nodeVersionComplaint } from '../../src/cli/node-version.ts';
import { runCommand } from './run-command.ts';

const bundle = fileURLToPath(new URL('../../dist/rackside.js', import.meta.url));

function run(node: string, args: readonly string[] = []) {
	return spawnSync(node, [...args, bundle, '--help'], { encoding: 'utf8' });
}

/** Where distributions and installers put Node; one of these may be old. */
const oldNode = ['/usr/bin/node', '/usr/local/bin/node', '/opt/homebrew/bin/node'].find((node) => {
	const { stdout } = spawnSync(node, ['--version'], { encoding: 'utf8' });
	return Number(stdout?.match(/^v(\d+)\./)?.[1] ?? Number.POSITIVE_INFINITY) < 22;
});

describe('the version check', () => {
	test.each(['22.2.0', '22.11.0', '23.1.0', '24.21.0', 'v24.0.0', '100.0.0'])('%s will do', (v) => {
		expect(nodeVersionComplaint(v)).toBeUndefined();
	});

	test('is what package.json asks for', () => {
		const { engines } = JSON.parse(
			readFileSync(new URL('../../package.json', import.meta.url), 'utf8'),
		);
		const [, least = ''] = /^>=(\d+\.\d+)\.0$/.exec(engines.node) ?? [];
		expect(nodeVersionComplaint(`${least}.0`)).toBeUndefined();
		expect(nodeVersionComplaint('0.0.0')).toContain(`Node ${least} or newer`);
	});

	test.each(['22.1.0', 'v22.0.0', '21.7.3', '20.20.2', 'v18.0.0', '9.0.0', '2.2.0', ''])(
		'%j will not',
		(version) => {
			expect(nodeVersionComplaint(version)).toMatch(/needs Node 22\.2 or newer.*Install/);
		},
	);
});

describe('the built program', () => {
	// Needs the bundle: `node .ci/build.mjs` makes it.
	const isOldNode = `Object.defineProperty(process,'versions',{value:{node:'20.1.0'}})`;

	function expectOneSentence(found: ReturnType<typeof run>, version: string) {
		expect(found.stdout).toBe('');
		expect(found.stderr.split('\n')).toEqual([expect.stringContaining(version), '']);
		expect(found.status).toBe(2);
	}

	test('says what it needs where Node calls itself old', () => {
		const found = run(process.execPath, ['--import', `data:text/javascript,${isOldNode}`]);
		expectOneSentence(found, '20.1.0');
	});

	// Without an old Node on the machine there is nothing to start; the tests beside it still hold.
	test.skipIf(oldNode === undefined)('says so under a Node that is old', () => {
		const version = spawnSync(oldNode ?? '', ['--version'], { encoding: 'utf8' }).stdout.trim();
		expectOneSentence(run(oldNode ?? ''), version.slice(1));
	});

	test('has an entry that Node 18 can read, and that loads the rest only after the check', () => {
		const read: string[] = [];
		const toRead = ['./rackside.js'];
		for (const name of toRead) {
			const text = readFileSync(new URL(name, new URL('.', `file://${bundle}`)), 'utf8');
			const plain = transformSync(text, { target: 'esnext' }).code;
			expect(transformSync(text, { target: 'node18' }).code).toBe(plain);
			read.push(plain);
			const upFront = [...plain.matchAll(/^(?:import|export)\b.*?["']([^"']+)["'];$/gm)];
			for (const [, other = ''] of upFront) {
				if (!other.startsWith('.')) expect(['node:fs', 'node:module']).toContain(other);
				else if (!toRead.includes(other)) toRead.push(other);
			}
		}
		// The helpers of the bundler, and nothing else of the program.
		expect(read.join('').length).toBeLessThan(5000);
	});

	test.each(Object.keys(COMMANDS))('has %s', (name) => {
		// The folder's name is that of another command.
		const args = [bundle, '--data', 'run', name, '--help'];
		const { status, stdout } = spawnSync(process.execPath, args, { encoding: 'utf8' });
		expect(stdout).toContain(`rackside ${COMMANDS[name]?.usage}`);
		expect(status).toBe(0);
	});

	// A pipe holds 64 KB on Linux (pipe(7)); the schema has more than twice as much.
	test('ends only when all is written, however late it is read', async () => {
		const { out } = await runCommand({ cwd: tmpdir(), data: tmpdir() }, 'schema');
		expect(out.length).toBeGreaterThan(2 * 65_536);
		const late = '"$0" "$1" schema | { sleep 0.5; cat; }';
		const found = spawnSync('sh', ['-c', late, process.execPath, bundle], { encoding: 'utf8' });
		expect(found.stdout).toBe(out);
	});

	test.each(['plan', 'check'])('%s counts wide characters as it does unbundled', async (name) => {
		const folder = mkdtempSync(join(tmpdir(), 'rackside-wide-'));
		try {
			const shows = fileURLToPath(new URL('../../shows/', import.meta.url));
			for (const file of readdirSync(shows)) {
				const text = readFileSync(join(shows, file), 'utf8');
				writeFileSync(join(folder, file), text.replaceAll('Lantern', '夜の部 👩‍👩‍👧'));
			}
			const args = [bundle, '--data', folder, name, 'club.yaml'];
			const { stdout } = spawnSync(process.execPath, args, { cwd: folder, encoding: 'utf8' });
			const unbundled = await runCommand({ cwd: folder, data: folder }, name, 'club.yaml');
			expect(stdout).toContain('夜の部');
			expect(stdout).toBe(unbundled.out);
		} finally {
			rmSync(folder, { recursive: true });
		}
	});

	test.each(['/proc', '/dev/null', '/nowhere', 'relative', ''])(
		'starts with %j as home',
		(home) => {
			const env = { PATH: process.env.PATH, HOME: home, RACKSIDE_DATA: tmpdir() };
			const options = { encoding: 'utf8', env, timeout: 20_000 } as const;
			expect(spawnSync(process.execPath, [bundle, '--help'], options).status).toBe(0);
		},
	);

	test('keeps no compiled code where others may write, or behind a link', () => {
		const home = mkdtempSync(join(tmpdir(), 'rackside-home-'));
		try {
			const options = { env: { ...process.env, HOME: home, XDG_CACHE_HOME: '' } };
			const own = join(home, '.cache/rackside');
			mkdirSync(own, { recursive: true });
			mkdirSync(join(own, 'code'));
			chmodSync(join(own, 'code'), 0o777);
			expect(spawnSync(process.execPath, [bundle, 'schema'], options).status).toBe(0);
			expect(readdirSync(join(own, 'code'))).toEqual([]);
			rmSync(join(own, 'code'), { recursive: true });
			mkdirSync(join(home, 'other'), { mode: 0o700 });
			symlinkSync(join(home, 'other'), join(own, 'code'));
			expect(spawnSync(process.execPath, [bundle, 'schema'], options).status).toBe(0);
			expect(readdirSync(join(home, 'other'))).toEqual([]);
		} finally {
			rmSync(home, { recursive: true });
		}
	});

	test('keeps compiled code in the home, and for nobody else to write', () => {
		const home = mkdtempSync(join(tmpdir(), 'rackside-home-'));
		try {
			const options = { env: { ...process.env, HOME: home, XDG_CACHE_HOME: '' } };
			const first = spawnSync(process.execPath, [bundle, 'schema'], options).stdout;
			const folder = join(home, '.cache/rackside/code');
			expect(statSync(folder).mode & 0o077).toBe(0);
			const kept = readdirSync(folder, { recursive: true, withFileTypes: true })
				.filter((entry) => entry.isFile())
				.map((entry) => join(entry.parentPath, entry.name));
			expect(kept.length).toBeGreaterThan(0);
			for (const damaged of [
				(whole: Buffer) => whole,
				(whole: Buffer) => whole.subarray(0, whole.length / 3),
				(whole: Buffer) => whole.fill(0, whole.length / 2),
			]) {
				for (const path of kept) writeFileSync(path, damaged(readFileSync(path)));
				const again = spawnSync(process.execPath, [bundle, 'schema'], options);
				expect(again.stderr.toString()).toBe('');
				expect(again.stdout).toEqual(first);
			}
		} finally {
			rmSync(home, { recursive: true });
		}
	});
});
