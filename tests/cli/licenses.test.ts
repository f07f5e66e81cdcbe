// What is handed on with the program: its own licence, and those of everything that is bundled into it.

import { readdirSync, readFileSync } from 'node:fs';
import { expect, test } from 'vitest';

const read = (path: string) => readFileSync(new URL(`../../${path}`, import.meta.url), 'utf8');
const dist = new URL('../../dist/', import.meta.url);

// The bundler writes above each piece which file it is from. Needs the bundle: `node .ci/build.mjs`.
test('every bundled package is there with its licence', () => {
	const bundled = new Set<string>();
	for (const file of readdirSync(dist).filter((name) => name.endsWith('.js'))) {
		const sources = readFileSync(new URL(file, dist), 'utf8').matchAll(
			/^(?:\/\/ .*|var require_.*)node_modules\/((?:@[\w.-]+\/)?[\w.-]+)\//gm,
		);
		for (const [, name = ''] of sources) bundled.add(name);
	}
	expect(bundled).toContain('ink');
	expect(bundled).toContain('yoga-layout');
	const licenses = read('dist/licenses.txt');
	const listed = new Set([...licenses.matchAll(/^={72}\n(\S+) \d/gm)].map(([, name]) => name));
	expect([...bundled].filter((name) => !listed.has(name))).toEqual([]);
	for (const text of licenses.split('='.repeat(72)).slice(1)) expect(text).toMatch(/copyright/i);
});

test('the licence is the one that package.json names', () => {
	expect(JSON.parse(read('package.json')).license).toBe('MIT');
	expect(read('LICENSE')).toMatch(/^MIT License\n/);
});
