// A list and an earlier night at once.

import { existsSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { expect, it } from 'vitest';
import { runCommand } from '../run-command.ts';

it.each(['--songs', '--list'])(
	'--from beside %s is refused, and nothing is written',
	async (option) => {
		const cwd = mkdtempSync(join(tmpdir(), 'rackside-both-'));
		writeFileSync(join(cwd, 'l.csv'), 'Title,Length\nKiln,3:00\n');
		const { code, err } = await runCommand(
			{ cwd, data: join(cwd, 'data'), wallMs: 0 },
			...['new', 'f.yaml', '--from', 'last', option, 'l.csv'],
		);
		expect(code).not.toBe(0);
		expect(err).toContain('--from and a list of songs are both given');
		expect(err).toContain('--rack');
		expect(existsSync(join(cwd, 'f.yaml'))).toBe(false);
		rmSync(cwd, { recursive: true });
	},
);
