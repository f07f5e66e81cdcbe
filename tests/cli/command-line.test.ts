// Commands as a user types them: what is printed where, and the exit code.

import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { afterAll, describe, expect, test } from 'vitest';
import { COMMANDS } from '../../src/cli/command-list.ts';
import { runCommand } from './run-command.ts';

const root = fileURLToPath(new URL('../..', import.meta.url));
const data = mkdtempSync(join(tmpdir(), 'rackside-cli-'));
afterAll(() => rmSync(data, { recursive: true }));

const run = (...argv: string[]) => runCommand({ cwd: root, data }, ...argv);

describe('help', () => {
	test('of the program names every command', async () => {
		const { code, out, err } = await run('--help');
		expect({ code, err }).toEqual({ code: 0, err: '' });
		for (const { usage } of Object.values(COMMANDS)) expect(out).toContain(`rackside ${usage}`);
		for (const line of out.split('\n')) expect(line.length).toBeLessThanOrEqual(80);
	});

	test('is the same by -h, and of a command by its name after help', async () => {
		const whole = await run('--help');
		expect(await run('-h')).toEqual(whole);
		expect(await run('help')).toEqual(whole);
		const ofRig = await run('rig', '--help');
		expect(ofRig.out).toMatch(/^rackside rig SHOW$/m);
		expect(await run('rig', '-h')).toEqual(ofRig);
		expect(await run('help', 'rig')).toEqual(ofRig);
		const none = await run('help', 'rug');
		expect([none.code, none.out]).toEqual([2, '']);
		expect(none.err).toContain('there is no such command (found rug)');
	});

	test('is not needed for the version', async () => {
		const { version } = JSON.parse(readFileSync(join(root, 'package.json'), 'utf8'));
		expect(await run('--version')).toMatchObject({ code: 0, out: `rackside ${version}\n` });
	});

	test.each(Object.keys(COMMANDS))('of %s has an example and all its options', async (name) => {
		const { code, out } = await run(name, '--help');
		expect(code).toBe(0);
		expect(out).toMatch(new RegExp(`^Example: rackside ${name}`, 'm'));
		const command = await COMMANDS[name]?.load();
		for (const option of Object.keys(command?.options ?? {})) expect(out).toContain(`--${option}`);
		for (const line of out.split('\n')) expect(line.length).toBeLessThanOrEqual(80);
	});
});

describe('what cannot be used ends with 2 and one sentence', () => {
	test.each([
		[['pln'], 'Did you mean plan?'],
		[['my.yaml'], 'rackside run my.yaml'],
		[['plan', 'shows/club.yaml', '--shet'], 'Did you mean --sheet?'],
		[['plan'], 'rackside plan SHOW'],
		[['plan', 'a.yaml', 'b.yaml'], 'unexpected word (found b.yaml'],
		[['plan', 'nowhere.yaml'], 'nowhere.yaml'],
		[['plan', 'shows/club.yaml', '--why', 'lantrn'], 'Did you mean lantern?'],
		[
			['plan', 'shows/club.yaml', '--sheet', '--tonight'],
			'no night of shows/club.yaml is under way',
		],
		[['plan', 'shows/club.yaml', '--json', '--sheet'], '--json and --sheet ask for two things'],
		[['plan', 'shows/club.yaml', '--data'], '--data needs a value'],
		[['rehearse', 'shows/club.yaml', '--script', 'nowhere.txt'], 'nowhere.txt: '],
		[['rehearse', 'shows/club.yaml', '--speed', 'fast'], '--speed needs a number (found fast; '],
		[['rehearse', 'shows/club.yaml', '--script', 'x.txt', '--size', '80'], '--size'],
		[['report', '--out', '--force'], '--out needs a value (found --force; expected --out FILE)'],
		[['report', 'no-such-night'], 'there is no such night'],
		[['report'], 'no night was recorded yet'],
		[['report', '--as', 'jsn'], 'Did you mean json?'],
		[['settings', 'colurs'], 'Did you mean colours?'],
		[['settings', 'looks', 'loud'], 'one of white, amber, grey, none'],
		[['run', 'shows/club.yaml'], 'needs a terminal'],
	])('%j', async (argv, words) => {
		const { code, out, err } = await run(...argv);
		expect(err).toContain(words);
		expect({ code, out }).toEqual({ code: 2, out: '' });
		expect(err.trim().split('\n')).toHaveLength(1);
	});

	test('and nothing that a terminal would obey comes back', async () => {
		const { err } = await run('\u001b]0;x\u0007');
		expect(err).not.toContain('\u001b');
	});
});

test('without a terminal a bare start prints the run sheet and how to open it', async () => {
	const { code, out, err } = await run();
	expect({ code, err }).toEqual({ code: 0, err: '' });
	expect(out).toContain('Harbour');
	expect(out.trim().split('\n').at(-1)).toContain('rackside');
	for (const line of out.split('\n')) expect([...line].length).toBeLessThanOrEqual(80);
});

describe('one JSON document', () => {
	test.each([
		['plan', 'shows/club.yaml'],
		['check', 'shows/club.yaml'],
		['nights'],
		['settings'],
		['schema'],
	])('%s %s', async (...argv) => {
		const { out } = await run(...argv.filter((word) => word !== undefined), '--json');
		expect(typeof JSON.parse(out)).toBe('object');
	});
});

