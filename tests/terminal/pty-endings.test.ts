// Every way a program can end, in a real terminal: the exit code, the time it takes, and the
// terminal as it was before.

import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { LEAVE_MODES, RESET } from '../../src/terminal/terminal-modes.ts';
import { scratchFolder } from '../disk/scratch-folder.ts';
import type { PtyScreen } from './pty-screen.ts';
import { pause } from './pty-screen.ts';
import { closeAfterEach, shownKeys } from './shown-keys.ts';

closeAfterEach();

const MODES_OFF = {
	isAlternateScreen: false,
	isCursorHidden: false,
	isBracketedPaste: false,
	isSynchronized: false,
	isUnwrapped: false,
	isMouseOn: false,
	isFocusOn: false,
};

// A step of the start, in milliseconds, at which a signal is tried; small for a thorough run.
const START_STEP_MS = Number(process.env.START_STEP_MS ?? 50);

async function started(...args: Parameters<typeof shownKeys>): Promise<PtyScreen> {
	const screen = shownKeys(...args);
	await screen.waitFor('ready', 10_000);
	return screen;
}

function journalFile(): string {
	return join(scratchFolder(), 'journal');
}

function journalLines(file: string): string[] {
	return readFileSync(file, 'utf8').split('\n').filter(Boolean);
}

describe('a signal', { timeout: 30_000 }, () => {
	// POSIX, the `kill` utility: HUP 1, INT 2, QUIT 3, TERM 15; exit code 128 + n.
	test.each([
		['SIGHUP', 129],
		['SIGINT', 130],
		['SIGQUIT', 131],
		['SIGTERM', 143],
	] as const)(
		'%s: the journal is synced, the terminal put right, code %d',
		async (signal, code) => {
			const journal = journalFile();
			const screen = await started([], { env: { SHOWN_KEYS_JOURNAL: journal } });
			await screen.press('n');
			screen.kill(signal);
			const tookMs = await screen.gone();
			expect(await screen.exit).toEqual({ code, signal: 0 });
			expect(tookMs).toBeLessThan(1000);
			expect(screen.modes()).toEqual(MODES_OFF);
			expect(screen.text()).toContain('bye: signal, kept');
			expect(journalLines(journal)).toEqual(['key n', 'sync']);
			expect(screen.rawOutput()).toContain(LEAVE_MODES);
			expect(screen.rawOutput()).not.toContain(RESET);
		},
	);

	test('and two more within 10 ms are one clean end', async () => {
		const screen = await started();
		screen.kill('SIGTERM');
		await pause(3);
		screen.kill('SIGTERM');
		await pause(3);
		screen.kill('SIGINT');
		// A busy machine hands over what is pending by number, so either may be the first.
		expect([130, 143]).toContain((await screen.exit).code);
		expect(screen.rawOutput().split('bye').length).toBe(2);
		expect(screen.modes()).toEqual(MODES_OFF);
	});

	test('at any moment of the start leaves no mode on', async () => {
		for (let atMs = 5; atMs <= 500; atMs += START_STEP_MS) {
			const screen = shownKeys();
			await pause(atMs);
			screen.kill('SIGTERM');
			const { code, signal } = await screen.exit;
			// Before the first line of ours has run, the signal itself is the end.
			expect(signal === 15 || code === 143, `${atMs} ms: ${code}, ${signal}`).toBe(true);
			expect(screen.modes(), `${atMs} ms`).toEqual(MODES_OFF);
			expect(screen.hasExited()).toBe(true);
		}
	});
});

describe('the terminal settings', { timeout: 30_000 }, () => {
	test.each(['q', 'x'])('are as before after the key %s', async (key) => {
		const screen = await started([], { line: 'PROGRAM; echo code $?; stty -a' });
		await screen.press(key);
		const rows = await screen.waitFor(/(^|\s)icanon/);
		expect(rows.join('\n')).toMatch(/code (0|70)/);
		expect(rows.join('\n')).toMatch(/(^|\s)echo\s/);
		expect(rows.join('\n')).toMatch(/(^|\s)isig\s/);
	});
});

describe('a fault of ours', { timeout: 30_000 }, () => {
	test('while running: journal first, terminal put right, said in plain text, code 70', async () => {
		const journal = journalFile();
		const screen = await started([], { env: { SHOWN_KEYS_JOURNAL: journal } });
		await screen.press('x');
		expect((await screen.exit).code).toBe(70);
		expect(screen.modes()).toEqual(MODES_OFF);
		expect(screen.text()).toContain('bye: fault, kept Error: thrown on purpose');
		expect(journalLines(journal)).toEqual(['key x', 'sync']);
	});

	test('before the screen is there', async () => {
		const screen = shownKeys(['--start-fault']);
		expect((await screen.exit).code).toBe(70);
		expect(screen.text()).toContain('bye: fault, kept Error: could not start');
		expect(screen.modes()).toEqual(MODES_OFF);
	});

	test('in taking the screen down: everything is reset', async () => {
		for (const flag of ['--failed-unmount', '--hung-unmount']) {
			const screen = await started([flag]);
			await screen.press('q');
			expect((await screen.exit).code, flag).toBe(0);
			expect(screen.rawOutput(), flag).toContain(RESET);
			expect(screen.modes(), flag).toEqual(MODES_OFF);
		}
	});
});

