// What users are given: the package as npm packs and installs it, and the bill of materials in it.
// Needs the bundle: `node .ci/build.mjs`.

import { execFileSync } from 'node:child_process';
import { readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { Ajv } from 'ajv';
import { describe, expect, test } from 'vitest';
import { scratchFolder } from '../disk/scratch-folder.ts';

const require = createRequire(import.meta.url);
const root = fileURLToPath(new URL('../..', import.meta.url));

function readJson(path: string) {
	return JSON.parse(readFileSync(path, 'utf8'));
}

/** Not our own cache, settings or registry: what npm does to somebody who has nothing but the file. */
function npm(args: readonly string[], cwd: string): string {
	const env = { ...process.env, npm_config_cache: join(cwd, 'cache'), npm_config_offline: 'true' };
	return execFileSync('npm', args, { cwd, env, encoding: 'utf8', stdio: 'pipe' });
}

describe('the bill of materials', () => {
	const bill = readJson(join(root, 'dist/bom.json'));
	const parts: { name: string; version: string; hashes: { content: string }[] }[] = bill.components;

	test('is CycloneDX 1.6, as its published schema has it', () => {
		// The schemas of the CycloneDX project, as its own library hands them on.
		const library = require.resolve('@cyclonedx/cyclonedx-library/package.json');
		const schema = (name: string) => readJson(join(library, `../res/schema/${name}.schema.json`));
		const ajv = new Ajv({ strict: false, validateFormats: false });
		for (const name of ['spdx.SNAPSHOT', 'jsf-0.82.SNAPSHOT']) {
			ajv.addSchema(schema(name), `http://cyclonedx.org/schema/${name}.schema.json`);
		}
		const isValid = ajv.compile(schema('bom-1.6.SNAPSHOT'));
		isValid(bill);
		expect(isValid.errors).toBeNull();
		for (const wrong of [{ specVersion: 1.6 }, { components: [{ type: 'library' }] }]) {
			expect(isValid({ ...bill, ...wrong })).toBe(false);
		}
		const [part] = parts;
		const madeUp = [{ license: { id: 'No-Such-License' } }];
		expect(isValid({ ...bill, components: [{ ...part, licenses: madeUp }] })).toBe(false);
	});

	test('names what the licences name, as npm installed it', () => {
		const licenses = readFileSync(join(root, 'dist/licenses.txt'), 'utf8');
		const licensed = [...licenses.matchAll(/^={72}\n(\S+ \d\S*)$/gm)].map(([, name]) => name);
		expect(parts.map(({ name, version }) => `${name} ${version}`)).toEqual(licensed);
		const installed = Object.values<{ integrity?: string }>(
			readJson(join(root, 'node_modules/.package-lock.json')).packages,
		).map(({ integrity }) => integrity);
		for (const { name, hashes } of parts) {
			const [hash] = hashes;
			const integrity = `sha512-${Buffer.from(hash?.content ?? '', 'hex').toString('base64')}`;
			expect(installed, name).toContain(integrity);
		}
	});
});

describe('the package', () => {
	test('is installed from its file alone, with no script run, and works', () => {
		const folder = scratchFolder();
		npm(['pack', '--ignore-scripts', '--pack-destination', folder, root], folder);
		const [tarball = ''] = readdirSync(folder).filter((name) => name.endsWith('.tgz'));
		writeFileSync(join(folder, 'package.json'), '{}');
		npm(['install', `./${tarball}`], folder);
		// npm notes here what asks to run a script at users'; `prepare` is for a checkout.
		const { packages } = readJson(join(folder, 'package-lock.json'));
		expect(Object.keys(packages)).toEqual(['', 'node_modules/rackside']);
		expect(packages['node_modules/rackside']).not.toHaveProperty('hasInstallScript');
		const installed = join(folder, 'node_modules/rackside');
		expect(readJson(join(installed, 'dist/bom.json')).bomFormat).toBe('CycloneDX');
		expect(readFileSync(join(installed, 'dist/licenses.txt'), 'utf8')).toMatch(/copyright/i);
		const program = join(folder, 'node_modules/.bin/rackside');
		expect(execFileSync(program, ['--help'], { encoding: 'utf8' })).toContain('rehearse');
	});
});
