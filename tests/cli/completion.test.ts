// Completion in the shells themselves, each in a terminal with a tab as a hand types it, and the values behind it;
// the manual page held against the tools that read such pages. Needs the bundle: `node .ci/build.mjs`.

import { spawnSync } from 'node:child_process';
import { copyFileSync, mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import { COMMANDS } from '../../src/cli/command-list.ts';
import { scratchFolder } from '../disk/scratch-folder.ts';
import { type PtyScreen, startPtyScreen } from '../terminal/pty-screen.ts';
import { PATIENCE_MS } from '../terminal/whole-program.ts';
import { runCommand } from './run-command.ts';

const ROOT = join(import.meta.dirname, '../..');

let folder = '';
beforeEach(() => {
	folder = scratchFolder();
	mkdirSync(join(folder, 'data'));
	mkdirSync(join(folder, 'my shows/tour'), { recursive: true });
	for (const name of ['club.yaml', 'club-gear.yaml', 'folk.yaml'])
		copyFileSync(join(ROOT, 'shows', name), join(folder, name));
	copyFileSync(join(ROOT, 'shows/folk.yaml'), join(folder, 'my shows/late.yaml'));
	writeFileSync(join(folder, 'other.yaml'), 'services: {}\n');
});

/** What can stand for the last of these words. */
async function values(...words: readonly string[]): Promise<readonly string[]> {
	const place = { cwd: folder, data: join(folder, 'data') };
	const { code, out } = await runCommand(place, 'completion', '--values', '--', ...words);
	expect(code).toBe(0);
	return out
		.split('\n')
		.slice(0, -1)
		.map((line) => line.split('\t')[0] ?? '');
}

describe('what can stand', () => {
	test('a command: each that there is', async () => {
		expect(await values('')).toEqual(Object.keys(COMMANDS));
		expect(await values('ch')).toEqual(['check']);
		expect(await values('help', 'ch')).toEqual(['check']);
	});

	test('a show: files that are one, and folders', async () => {
		expect(await values('check', '')).toEqual(['club.yaml', 'data/', 'folk.yaml', 'my shows/']);
		expect(await values('check', 'my shows/')).toEqual(['my shows/late.yaml', 'my shows/tour/']);
		expect(await values('check', 'club.yaml', '')).toEqual([]);
	});

	test('a player, an instrument or a song, also when it is typed in capitals', async () => {
		expect(await values('fault', 'club.yaml', '')).toEqual(['ash', 'bo', 'cleo']);
		expect(await values('tuning', 'club.yaml', 'a1')).toEqual(['A1']);
		expect(await values('plan', 'club.yaml', '--why', 'Lant')).toEqual(['lantern']);
	});

	test('an option: each of the command once, and its value', async () => {
		const all = await values('plan', 'club.yaml', '--');
		expect(all).toContain('--why');
		expect(all).toContain('--data');
		expect(await values('plan', '--why', 'lantern', '--')).not.toContain('--why');
		expect(await values('report', '--as', 'hand')).toEqual(['hand-overs']);
		expect(await values('report', '--as=hand')).toEqual(['--as=hand-overs']);
		expect(await values('list', 'club.yaml', '--as', '')).toEqual(['text', 'csv', 'json']);
		// As bash hands it over.
		expect(await values('report', '--as', '=', 'hand')).toEqual(['hand-overs']);
		expect(await values('plan', '--data', '')).toEqual(['data/', 'my shows/']);
	});

	test('instruments and songs of the show on the line, and tunings of the instrument', async () => {
		expect(await values('tuning', 'club.yaml', 'C')).toEqual(['C1', 'C2']);
		expect(await values('plan', 'club.yaml', '--why', 'lan')).toEqual(['lantern']);
		expect(await values('tuning', 'club.yaml', 'A1', '--to', 'drop')).toContain('drop D');
		expect(await values('tuning', 'none.yaml', '')).toEqual([]);
		expect(await values('tuning', 'other.yaml', '')).toEqual([]);
	});

	test('nights by the data folder on the line', async () => {
		const elsewhere = join(folder, 'elsewhere');
		const nights = join(elsewhere, 'nights');
		mkdirSync(nights, { recursive: true, mode: 0o700 });
		expect(await values('report', '')).toEqual([]);
		const night = '2026-11-club';
		copyFileSync(
			join(ROOT, 'tests/journals/2026-11-club.journal'),
			join(nights, `${night}.journal`),
		);
		expect(await values('report', '--data', elsewhere, '')).toEqual([night]);
		expect(await values('follow', `--data=${elsewhere}`, '2026')).toEqual([night]);
		// One, and each further one.
		expect(await values('tomorrow', '--data', elsewhere, '')).toEqual([night]);
		expect(await values('times', '--data', elsewhere, night, '')).toEqual([night]);
		expect(await values('report', `--data=${elsewhere}`, night, '2026')).toEqual([]);
	});

	test('settings and their values', async () => {
		expect(await values('settings', 'col')).toEqual(['colours']);
		expect(await values('settings', 'colours', 'a')).toEqual(['amber']);
		expect(await values('completion', '')).toEqual(['bash', 'zsh', 'fish', 'man']);
	});

	test('nothing after what is no command, and no shell but those', async () => {
		expect(await values('no-such', '')).toEqual([]);
		const place = { cwd: folder, data: join(folder, 'data') };
		expect((await runCommand(place, 'completion', 'tcsh')).code).toBe(2);
		expect((await runCommand(place, 'completion', 'bash', 'zsh')).code).toBe(2);
	});
});

const SHELLS = {
	bash: ['--norc', '--noprofile', '-i'],
	zsh: ['-f', '-i'],
	fish: ['--no-config', '-i'],
} as const;

describe.each(Object.entries(SHELLS))('in %s', (shell, args) => {
	const isThere = spawnSync(shell, ['--version']).status === 0;
	let screen: PtyScreen | undefined;
	afterEach(() => screen?.close());

	async function open(): Promise<PtyScreen> {
		const bin = join(folder, 'bin');
		mkdirSync(bin);
		const program = `#!/bin/sh\nexec '${process.execPath}' '${ROOT}/dist/rackside.js' "$@"\n`;
		writeFileSync(join(bin, 'rackside'), program, { mode: 0o755 });
		const script = spawnSync(join(bin, 'rackside'), ['completion', shell], { encoding: 'utf8' });
		writeFileSync(join(folder, 'script'), script.stdout);
		const started = startPtyScreen({
			command: shell,
			args,
			folder,
			env: {
				HOME: folder,
				PATH: `${bin}:${process.env.PATH}`,
				RACKSIDE_DATA: join(folder, 'data'),
				PS1: '> ',
				TERM: 'xterm',
			},
			columns: 120,
			rows: 40,
		});
		screen = started;
		await started.press(...'. ./script; echo re""ady', 'enter');
		await started.waitFor(/^ready/m, PATIENCE_MS);
		return started;
	}

	test.skipIf(!isThere)(
		isThere ? 'a tab completes commands, shows and instruments' : `left out: ${shell} is not here`,
		async () => {
			const shown = await open();
			await shown.press(...'rackside tun', 'tab');
			await shown.waitFor(/rackside tuning /, PATIENCE_MS);
			await shown.press(...'cl', 'tab');
			await shown.waitFor(/rackside tuning club\.yaml /, PATIENCE_MS);
			// bash lists only at a second tab, at which zsh already takes the first of them.
			await shown.press('A', 'tab', ...(shell === 'bash' ? ['tab'] : []));
			await shown.waitFor(/A2(.|\n)*A3/, PATIENCE_MS);
			await shown.press('1', ' ', ...'--to dr', 'tab');
			await shown.waitFor(/--to ['"]?drop/, PATIENCE_MS);
		},
	);

	test.skipIf(!isThere)(
		isThere
			? 'a folder with a space, from home on, is gone into'
			: `left out: ${shell} is not here`,
		async () => {
			const shown = await open();
			await shown.press(...'rackside check ~/my', 'tab');
			await shown.waitFor(/my\\? shows\//, PATIENCE_MS);
			await shown.press('l', 'tab', 'enter');
			await shown.waitFor(/to look at\.|nothing to look at/i, PATIENCE_MS);
		},
	);
});

describe('the manual page', () => {
	const page = join(ROOT, 'dist/rackside.1');

	test('has every command with every option', async () => {
		const text = readFileSync(page, 'utf8').replaceAll('\\-', '-');
		for (const { load } of Object.values(COMMANDS)) {
			const { usage, options } = await load();
			expect(text).toContain(`.SS rackside ${usage}\n`);
			for (const name of Object.keys(options))
				expect(text).toMatch(new RegExp(`^\\.BI? "?--${name}\\b`, 'm'));
		}
	});

	const reads = (command: string, ...args: readonly string[]) =>
		spawnSync(command, args, { encoding: 'utf8', env: { ...process.env, LC_ALL: 'C.UTF-8' } });

	const hasMandoc = reads('mandoc', page).status === 0;
	test.skipIf(!hasMandoc)(
		`mandoc finds nothing wrong in it${hasMandoc ? '' : ' (left out: not here)'}`,
		() => {
			const found = reads('mandoc', '-T', 'lint', page).stdout.split('\n').filter(Boolean);
			// It changes with the program, and so has no date of its own.
			expect(found.filter((line) => !line.includes('missing date'))).toEqual([]);
		},
	);

	const hasMan = reads('man', '--version').status === 0;
	test.skipIf(!hasMan)(
		`man reads it without a warning${hasMan ? '' : ' (left out: not here)'}`,
		() => {
			const { stdout, stderr } = reads('man', '--warnings', '-l', page);
			expect(stderr).toBe('');
			expect(stdout).toContain('rackside');
		},
	);
});
