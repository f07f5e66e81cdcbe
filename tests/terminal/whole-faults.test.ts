// Bugs of ours in the whole program, put in from outside: the night is kept, the terminal is put right,
// the bug is said in plain words with its trace in a file, and the next start stands where this one did.
// Numbers in brackets are those of the list of faults that the program must survive.

import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { lookAtJournal } from '../whole-night/driver.ts';
import type { Program } from './whole-program.ts';
import {
	cleanUpAfterEach,
	MODES_OFF,
	mustGoOn,
	startLive,
	startProgram,
	until,
} from './whole-program.ts';

cleanUpAfterEach();

function withFault(under: string) {
	return {
		NODE_OPTIONS: '--import ./tests/terminal/programs/fault-on-signal.ts',
		FAULT_UNDER: under,
	};
}

async function mustHaveSaidSo({ screen, home, afterwards }: Program): Promise<void> {
	// A bug of ours is 70: BSD sysexits, EX_SOFTWARE.
	expect(await afterwards()).toEqual({ code: 70, areSettingsKept: true });
	expect(screen.modes()).toEqual(MODES_OFF);
	expect(screen.text()).toMatch(/^a shell\nrackside has a fault of its own and stopped/);
	expect(screen.rawOutput()).not.toContain('thrown on purpose');
	const traces = readdirSync(home).filter((name) => name.startsWith('rackside-trace-'));
	expect(traces.length).toBe(1);
	expect(readFileSync(join(home, traces[0] ?? ''), 'utf8')).toContain('thrown on purpose');
}

test.each([
	['drawing', 'ScreenView'],
	['drawing, and in drawing the error', 'ScreenView ErrorOverview'],
	['the renderer', 'renderFrame'],
	['what a key does', 'actionOf'],
	['a timer', 'timer'],
	['a promise', 'rejection'],
])('[41, 42] a bug in %s', async (_, under) => {
	const program = await startLive({ env: withFault(under) });
	await program.record('t 0', 'space');
	program.signal('SIGUSR2');
	// What is typed after the end goes to the shell.
	await program.screen.press('i', 'm', 'x', 'space');
	await mustHaveSaidSo(program);
	expect(program.screen.text()).toContain('The night stays open');
	await mustGoOn(program.data, lookAtJournal(program.data));
});

test.each([
	['before the screen', 'openNight'],
	['in the screen’s start', 'startUi'],
	['in an effect of the first frame', 'onChange'],
])('[37, 41] a bug %s', async (_, under) => {
	const program = startProgram({ env: { ...withFault(under), FAULT_AT_ONCE: '1' } });
	await mustHaveSaidSo(program);
});

test('[38] memory that is never given back', async () => {
	const env = withFault('heap');
	const options = `${env.NODE_OPTIONS} --max-old-space-size=60`;
	const program = await startLive({ by: 'launcher', env: { ...env, NODE_OPTIONS: options } });
	const before = await program.record('t 0', 'space');
	program.signal('SIGUSR2');
	// Node aborts, and ABRT is signal 6 (POSIX, the `kill` utility).
	expect(await program.afterwards()).toEqual({ code: 134, areSettingsKept: true });
	expect(program.screen.modes()).toEqual(MODES_OFF);
	expect(program.screen.text()).toContain('rackside stopped unexpectedly');
	await until(() => program.pid() === undefined, 'the end of the program');
	expect(lookAtJournal(program.data)).toEqual(before);
	await mustGoOn(program.data, before);
});