test('the plan says first whether the night works, for people and for programs alike', async () => {
	const { out } = await run('plan', 'shows/folk.yaml');
	const { sentence, mend } = JSON.parse((await run('plan', 'shows/folk.yaml', '--json')).out);
	expect(out.replaceAll('\n', ' ').startsWith(sentence)).toBe(true);
	expect(mend).toEqual([]);
});

test('settings are kept and set back', async () => {
	expect((await run('settings', 'colours', 'amber')).code).toBe(0);
	expect((await run('settings', 'colours')).out).toBe('amber\n');
	expect((await run('settings', '--reset', 'colours')).code).toBe(0);
	expect((await run('settings', 'colours')).out).toBe('white\n');
	expect((await run('settings', 'key.memo', ';')).code).toBe(0);
	expect((await run('settings', 'key.memo')).out).toBe(';\n');
	expect((await run('settings', 'key.memo', 't')).code).toBe(2);
	expect((await run('settings', '--reset')).code).toBe(0);
	expect((await run('settings', 'key.memo')).out).toBe('m\n');
});

describe('own times', () => {
	const seconds = async (): Promise<readonly number[]> => {
		const { out } = await run('plan', 'shows/folk.yaml', '--json');
		return JSON.parse(out).work.map((one: { seconds: number }) => one.seconds);
	};
	test('are set, count in every show that is read, and are set back alone', async () => {
		const before = await seconds();
		await run('settings', 'looks', 'amber');
		expect((await run('settings', 'time.touch-up.acoustic-6', '2m')).code).toBe(0);
		expect((await run('settings', 'time.touch-up.acoustic-6')).out).toBe('2:00\n');
		expect(await seconds()).not.toEqual(before);
		expect((await run('settings', '--reset', 'time.touch-up.acoustic-6')).code).toBe(0);
		expect(await seconds()).toEqual(before);
		expect((await run('settings', 'looks')).out).toBe('amber\n');
		expect((await run('settings', '--reset')).code).toBe(0);
	});
	test('that are none are refused', async () => {
		const { code, err } = await run('settings', 'time.capo', 'soon');
		expect(code).toBe(2);
		expect(err).toBe(
			'time.capo cannot be this (found soon; expected a time in whole seconds such as 45s, 4m30s or 1:30).\n',
		);
		expect((await run('settings', 'time.cappo', '5s')).err).toContain('Did you mean time.capo?');
	});
	test('kept wrongly are told in a sentence, and nothing else is changed by it', async () => {
		const { out } = await run('settings', '--json');
		writeFileSync(JSON.parse(out).files.settings, '{"times": {"capo": "soon", "walk": "6s"}}');
		const { code, err } = await run('settings');
		expect(code).toBe(0);
		expect(err).toMatch(/^Your time for capo cannot be used: "soon" is not .*\n$/);
		expect((await run('check', 'shows/club.yaml')).err).toBe(err);
		expect((await run('plan', 'shows/club.yaml')).err).toBe(err);
		expect((await run('settings', 'time.walk')).out).toBe('0:06\n');
		expect((await run('settings', '--reset')).code).toBe(0);
	});
});

describe('a script', () => {
	test('that CI plays runs to its end with nothing on standard error', async () => {
		const argv = ['rehearse', 'shows/club.yaml', '--script', 'tests/rehearsals/club-opening.txt'];
		const { code, out, err } = await run(...argv);
		expect({ code, err }).toEqual({ code: 0, err: '' });
		const states = out
			.split('\n')
			.filter((line) => line.startsWith('{'))
			.map((line) => JSON.parse(line));
		expect(states.map(({ at }) => at)).toEqual(['00:00:00', '00:02:45', '00:04:00', '00:05:00']);
		expect(states[2].song.id).toBe(states[1].song.id);
		expect(states[2].incidents).toMatchObject([{ kind: 'string-break', string: 3, silence: 10 }]);
		expect(states[3]).toMatchObject({
			saved: true,
			played: [{ state: 'played' }, { state: 'played' }],
		});
	});

	test('tells line and reason when it cannot be read', async () => {
		const file = join(data, 'bad.txt');
		writeFileSync(file, '00:00 space\n00:00 spce\n');
		const { code, err, out } = await run('rehearse', 'shows/club.yaml', '--script', file);
		expect({ code, out }).toEqual({ code: 2, out: '' });
		expect(err).toContain(`${file}:2:7: `);
	});

	test('draws the screen in the size asked for, the one on its own line first', async () => {
		const file = join(data, 'size.txt');
		const rowsOf = async (line: string, ...options: string[]) => {
			writeFileSync(file, `00:00 ${line}\n`);
			const argv = ['rehearse', 'shows/club.yaml', '--script', file, '--quiet', ...options];
			const { code, out } = await run(...argv);
			expect(code).toBe(0);
			const rows = out.split('\n').slice(0, -1);
			return [Math.max(...rows.map((row) => [...row].length)) > 80, rows.length];
		};
		expect(await rowsOf('!screen')).toEqual([false, 24]);
		expect(await rowsOf('!screen', '--size', '120x40')).toEqual([true, 40]);
		expect(await rowsOf('!screen --size 80x30', '--size', '120x40')).toEqual([false, 30]);
	});

	test('leaves out the last state when asked to', async () => {
		const file = join(data, 'quiet.txt');
		writeFileSync(file, '00:00 space\n');
		const { out } = await run('rehearse', 'shows/club.yaml', '--script', file, '--quiet');
		expect(out).toBe('');
	});
});
