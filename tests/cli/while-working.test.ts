// What stands on the terminal while the program plans: a file takes the terminal's place.

import { closeSync, mkdtempSync, openSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, expect, test } from 'vitest';
import { whileWorking } from '../../src/cli/while-working.ts';

const EMPTY_LINE = '\r\u001b[K';

let folder: string;
let file: string;
let to: number;

beforeEach(() => {
	folder = mkdtempSync(join(tmpdir(), 'rackside-working-'));
	file = join(folder, 'terminal');
	to = openSync(file, 'w');
});

afterEach(() => {
	closeSync(to);
	rmSync(folder, { recursive: true });
});

const written = () => readFileSync(file, 'utf8');

test('what takes long says so meanwhile, and leaves the line empty', () => {
	const work = () => {
		while (written() === '');
		return 7;
	};
	expect(whileWorking('Planning,', work, { to, afterMs: 20 })).toBe(7);
	expect(written().startsWith('\rPlanning, 1 s')).toBe(true);
	expect(written().endsWith(EMPTY_LINE)).toBe(true);
});

test('what is done at once says nothing', () => {
	expect(whileWorking('Planning,', () => 7, { to, afterMs: 60_000 })).toBe(7);
	expect(written()).toBe('');
});

test('what goes wrong is told on an empty line', () => {
	const work = () => {
		while (written() === '');
		throw new Error('no');
	};
	expect(() => whileWorking('Planning,', work, { to, afterMs: 20 })).toThrow('no');
	expect(written().endsWith(EMPTY_LINE)).toBe(true);
});
