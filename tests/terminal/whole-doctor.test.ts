// The doctor on a real terminal: keys that are held and pressed, and every way out of its questions.

import { expect, test } from 'vitest';
import { pause } from './pty-screen.ts';
import { cleanUpAfterEach, MODES_OFF, PATIENCE_MS, startProgram, until } from './whole-program.ts';

cleanUpAfterEach();

const doctor = (by: 'node' | 'launcher' = 'node') =>
	startProgram({ by, words: 'doctor', rows: 60 });

/** As a keyboard sends a key that is held down for two seconds. */
async function hold(send: (bytes: string) => void, key: string): Promise<void> {
	send(key);
	await pause(450);
	for (let count = 0; count < 40; count += 1) {
		send(key);
		await pause(40);
	}
}

test.each(['node', 'launcher'] as const)(
	'by %s: a held key is measured, a switch read',
	async (by) => {
		const { screen, afterwards } = doctor(by);
		await screen.waitFor('Key repeat: hold', PATIENCE_MS);
		await hold(screen.send, 'j');
		await screen.waitFor('Foot switch: press', PATIENCE_MS);
		const words = screen.text().replaceAll(/\s+/g, ' ');
		const [, delay, interval] =
			/begins after (\d+) ms, then every (\d+) ms; a held key counts once/.exec(words) ?? [];
		// A machine that others hold busy reads any of the presses later than it was sent.
		expect(Number(delay)).toBeGreaterThan(350);
		expect(Number(delay)).toBeLessThan(700);
		expect(Number(interval)).toBeGreaterThan(30);
		expect(Number(interval)).toBeLessThan(100);
		await screen.press('pagedown', 'pageup');
		// A key that the program reads nothing from: F13 (xterm's CSI 25 ~).
		screen.send('\u001B[25~');
		await screen.waitFor(
			/foot switch +PgDn \(next\), PgUp \(one cue back\), a key that/,
			PATIENCE_MS,
		);
		expect((await afterwards()).areSettingsKept).toBe(true);
		expect(screen.modes()).toEqual(MODES_OFF);
	},
);

test('what the terminal draws is tried, and nothing of that stays on the screen', async () => {
	const { screen } = doctor();
	const asked = '♭▀é\u001B[6n';
	await until(() => screen.rawOutput().includes(asked), 'the question');
	// The test's terminal does not answer by itself. As an xterm would, three cells further (ECMA-48, 8.3.14 CPR).
	screen.send('\u001B[2;4R');
	await screen.waitFor(/fine +letters +UTF-8, tried here/, PATIENCE_MS);
	await screen.waitFor('Key repeat: hold', PATIENCE_MS);
	expect(screen.text()).not.toContain('♭');
});

test('n says that there is no switch', async () => {
	const { screen, afterwards } = doctor();
	await screen.waitFor('Key repeat: hold', PATIENCE_MS);
	await screen.press('k');
	await screen.waitFor('Foot switch: press', PATIENCE_MS);
	await screen.press('n');
	await screen.waitFor(/fine +foot switch +none/, PATIENCE_MS);
	expect((await afterwards()).areSettingsKept).toBe(true);
});

test.each([
	['esc leaves both out and says the rest', 'esc', null],
	['Ctrl-C ends at once', 'ctrl-c', 130],
])('%s', async (_, key, code) => {
	const { screen, afterwards } = doctor('launcher');
	await screen.waitFor('Key repeat: hold', PATIENCE_MS);
	await until(() => / -icanon/.test(screen.stty('-a')), 'raw mode');
	await screen.press(key);
	const found = await afterwards();
	expect(found.areSettingsKept).toBe(true);
	if (code === null) {
		expect([0, 1]).toContain(found.code);
		expect(screen.text()).toMatch(/the rest is fine\.\ncode [01]/);
		expect(screen.text().match(/left out, as you asked/g)).toHaveLength(2);
	} else expect(found.code).toBe(code);
	expect(screen.modes()).toEqual(MODES_OFF);
});

test.each(['SIGTERM', 'SIGKILL', 'SIGHUP'] as const)(
	'%s leaves the terminal right',
	async (name) => {
		const { screen, signal, afterwards } = doctor('launcher');
		await screen.waitFor('Key repeat: hold', PATIENCE_MS);
		await until(() => / -icanon/.test(screen.stty('-a')), 'raw mode');
		signal(name);
		const { code, areSettingsKept } = await afterwards();
		expect(code).toBeGreaterThan(128);
		expect(areSettingsKept).toBe(true);
		expect(screen.modes()).toEqual(MODES_OFF);
	},
);
