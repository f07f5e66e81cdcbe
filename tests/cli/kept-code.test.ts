// Compiled code is run without being looked at: what was damaged is none, and none of another program,
// another Node or another command may pass for this one's.

import { mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, expect, test } from 'vitest';
import { readCode, writeCode } from '../../src/cli/kept-code.ts';

const code = Buffer.from('code of a command');
let home = '';

const keptOf = (script: string, ...traits: readonly string[]) => ({
	script,
	build: [script, `other-${script}`],
	traits,
	installed: join(home, 'installed'),
	environment: { XDG_CACHE_HOME: home },
});
const folder = () => join(home, 'rackside/code');

beforeEach(() => {
	home = mkdtempSync(join(tmpdir(), 'rackside-code-'));
});
afterEach(() => rmSync(home, { recursive: true }));

test('gives back what was kept, and only for the same script, command and Node', () => {
	writeCode(keptOf('a.cjs', 'plan', 'v24.1.0'), code);
	expect(readCode(keptOf('a.cjs', 'plan', 'v24.1.0'))).toEqual(code);
	expect(readCode(keptOf('a.cjs', 'check', 'v24.1.0'))).toBeUndefined();
	expect(readCode(keptOf('a.cjs', 'plan', 'v24.2.0'))).toBeUndefined();
	expect(readCode(keptOf('b.cjs', 'plan', 'v24.1.0'))).toBeUndefined();
});

test('takes what was installed where nothing else was kept', () => {
	writeCode(keptOf('a.cjs', 'plan'), code);
	const elsewhere = { ...keptOf('a.cjs', 'plan'), environment: {}, installed: folder() };
	expect(readCode(elsewhere)).toEqual(code);
});

test('is none once any byte is damaged, or some are missing', () => {
	writeCode(keptOf('a.cjs', 'plan'), code);
	const path = join(folder(), readdirSync(folder())[0] ?? '');
	const whole = readFileSync(path);
	for (const [at, byte] of whole.entries()) {
		writeFileSync(path, whole.with(at, byte ^ 1));
		expect(readCode(keptOf('a.cjs', 'plan'))).toBeUndefined();
		if (at === 0) continue;
		writeFileSync(path, whole.subarray(0, at));
		expect(readCode(keptOf('a.cjs', 'plan'))).toBeUndefined();
	}
});

test('takes out what other builds kept, and nothing else', () => {
	writeCode(keptOf('a.cjs', 'plan'), code);
	writeFileSync(join(folder(), 'of-somebody-else'), '');
	writeCode(keptOf('b.cjs', 'plan'), code);
	writeCode({ ...keptOf('b.cjs', 'check'), script: 'other-b.cjs' }, code);
	writeCode(keptOf('b.cjs', 'check'), code);
	expect(readdirSync(folder()).sort()).toEqual([
		'b.cjs-check.code',
		'b.cjs-plan.code',
		'of-somebody-else',
		'other-b.cjs-check.code',
	]);
});

test('does without where no file can be written', () => {
	writeFileSync(join(home, 'rackside'), 'no folder');
	writeCode(keptOf('a.cjs', 'plan'), code);
	expect(readCode(keptOf('a.cjs', 'plan'))).toBeUndefined();
});
