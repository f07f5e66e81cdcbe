// Keys through a real terminal: what the line discipline, Node's reads and real timers make of them.

import { describe, expect, test } from 'vitest';
import type { PtyScreen } from './pty-screen.ts';
import { pause } from './pty-screen.ts';
import { closeAfterEach, shownKeys } from './shown-keys.ts';

closeAfterEach();

async function started(): Promise<PtyScreen> {
	const screen = shownKeys();
	await screen.waitFor('ready');
	return screen;
}

/** What the program has seen so far, once it has seen a last key that the test presses itself. */
async function shownUntil(screen: PtyScreen, last: string): Promise<string[]> {
	await screen.press(last);
	const rows = await screen.waitFor(`key ${last}`);
	return rows.filter((row) => row !== '' && row !== 'ready' && row !== `key ${last}`);
}

/** How many keys the shown bursts had. */
function burstKeys(rows: readonly string[]): number {
	return rows.reduce((sum, row) => sum + Number(/^burst (\d+)$/.exec(row)?.[1] ?? 0), 0);
}

describe('keys in a real terminal', { timeout: 20_000 }, () => {
	test('have their names', async () => {
		const screen = await started();
		const keys = ['space', 'enter', 'tab', 'backspace', 'delete', 'up', 'down', 'left', 'right'];
		const more = ['pageup', 'pagedown', 'home', 'end', 'f1', 'esc', 'n', 'N', 'é', '日', '['];
		await screen.press(...keys, ...more);
		expect(await shownUntil(screen, '.')).toEqual([...keys, ...more].map((key) => `key ${key}`));
	});

	test('an arrow cut in two is an arrow', async () => {
		const screen = await started();
		// The full 100 ms are held against a clock turned by hand; here a busy machine adds its own.
		for (const gapMs of [0, 25, 50]) {
			for (const [first, rest] of [
				['\u001B', '[B'],
				['\u001B[', 'B'],
				['\u001B', 'OB'],
			] as const) {
				screen.send(first);
				await pause(gapMs);
				screen.send(rest);
				await pause(60);
			}
		}
		const shown = await shownUntil(screen, '.');
		expect(shown).toEqual(Array.from({ length: 9 }, () => 'key down'));
	});

	test('Ctrl-Z is ignored, and Ctrl-C is told apart', async () => {
		const screen = await started();
		await screen.press('ctrl-z', 'a', 'ctrl-c', 'b');
		expect(await shownUntil(screen, '.')).toEqual(['key a', 'interrupt', 'key b']);
	});

	// The line of a Linux terminal holds 4,095 bytes: the second paste leaves three for the end.
	test.each([6, 4098, 9000])('an unmarked paste of %d keys lets none through', async (length) => {
		const screen = await started();
		screen.send('n\nq\n \n'.repeat(length / 6));
		await screen.waitFor((rows) => burstKeys(rows) >= length, 20_000);
		// What comes close behind a paste still counts as of it.
		await pause(400);
		const shown = await shownUntil(screen, '.');
		expect(burstKeys(shown), shown.join()).toBe(length);
		expect(shown.filter((row) => !row.startsWith('burst'))).toEqual([]);
	});

	test('a few keys at once, and one key held, are keys', async () => {
		const screen = await started();
		screen.send('b1\r');
		await pause(60);
		screen.send('nnnnnn');
		await pause(60);
		const shown = await shownUntil(screen, '.');
		expect(shown).toEqual(['key b', 'key 1', 'key enter', ...Array(6).fill('key n')]);
	});

	// The machine may hold the test's own keys back: what is held is only that all of them come.
	test('keys typed while the program was stopped are keys, and a paste meanwhile is none', async () => {
		const screen = await started();
		process.kill(screen.pid, 'SIGSTOP');
		await pause(200);
		for (const key of 'bnmde') {
			screen.send(key);
			await pause(400);
		}
		process.kill(screen.pid, 'SIGCONT');
		const typed = await shownUntil(screen, '.');
		expect(typed).toEqual(['key b', 'key n', 'key m', 'key d', 'key e']);
		process.kill(screen.pid, 'SIGSTOP');
		await pause(2000);
		screen.send('n\nq\n \n'.repeat(5));
		process.kill(screen.pid, 'SIGCONT');
		await screen.waitFor('burst 30');
		const shown = await shownUntil(screen, ',');
		expect(shown.slice(typed.length)).toEqual(['key .', 'burst 30']);
	});

	test('keys ten a second while the program was stopped are keys', async () => {
		const screen = await started();
		process.kill(screen.pid, 'SIGSTOP');
		for (const key of 'bnmderuo') {
			await pause(100);
			screen.send(key);
		}
		process.kill(screen.pid, 'SIGCONT');
		expect(await shownUntil(screen, '.')).toEqual(Array.from('bnmderuo', (key) => `key ${key}`));
	});

	test('a paste without end gives the keys back within half a second', async () => {
		const screen = await started();
		screen.send('\u001B[200~x');
		await screen.press('ctrl-c');
		await screen.waitFor('interrupt');
		// How soon is held against a clock turned by hand; here a busy machine adds its own.
		await screen.waitFor('paste "x"');
		expect(await shownUntil(screen, 'n')).toEqual(['interrupt', 'paste "x"']);
	});
});

describe('the screen that tests look at', { timeout: 20_000 }, () => {
	test('shows rows, cells, modes and size as the program has them', async () => {
		const screen = await started();
		expect(screen.rows().length).toBe(24);
		expect(screen.cell(0, 0)).toMatchObject({ text: 'r', isBold: false, foreground: -1 });
		expect(screen.modes()).toEqual({
			isAlternateScreen: true,
			isCursorHidden: true,
			isBracketedPaste: true,
			isSynchronized: false,
			isUnwrapped: true,
			isMouseOn: false,
			isFocusOn: false,
		});
		screen.resize(40, 10);
		expect(screen.rows().length).toBe(10);
		expect(screen.stty('size').trim()).toBe('10 40');
		await screen.press('q');
		expect(await screen.exit).toEqual({ code: 0, signal: 0 });
		expect(screen.hasExited()).toBe(true);
	});

	test('says what stood there when something is not seen', async () => {
		const screen = await started();
		await expect(screen.waitFor('never', 50)).rejects.toThrow(/never[\s\S]*still runs[\s\S]*ready/);
	});
});