describe('a journal that cannot be kept', { timeout: 30_000 }, () => {
	test.each([
		['--failed-journal', 'a second', 1000],
		// It waits a second and a half; the rest is what a busy machine may add.
		['--hung-journal', 'two and a half', 2500],
	])('%s: code 3, within %s', async (flag, _, mostMs) => {
		const screen = await started([flag]);
		await screen.press('q');
		expect(await screen.gone()).toBeLessThan(mostMs);
		expect((await screen.exit).code).toBe(3);
		expect(screen.text()).toContain('bye: quit, not kept');
		expect(screen.modes()).toEqual(MODES_OFF);
	});
});

describe('a terminal that is gone', { timeout: 30_000 }, () => {
	test('window closed: ends within a second, journal synced', async () => {
		const journal = journalFile();
		const screen = await started([], { env: { SHOWN_KEYS_JOURNAL: journal } });
		await screen.press('n');
		screen.hangUp();
		expect(await screen.gone()).toBeLessThan(1000);
		expect(journalLines(journal)).toEqual(['key n', 'sync']);
	});

	test('window closed with hang-ups ignored: ends within two seconds, and does not spin', async () => {
		const journal = journalFile();
		const screen = await started([], {
			line: "trap '' HUP; exec PROGRAM",
			env: { SHOWN_KEYS_JOURNAL: journal },
		});
		await screen.press('n');
		screen.hangUp();
		expect(await screen.gone()).toBeLessThan(2000);
		expect(journalLines(journal)).toEqual(['key n', 'sync']);
	});

	test('input ended: one clean end', async () => {
		const screen = shownKeys([], { line: 'sleep 0.5 | PROGRAM; echo code $?' });
		await screen.waitFor('code 129', 10_000);
		expect(screen.text()).toContain('bye: terminal-lost, kept');
		expect(screen.modes()).toEqual(MODES_OFF);
	});

	test('output closed by its reader: one clean end', async () => {
		const screen = shownKeys(['--flood'], {
			line: '{ PROGRAM; echo code $? >&2; } | head -c 2000 >/dev/null',
		});
		await screen.waitFor('code 129', 10_000);
	});
});

describe('a stop', { timeout: 30_000 }, () => {
	test('with the shell in between: raw mode, modes and screen are back within 200 ms', async () => {
		const screen = await started([], { line: 'PROGRAM; true' });
		await screen.press('n');
		await screen.waitFor('key n');
		const before = screen.rows();
		const [pid = 0] = screen.childPids();
		process.kill(pid, 'SIGSTOP');
		await pause(50);
		screen.stty('sane');
		screen.writeFromOutside('\u001B[?1049l\u001B[?25h\u001B[?2004l$ other words\r\n');
		await screen.waitFor('$ other words');
		process.kill(pid, 'SIGCONT');
		await pause(200);
		expect(screen.stty('-a')).toMatch(/-icanon/);
		expect(screen.rows()).toEqual(before);
		expect(screen.modes()).toMatchObject({
			isAlternateScreen: true,
			isCursorHidden: true,
			isBracketedPaste: true,
		});
		await screen.press('a');
		await screen.waitFor('key a');
	});
});

describe('a stalled terminal', { timeout: 30_000 }, () => {
	test('stops neither the keys nor the way out', async () => {
		const journal = journalFile();
		const screen = await started(['--flood'], { env: { SHOWN_KEYS_JOURNAL: journal } });
		screen.stall();
		await pause(1500);
		for (const key of ['a', 'b', 'c']) {
			screen.send(key);
			await pause(100);
			expect(journalLines(journal)).toContain(`key ${key}`);
		}
		screen.kill('SIGTERM');
		expect(await screen.gone()).toBeLessThan(1200);
		expect(journalLines(journal)).toContain('sync');
		screen.unstall();
	});

	test('shows the newest state once it reads again, and skips those between', async () => {
		const screen = await started(['--flood']);
		const drawn = (): number => screen.rawOutput().split('\u001B[2J').length - 1;
		screen.stall();
		const before = { newest: newestFlood(screen), drawn: drawn() };
		await pause(2000);
		screen.unstall();
		await screen.waitFor(() => newestFlood(screen) > before.newest + 60);
		// A state every 20 ms: about a hundred while stalled, of which 64 KB were queued.
		expect(drawn() - before.drawn).toBeLessThan(40);
		screen.kill('SIGTERM');
		expect((await screen.exit).code).toBe(143);
		expect(screen.modes()).toEqual(MODES_OFF);
	});
});

function newestFlood(screen: PtyScreen): number {
	const numbers = screen.rows().map((row) => Number(/^flood (\d+) /.exec(row)?.[1] ?? 0));
	return Math.max(...numbers);
}
