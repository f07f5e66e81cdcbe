// Preferences that are changed while the disk hangs make nobody wait, are written once it answers, and are said
// where they are not.

import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import type { Disk } from '../../src/disk/disk.ts';
import { realDisk } from '../../src/disk/real-disk.ts';
import { settingsKeeper } from '../../src/disk/settings-keeper.ts';
import { scratchFolder } from './scratch-folder.ts';

/** A disk that confirms nothing until it is let go, a clock that is turned by hand, and what is in the file. */
function hungDisk() {
	const folder = join(scratchFolder(), 'settings');
	const held: (() => void)[] = [];
	let isHung = true;
	let nowMs = 0;
	const waits: (() => void)[] = [];
	const disk: Disk = {
		...realDisk,
		sync: () => (isHung ? new Promise((done) => held.push(done)) : Promise.resolve()),
	};
	const clock = {
		nowMs: () => nowMs,
		wait: () => new Promise<void>((done) => waits.push(done)),
	};
	const turn = async (act: () => void): Promise<void> => {
		act();
		await new Promise((done) => setTimeout(done, 20));
	};
	return {
		keeper: settingsKeeper({ disk, folder }, clock),
		/** Time passes, and whoever waits for it goes on. */
		pass: (ms: number) =>
			turn(() => {
				nowMs += ms;
				for (const done of waits.splice(0)) done();
			}),
		answer: () =>
			turn(() => {
				isHung = false;
				for (const done of held.splice(0)) done();
			}),
		stored: () => {
			const path = join(folder, 'settings.json');
			return existsSync(path) ? JSON.parse(readFileSync(path, 'utf8')) : null;
		},
		names: () => readdirSync(folder),
	};
}

test('the disk is waited for beside everything else, and has all changes in the end', async () => {
	const { keeper, pass, answer, stored, names } = hungDisk();
	const first = keeper.change({ colours: 'amber' });
	await pass(1000);
	expect(await first).toEqual({ code: 'settings-late' });
	const second = keeper.change({ keys: { next: 'n' } });
	await pass(1000);
	expect(await second).toEqual({ code: 'settings-late' });
	expect(keeper.unkept()).toEqual({ code: 'settings-late' });
	expect(stored()).toBeNull();
	// It answered, though late: once more it is tried, and then it is quick.
	await answer();
	expect(stored()).toBeNull();
	await pass(1000);
	await expect.poll(stored).toMatchObject({ looks: 'amber', keys: { next: 'n' } });
	expect(keeper.unkept()).toBeNull();
	expect(names()).toEqual(['settings.json']);
});

test('where it answers at once nobody is told anything', async () => {
	const { keeper, answer, stored } = hungDisk();
	await answer();
	expect(await keeper.change({ colours: 'amber' })).toBeNull();
	expect(stored()).toMatchObject({ looks: 'amber' });
	expect(keeper.unkept()).toBeNull();
});
