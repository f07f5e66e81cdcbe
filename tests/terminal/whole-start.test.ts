// The first screen on a real terminal: one key each, enter after it harmless, and every way out.

import { spawnSync } from 'node:child_process';
import { readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { KEY_APART_MS, lookAtJournal } from '../whole-night/driver.ts';
import { pause } from './pty-screen.ts';
import {
	cleanUpAfterEach,
	MODES_OFF,
	PATIENCE_MS,
	type ProgramOptions,
	scratch,
	startLive,
	startProgram,
	until,
} from './whole-program.ts';

cleanUpAfterEach();

const FOLDER = join(import.meta.dirname, '../..');

/** The program without a command, its page on the screen. */
async function startPage(options: ProgramOptions = {}) {
	const program = startProgram({ words: '', ...options });
	await program.screen.waitFor(/RACKSIDE .*\n(.*\n)*.*esc quit/, PATIENCE_MS);
	return program;
}

/** The number before what the page offers. */
function numberOf(text: string, offered: RegExp): string {
	const [, number = ''] = new RegExp(`^[> ] (\\d+) +${offered.source}`, 'm').exec(text) ?? [];
	return number;
}

const EXAMPLE = /Look around with the example/;
const REPORT = /The report so far/;

/** A data folder with the club show's first song under way. */
async function withOpenNight(): Promise<string> {
	const { data, record, signal, gone } = await startLive();
	await record('t 0', 'space');
	signal('SIGTERM');
	await gone();
	return data;
}

const kinds = (data: string) =>
	lookAtJournal(data).records.flatMap(({ e }) => e.map(({ k }) => k as string));

test.each(['node', 'launcher'] as const)('by %s: a number opens the example', async (by) => {
	const { screen, signal, afterwards } = await startPage({ by });
	expect(screen.modes()).toMatchObject({ isAlternateScreen: true, isCursorHidden: true });
	await screen.press(numberOf(screen.text(), EXAMPLE));
	await screen.waitFor('? all', PATIENCE_MS);
	signal('SIGTERM');
	expect(await afterwards()).toEqual({ code: 143, areSettingsKept: true });
	expect(screen.modes()).toEqual(MODES_OFF);
});

test.each([
	['in one go', async (send: (text: string) => void, number: string) => send(`${number}\r`)],
	[
		'a moment later',
		async (send: (text: string) => void, number: string) => {
			send(number);
			await pause(250);
			send('\r');
		},
	],
])('enter after the number, %s, is no key of the live screen', async (_, type) => {
	const { screen, data } = await startPage();
	await type(screen.send, numberOf(screen.text(), EXAMPLE));
	await screen.waitFor('? all', PATIENCE_MS);
	await pause(1600);
	expect(screen.text()).not.toContain('In hands now');
	// What enter does on that screen once it is meant for it.
	await screen.press('enter');
	await screen.waitFor('In hands now', PATIENCE_MS);
	await pause(KEY_APART_MS);
	await screen.press('enter');
	await until(() => kinds(data).includes('handed-over'), 'a hand-over');
});

test('up, down and enter choose too', async () => {
	const data = await withOpenNight();
	const { screen, afterwards } = await startPage({ data });
	expect(screen.rows()[3]).toMatch(/^> 1 +Go on with /);
	const number = Number(numberOf(screen.text(), REPORT));
	expect(number).toBeGreaterThan(1);
	for (let at = 1; at < number; at += 1) await screen.press('down');
	await screen.waitFor(new RegExp(`^> ${number} +The report so far`, 'm'), PATIENCE_MS);
	await screen.press('enter');
	expect((await afterwards()).areSettingsKept).toBe(true);
	expect(screen.text()).toContain('code 1');
});

test('the unfinished night comes first, says how far it is, and goes on', async () => {
	const data = await withOpenNight();
	const { screen, record } = await startPage({ data });
	const title = lookAtJournal(data).session.show.title;
	const songs = lookAtJournal(data).session.list.filter(({ kind }) => kind === 'song').length;
	expect(screen.rows()[3]?.trimEnd()).toBe(`> 1   Go on with ${title}`);
	expect(screen.rows()[4]).toMatch(
		new RegExp(`the example  unfinished, begun today \\d\\d:\\d\\d  song 1 of ${songs}: Harbour`),
	);
	await screen.press('1');
	await screen.waitFor('? all', PATIENCE_MS);
	await screen.waitFor(/SONG .*Harbour/, PATIENCE_MS);
	await record('i');
});

test('the report is printed below what the shell had', async () => {
	const data = await withOpenNight();
	const { screen, afterwards } = await startPage({ data, rows: 120 });
	await screen.press(numberOf(screen.text(), REPORT));
	const { code, areSettingsKept } = await afterwards();
	const report = spawnSync(process.execPath, ['dist/rackside.js', 'report'], {
		cwd: FOLDER,
		env: { ...process.env, RACKSIDE_DATA: data },
		encoding: 'utf8',
	});
	expect({ code, areSettingsKept }).toEqual({ code: report.status, areSettingsKept: true });
	expect(screen.text()).toContain('a shell\n# ');
	for (const line of report.stdout.split('\n').slice(0, 3)) expect(screen.text()).toContain(line);
	expect(screen.modes()).toEqual(MODES_OFF);
});

test("a show file of today in the working folder is tonight's show", async () => {
	const folder = scratch('today');
	const now = new Date();
	const two = (value: number) => String(value).padStart(2, '0');
	const today = `${now.getFullYear()}-${two(now.getMonth() + 1)}-${two(now.getDate())}`;
	const first = readFileSync(join(FOLDER, 'shows/first.yaml'), 'utf8');
	const named = (title: string, date: string) =>
		first.replace('First night', title).replace('2026-09-04', date);
	writeFileSync(join(folder, 'a.yaml'), named('Other evening', '2026-01-02'));
	writeFileSync(join(folder, 'b.yaml'), named('This evening', today));
	const line = `cd '${folder}'; '${process.execPath}' '${FOLDER}/dist/rackside.js'`;
	const { screen } = await startPage({ line });
	expect(screen.rows()[3]?.trimEnd()).toBe("> 1   Tonight's show: This evening");
	expect(screen.text()).not.toContain('Other evening');
	await screen.press('1');
	await screen.waitFor('? all', PATIENCE_MS);
});

test.each([
	['esc', 0],
	['q', 0],
	['ctrl-c', 130],
])('%s leaves the terminal as it was', async (key, code) => {
	const { screen, afterwards, data } = await startPage({ by: 'launcher' });
	await screen.press(key);
	expect(await afterwards()).toEqual({ code, areSettingsKept: true });
	expect(screen.modes()).toEqual(MODES_OFF);
	expect(screen.text()).toMatch(/^a shell\n/);
	expect(() => lookAtJournal(data)).toThrow('no night');
});

test.each([
	['SIGTERM', 143],
	['SIGHUP', 129],
	['SIGKILL', 137],
] as const)('%s leaves the terminal as it was', async (name, code) => {
	const { screen, signal, afterwards } = await startPage({ by: 'launcher' });
	signal(name);
	expect(await afterwards()).toEqual({ code, areSettingsKept: true });
	expect(screen.modes()).toEqual(MODES_OFF);
});

test('a new size and a terminal that others had are drawn anew', async () => {
	const { screen } = await startPage();
	screen.resize(40, 10);
	await screen.waitFor(
		(rows) => rows.length === 10 && /^1-2 open/.test(rows[9] ?? ''),
		PATIENCE_MS,
	);
	screen.stty('sane');
	screen.resize(80, 24);
	await screen.waitFor(
		(rows) => rows.length === 24 && /^1-2 open/.test(rows[23] ?? ''),
		PATIENCE_MS,
	);
	await until(() => / -icanon/.test(screen.stty('-a')), 'raw mode');
	await screen.press(numberOf(screen.text(), EXAMPLE));
	await screen.waitFor('? all', PATIENCE_MS);
});

test('a terminal that has stalled does not hold up a signal', async () => {
	const { screen, signal, gone } = await startPage();
	screen.stall();
	// More than the terminal takes while nobody reads it.
	for (let count = 0; count < 60; count += 1) {
		screen.send(count % 2 === 0 ? '\u001B[B' : '\u001B[A');
		await pause(20);
	}
	signal('SIGTERM');
	expect(await gone()).toBeLessThan(2000);
});
