// The whole program where the terminal is not as it should be: stopped, changed by others, resized a
// hundred times, tiny, of another kind, or none at all. Numbers in brackets are those of the list of
// faults that the program must survive.

import { spawnSync } from 'node:child_process';
import { cpSync, readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { lookAtJournal } from '../whole-night/driver.ts';
import { pause, startPtyScreen } from './pty-screen.ts';
import {
	cleanUpAfterEach,
	MODES_OFF,
	PATIENCE_MS,
	scratch,
	startLive,
	startProgram,
	until,
} from './whole-program.ts';

cleanUpAfterEach();

const MODES_ON = { isAlternateScreen: true, isCursorHidden: true, isBracketedPaste: true };
const OTHERS_WORDS = '\u001B[?1049l\u001B[?25h\u001B[?2004l$ other words\r\n';

/** The rows without what moves by itself: clocks, and what counts down to something. */
function still(rows: readonly string[]): string[] {
	return rows.map((row) => row.replaceAll(/\d/g, '0'));
}

/** The process that has the show open, as its lock says. */
function lockHolder(data: string): number {
	const nights = join(data, 'nights');
	const lock = readdirSync(nights).find((name) => name.endsWith('.lock')) ?? '';
	return JSON.parse(readFileSync(join(nights, lock), 'utf8')).pid;
}

describe('a terminal that others had meanwhile', () => {
	test.each([
		['[39, 63] a stop', 'SIGCONT'],
		['[39, 61] a new size, as a multiplexer sends on coming back', 'resize'],
	])('%s', async (_, how) => {
		const program = await startLive({ by: 'launcher' });
		const { screen } = program;
		await program.record('t 0', 'space');
		await screen.waitFor('Harbour  start', PATIENCE_MS);
		// The last row comes last.
		await screen.waitFor(/space Ch1 .*\? all/, PATIENCE_MS);
		const before = still(screen.rows());
		if (how === 'SIGCONT') program.signal('SIGSTOP');
		screen.stty('sane');
		screen.writeFromOutside(OTHERS_WORDS);
		await screen.waitFor('$ other words');
		if (how === 'SIGCONT') program.signal('SIGCONT');
		else program.signal('SIGWINCH');
		await until(() => / -icanon/.test(screen.stty('-a')), 'raw mode');
		await screen.waitFor('? all', PATIENCE_MS);
		await until(() => screen.modes().isBracketedPaste, 'bracketed paste');
		expect(still(screen.rows())).toEqual(before);
		expect(screen.modes()).toMatchObject(MODES_ON);
		await program.record('i');
		program.signal('SIGTERM');
		expect(await program.afterwards()).toEqual({ code: 143, areSettingsKept: true });
		// What stood on the shell's own screen stands there still.
		if (how === 'SIGCONT') expect(screen.text()).toMatch(/a shell\n.*\$ other words\n/);
	});

	test('[39] raw mode taken away, and then a line', async () => {
		const program = await startLive();
		const { screen } = program;
		await program.record('t 0');
		screen.stty('sane');
		const records = lookAtJournal(program.data).records.length;
		screen.send('i\r');
		await until(() => / -icanon/.test(screen.stty('-a')), 'raw mode');
		// The key that waited for the line's end counts.
		await until(() => lookAtJournal(program.data).records.length > records, 'the key');
		await program.record('space');
	});

	test('[40] Ctrl-Z does nothing, and Ctrl-C ends', async () => {
		const program = await startLive();
		await program.screen.press('ctrl-z');
		const before = await program.record('t 0');
		await program.screen.press('ctrl-c');
		expect(await program.afterwards()).toEqual({ code: 130, areSettingsKept: true });
		expect(lookAtJournal(program.data)).toEqual(before);
	});

	test('[61] left and come back to, inside a multiplexer', async () => {
		const socket = join(scratch('tmux'), 's');
		const tmux = (...words: string[]) =>
			spawnSync('tmux', ['-S', socket, '-f', '/dev/null', ...words], { encoding: 'utf8' });
		if (tmux('-V').status !== 0) return;
		const attached = (words: string[]) =>
			startPtyScreen({ command: 'tmux', args: ['-S', socket, '-f', '/dev/null', ...words] });
		const data = scratch();
		const line = `RACKSIDE_DATA='${data}' '${process.execPath}' dist/rackside.js run shows/club.yaml; echo "code $?"; exec sleep 60`;
		const first = attached(['new-session', line]);
		try {
			await first.waitFor('? all', PATIENCE_MS);
			await first.press('t', '0');
			const before = still(first.rows().slice(0, 20));
			tmux('detach-client');
			await first.exit;
			const second = attached(['attach']);
			try {
				await second.waitFor('? all', PATIENCE_MS);
				await second.press('space');
				await until(() => lookAtJournal(data).session.phase.value === 'song', 'the song');
				expect(before.length).toBe(20);
				await second.press('ctrl-c');
				await second.waitFor('code 130', PATIENCE_MS);
				expect(second.text()).not.toContain('? all');
			} finally {
				await second.close();
			}
		} finally {
			tmux('kill-server');
			await first.close();
		}
	});
});

// tmux 3.3 puts the cursor back where the other screen was entered, left already or not (seen in it).
test.each(['HUP', 'INT', 'TERM'] as const)(
	'[36, 61] after %s the farewell stays, and the shell goes on below it, inside a multiplexer',
	async (name) => {
		const socket = join(scratch('tmux'), 's');
		const tmux = (...words: string[]) =>
			spawnSync('tmux', ['-S', socket, '-f', '/dev/null', ...words], { encoding: 'utf8' });
		if (tmux('-V').status !== 0) return;
		const data = scratch();
		const shell = `echo before; RACKSIDE_DATA='${data}' dist/launch.sh run shows/club.yaml; echo "code $?"; exec sleep 60`;
		const screen = startPtyScreen({
			command: 'tmux',
			args: ['-S', socket, '-f', '/dev/null', 'new-session', shell],
		});
		try {
			await screen.waitFor('? all', PATIENCE_MS);
			await screen.press('t', '0');
			process.kill(lockHolder(data), `SIG${name}`);
			await screen.waitFor(/code \d+/, PATIENCE_MS);
			const rows = screen.rows().filter((row) => row !== '');
			expect(rows.slice(0, 3)).toEqual([
				'before',
				expect.stringMatching(/^The night stays open\. rackside or rackside run/),
				expect.stringMatching(/^code 1\d\d$/),
			]);
		} finally {
			tmux('kill-server');
			await screen.close();
		}
	},
);

describe('sizes', () => {
	test('[51] three hundred: the last one is right, and no key is lost', async () => {
		const program = await startLive();
		const { screen } = program;
		await program.record('t 0', 'space');
		const records = lookAtJournal(program.data).records.length;
		const written = screen.rawOutput().length;
		const beganMs = performance.now();
		let keys = 0;
		for (let count = 0; count < 300; count += 1) {
			screen.resize(60 + (count % 60), 20 + (count % 20));
			if (count % 60 === 30) {
				// The same key counts once within 300 ms.
				await pause(320);
				screen.send('i');
				keys += 1;
			}
			await pause(2);
		}
		const seconds = (performance.now() - beganMs) / 1000;
		// A frame begins so: ESC[?2026h opens a synchronised one.
		const frames = screen.rawOutput().slice(written).split('\u001B[?2026h').length - 1;
		// At most 30 changes a second are drawn; as many again are the clock's, the keys', and slack.
		expect(frames).toBeLessThan(60 * seconds);
		screen.resize(100, 30);
		await until(() => lookAtJournal(program.data).records.length === records + keys, 'every key');
		// What a program shows that had this size from the start, but for times.
		const other = await startLive({ data: copyOf(program.data), columns: 100, rows: 30 });
		await other.screen.waitFor('Harbour  start', PATIENCE_MS);
		const wanted = but(other.screen.rows());
		await screen.waitFor((rows) => but(rows) === wanted, PATIENCE_MS);
	});

	test.each([
		[0, 0],
		[1, 1],
		[3, 2],
		[24, 1],
	])(
		'[52] %i by %i: no fault, the keys work, and 80 by 24 is whole again',
		async (columns, rows) => {
			const size = (wide: number, high: number) => ['cols', `${wide}`, 'rows', `${high}`];
			const tiny = size(columns, rows);
			const program = startProgram({ line: `stty ${tiny.join(' ')}; PROGRAM` });
			const { screen } = program;
			await until(() => hasNight(program.data), 'a night');
			await program.record('t 0', 'space');
			screen.stty(...size(80, 24));
			await screen.waitFor(isWhole, PATIENCE_MS);
			screen.stty(...tiny);
			await program.record('i');
			screen.stty(...size(80, 24));
			await screen.waitFor(isWhole, PATIENCE_MS);
			program.signal('SIGTERM');
			expect(await program.afterwards()).toEqual({ code: 143, areSettingsKept: true });
			expect(screen.modes()).toEqual(MODES_OFF);
		},
	);
});

function isWhole(rows: readonly string[]): boolean {
	return (
		rows.length === 24 &&
		rows.some((row) => /^SONG .*Harbour {2}start .*:\d\d$/.test(row)) &&
		rows.at(-1)?.trimEnd().endsWith('? all') === true
	);
}

/** The screen without what moves by itself, and without its last entry. */
function but(rows: readonly string[]): string {
	return still(rows)
		.filter((row) => !row.startsWith('LAST'))
		.join('\n');
}

function hasNight(data: string): boolean {
	try {
		return lookAtJournal(data).records.length > 0;
	} catch {
		return false;
	}
}

/** The same nights in another folder, so that two programs can have them at once. */
function copyOf(data: string): string {
	const copy = scratch('copy');
	cpSync(data, copy, { recursive: true, filter: (path) => !path.includes('lock') });
	return copy;
}
