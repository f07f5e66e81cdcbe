// The program as one file: it needs no Node and no files of its own, and puts the terminal right like the
// launcher. In a bare root only where we may make one root of a process.

import { spawnSync } from 'node:child_process';
import { readdirSync, readFileSync, rmSync } from 'node:fs';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { pause, startPtyScreen } from '../terminal/pty-screen.ts';
import {
	cleanUpAfterEach,
	MODES_OFF,
	mustGoOn,
	PATIENCE_MS,
	startLive,
	startProgram,
} from '../terminal/whole-program.ts';
import { lookAtJournal } from '../whole-night/driver.ts';
import { bareRoot, singleFile } from './single-file.ts';

cleanUpAfterEach();

let file = '';
beforeAll(() => {
	file = singleFile();
}, 300_000);

/** What a command prints, and its exit code. */
function printed(command: string, args: readonly string[]) {
	const { stdout, status } = spawnSync(command, args, { encoding: 'utf8' });
	return { stdout, status };
}

describe('one file', () => {
	test.each([
		'check shows/club.yaml',
		'check tests/bad-shows/_bad.yaml',
		'plan shows/festival.yaml --json',
		'plan shows/club.yaml --why gravel',
		'tuning shows/club.yaml A1 --json',
		'rehearse shows/club.yaml --script tests/rehearsals/club-opening.txt',
		'schema',
		'--help',
		'check shows/none.yaml',
	])('says what the bundle says: %s', (line) => {
		const args = line.split(' ');
		const bundle = printed(process.execPath, ['dist/rackside.js', ...args]);
		expect(bundle.stdout + bundle.status).not.toBe('');
		expect(printed(file, args)).toEqual(bundle);
	});

	test('carries the example shows, and no other file', () => {
		expect(printed(file, ['check', join(file, 'shows/festival.yaml')]).status).toBe(1);
		for (const name of ['shows/none.yaml', 'program', 'shows/../program']) {
			expect(printed(file, ['check', join(file, name)]).status, name).toBe(2);
		}
	});

	test('is not told by the environment how to run', () => {
		const env = { ...process.env, NODE_OPTIONS: '--no-such-option' };
		expect(spawnSync(file, ['--help'], { env }).status).toBe(0);
	});
});

// Signals as in the tests of every way to end; here it is the file that watches itself.
describe('on a terminal', () => {
	test.each([
		['SIGKILL', 137],
		['SIGSEGV', 139],
	] as const)('%s: everything is put right, and the night goes on', async (signal, code) => {
		const program = await startLive({ by: 'single' });
		const before = await program.record('t 0', 'space', 'space');
		program.signal(signal);
		expect(await program.afterwards()).toEqual({ code, areSettingsKept: true });
		expect(program.screen.modes()).toEqual(MODES_OFF);
		expect(program.screen.text()).toMatch(/^a shell\nrackside stopped unexpectedly/);
		expect(lookAtJournal(program.data)).toEqual(before);
		await mustGoOn(program.data, before);
	});

	test.each([
		['SIGTERM', 143],
		['SIGHUP', 129],
	] as const)('%s to the one that watches is handed on', async (signal, code) => {
		const program = await startLive({ by: 'single' });
		const before = await program.record('t 0', 'space');
		process.kill(program.screen.childPids()[0] ?? Number.NaN, signal);
		expect(await program.afterwards()).toEqual({ code, areSettingsKept: true });
		expect(program.screen.modes()).toEqual(MODES_OFF);
		expect(program.screen.text()).toMatch(/^a shell\nThe night stays open. .*\ncode/);
		expect(lookAtJournal(program.data)).toEqual(before);
	});

	test('quit by a key ends it with its own code', async () => {
		const program = await startLive({ by: 'single' });
		await program.screen.press('q');
		await pause(400);
		await program.screen.press('enter');
		expect(await program.afterwards()).toEqual({ code: 1, areSettingsKept: true });
		expect(program.screen.modes()).toEqual(MODES_OFF);
	});

	test('what only prints is not watched', async () => {
		const program = startProgram({ by: 'single', words: 'check shows/club.yaml' });
		expect(await program.afterwards()).toEqual({ code: 1, areSettingsKept: true });
		expect(program.screen.rawOutput()).not.toContain('\u001B');
	});
});

