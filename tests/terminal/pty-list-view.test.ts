// The list changed and the show file read again in the real program on a real terminal, with a kill in
// between.

import { copyFileSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, onTestFinished, test } from 'vitest';
import { scratchFolder } from '../disk/scratch-folder.ts';
import { type PtyScreen, pause, startPtyScreen } from './pty-screen.ts';

const ROOT = join(import.meta.dirname, '../..');

test('a list moved, a file read again and a kill -9 leave the night as it was made', async () => {
	const folder = scratchFolder();
	const file = join(folder, 'show.yaml');
	for (const name of ['set', 'gear']) {
		const to = name === 'set' ? file : join(folder, 'gear.yaml');
		copyFileSync(join(ROOT, 'tests/scenarios/shows', `${name}.yaml`), to);
	}
	const start = (): PtyScreen => {
		const screen = startPtyScreen({
			command: process.execPath,
			args: [join(ROOT, 'dist/rackside.js'), 'run', 'show.yaml'],
			env: { RACKSIDE_DATA: join(folder, 'data') },
			folder,
		});
		onTestFinished(() => screen.close());
		return screen;
	};
	const first = start();
	await first.waitFor('THEN');
	await first.press('space');
	await first.waitFor(/SONG +1 of 7/);
	await first.press('tab');
	await first.waitFor(/RACK +state/);
	// Two presses of one key within 300 ms would count once.
	await pause(350);
	await first.press('tab');
	await first.waitFor(/> +2 Lantern/);
	await first.press('g');
	await first.waitFor('put it here');
	await first.press('down', 'down');
	await first.waitFor(/> +4 Lantern +here\?/);
	await first.press('enter');
	await first.waitFor(/> +4 Lantern +\d/);
	writeFileSync(file, readFileSync(file, 'utf8').replace('title: Gravel', 'title: Shingle'));
	await first.waitFor('file changed');
	await first.press('v');
	await first.waitFor('songs changed: Shingle');
	await pause(350);
	await first.press('enter');
	await first.waitFor(/2 Shingle +next/);
	first.kill('SIGKILL');
	await first.gone();
	const second = start();
	await second.waitFor(/SONG +1 of 7/);
	await second.press('tab');
	await second.waitFor(/RACK +state/);
	await pause(350);
	await second.press('tab');
	const rows = await second.waitFor(/4 Lantern/);
	expect(rows.join('\n')).toMatch(/2 Shingle +next/);
	expect(rows.join('\n')).not.toContain('file changed');
});
