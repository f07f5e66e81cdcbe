// Nights whose copy of the show is none that this version knows: said in words, never a fault.

import { copyFileSync, mkdirSync, mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { expect, onTestFinished, test } from 'vitest';
import { keptShow } from '../../src/showfile/kept-show.ts';
import { runCommand } from './run-command.ts';

test.each([undefined, null, 'a show', {}, { players: [], songs: [], set: [] }])(
	'%j is none',
	(copy) => {
		expect(keptShow(copy)).toBe(null);
	},
);

test('the report of such a night says so', async () => {
	const data = mkdtempSync(join(tmpdir(), 'rackside-kept-'));
	onTestFinished(() => rmSync(data, { recursive: true }));
	mkdirSync(join(data, 'nights'));
	// Its show has a title and nothing else.
	copyFileSync('tests/journals/v1.journal', join(data, 'nights/v1.journal'));
	const { code, err: told } = await runCommand({ cwd: process.cwd(), data }, 'report', 'v1');
	expect({ code, told }).toEqual({ code: 2, told: expect.stringContaining('cannot be read') });
});