const isRoot = process.getuid?.() === 0;
const why = isRoot ? '' : ' (left out: only root may change the root of a process)';

describe.skipIf(!isRoot)(`in a root with the C and C++ libraries alone${why}`, () => {
	let root = '';
	let remove = () => {};
	beforeAll(() => {
		({ root, remove } = bareRoot());
	});
	afterAll(() => remove());
	const chroot = (...args: readonly string[]) =>
		spawnSync('chroot', [root, '/rackside', ...args], { encoding: 'utf8', env: BARE });
	const show = '/rackside/shows/club.yaml';

	/** The live screen, from a shell outside that says what it ended with. */
	function live() {
		return startPtyScreen({
			command: 'sh',
			args: [
				'-c',
				`env -i TERM=xterm-256color $(command -v chroot) '${root}' /rackside run ${show}; echo code $?`,
			],
			env: { PATH: BARE.PATH },
		});
	}

	test('check, plan and the example', () => {
		expect(readdirSync(root).sort()).toEqual(['lib', 'lib64', 'rackside']);
		const check = chroot('check', show);
		expect([check.status, check.stderr]).toEqual([1, '']);
		expect(check.stdout).toMatch(/\d+ to look at\.\n$/);
		expect(JSON.parse(chroot('plan', show, '--json').stdout).slots.length).toBeGreaterThan(0);
		expect(chroot().stdout).toContain('Quay Street');
	});

	test('three songs of the club show, killed in the middle, gone on with, and the report', async () => {
		const first = live();
		await first.waitFor('? all', PATIENCE_MS);
		expect(first.text()).toContain('This system knows no home folder of yours');
		await first.press('t', '0');
		await step(first, /1 of/);
		await step(first, /ch1/i);
		killWatched(first.pid);
		await first.exit;
		expect(first.text()).toContain('code 137');
		expect(first.modes()).toEqual(MODES_OFF);
		const next = live();
		await next.waitFor(/SONG +1 of/, PATIENCE_MS);
		for (const song of [2, 3]) {
			await next.press('d');
			await pause(400);
			await step(next, new RegExp(`SONG +${song} of`));
		}
		await next.press('d');
		await pause(400);
		await next.press('q');
		await pause(400);
		await next.press('enter');
		await next.exit;
		expect(next.text()).toContain('code 1');
		const report = chroot('report');
		expect(report.status).toBe(1);
		for (const title of ['Harbour', 'Lantern', 'Gravel']) expect(report.stdout).toContain(title);
		const { songs } = JSON.parse(chroot('report', '--as', 'json').stdout);
		expect(songs.slice(0, 3).map(({ state }: { state: string }) => state)).toEqual([
			'played',
			'played',
			'played',
		]);
		await Promise.all([first.close(), next.close()]);
		rmSync(join(root, 'tmp'), { recursive: true, force: true });
	});
});

const BARE = { PATH: '/usr/sbin:/usr/bin:/sbin:/bin' };

/** The next step, seen on the screen. */
async function step(screen: ReturnType<typeof startPtyScreen>, seen: RegExp): Promise<void> {
	await screen.press('space');
	await screen.waitFor(seen, PATIENCE_MS);
	await pause(400);
}

/** Kills the program that is under the watching one, found by what it was started with. */
function killWatched(pid: number): void {
	const children = readFileSync(`/proc/${pid}/task/${pid}/children`, 'utf8').split(' ');
	for (const child of children.filter(Boolean).map(Number)) {
		const isWatched = readFileSync(`/proc/${child}/environ`, 'utf8').includes('RACKSIDE_LAUNCHER=');
		if (isWatched) process.kill(child, 'SIGKILL');
		else killWatched(child);
	}
}
