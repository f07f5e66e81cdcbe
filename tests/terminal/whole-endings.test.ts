// Every way the whole program can be ended from outside, in a terminal that a shell had before: exit
// code, terminal settings and modes, the journal, and the next start. Numbers in brackets are those of
// the list of faults that the program must survive.

import {
	chownSync,
	existsSync,
	readdirSync,
	readFileSync,
	readlinkSync,
	renameSync,
	rmSync,
	writeFileSync,
} from 'node:fs';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { whyNoInjection } from '../campaigns/injected-faults.ts';
import { lookAtJournal, mustShow, wordsOf } from '../whole-night/driver.ts';
import { pause } from './pty-screen.ts';
import {
	cleanUpAfterEach,
	MODES_OFF,
	mustGoOn,
	PATIENCE_MS,
	scratch,
	startLive,
	startProgram,
	until,
} from './whole-program.ts';

cleanUpAfterEach();

// A step of the start, in milliseconds, at which a signal is tried; small for a thorough run.
const START_STEP_MS = Number(process.env.START_STEP_MS ?? 70);

// The program takes at most a second; the rest is what a busy machine may add.
const A_SECOND_AND_SLACK_MS = 5000;

// POSIX, the `kill` utility: HUP 1, INT 2, QUIT 3, ABRT 6, KILL 9, TERM 15; SEGV is 11 on
// Linux (signal(7), from memory). Exit code 128 + n.
describe('a signal', () => {
	test.each([
		['node', 'SIGHUP', 129],
		['node', 'SIGINT', 130],
		['node', 'SIGQUIT', 131],
		['node', 'SIGTERM', 143],
		['launcher', 'SIGTERM', 143],
	] as const)('[34, 36] by %s, %s: code %i, and where to go on', async (by, signal, code) => {
		const program = await startLive({ by });
		const before = await program.record('t 0', 'space', 'space');
		program.signal(signal);
		expect(await program.gone()).toBeLessThan(A_SECOND_AND_SLACK_MS);
		expect(await program.afterwards()).toEqual({ code, areSettingsKept: true });
		expect(program.screen.modes()).toEqual(MODES_OFF);
		expect(program.screen.text()).toMatch(/^a shell\nThe night stays open. .*\ncode/);
		expect(lookAtJournal(program.data)).toEqual(before);
	});

	test.each([
		['SIGKILL', 137],
		['SIGABRT', 134],
		['SIGSEGV', 139],
	] as const)('[38, 60] %s: the launcher puts everything right', async (signal, code) => {
		const program = await startLive({ by: 'launcher' });
		const before = await program.record('t 0', 'space', 'space');
		program.signal(signal);
		expect(await program.afterwards()).toEqual({ code, areSettingsKept: true });
		expect(program.screen.modes()).toEqual(MODES_OFF);
		expect(program.screen.text()).toMatch(/^a shell\n(.*\n)?rackside stopped unexpectedly/);
		// The extended keyboard is never switched on (kitty's keyboard protocol: CSI > u, CSI = u).
		const sequences = program.screen.rawOutput().split('\u001B[');
		expect(sequences.filter((one) => /^[>=<]\d*(;\d*)?u/.test(one))).toEqual([]);
		expect(lookAtJournal(program.data)).toEqual(before);
	});

	// At the first Node opens its debugger, at the second it ends (Node's manual, Signal events).
	test.each(['SIGUSR1', 'SIGUSR2'] as const)(
		'%s changes nothing, and nobody can listen in',
		async (signal) => {
			const program = await startLive();
			await program.record('t 0', 'space');
			program.signal(signal);
			await pause(300);
			expect(program.screen.text()).toMatch(/^SONG +1 of/m);
			expect(program.screen.rawOutput()).not.toMatch(/debugger|ws:/i);
			expect(listeningOf(program.pid() as number)).toEqual([]);
			await program.record('space');
		},
	);

	test('[38] KILL without the launcher: the next start goes on', async () => {
		const program = await startLive();
		const before = await program.record('t 0', 'space', 'space');
		program.signal('SIGKILL');
		expect((await program.afterwards()).code).toBe(137);
		await mustGoOn(program.data, before);
	});

	test.each(['node', 'launcher'] as const)('[36] several at once, by %s', async (by) => {
		const program = await startLive({ by });
		const before = await program.record('t 0', 'space');
		for (const signal of ['SIGTERM', 'SIGTERM', 'SIGINT', 'SIGHUP'] as const) {
			if (program.pid() !== undefined) program.signal(signal);
			await pause(3);
		}
		const { code, areSettingsKept } = await program.afterwards();
		// A busy machine hands over what is pending by number, so any may be the first.
		expect([129, 130, 143]).toContain(code);
		expect(areSettingsKept).toBe(true);
		expect(program.screen.rawOutput().split('The night stays open').length).toBe(2);
		expect(program.screen.modes()).toEqual(MODES_OFF);
		expect(lookAtJournal(program.data)).toEqual(before);
	});

	test('[37] at any moment of the start leaves no mode on', async () => {
		for (let atMs = 20; atMs <= 500; atMs += START_STEP_MS) {
			const program = startProgram();
			const isThere = () => program.pid() !== undefined;
			await program.screen.waitFor(isThere, PATIENCE_MS);
			await pause(atMs);
			program.signal('SIGTERM');
			const found = await program.afterwards();
			expect(found, `${atMs} ms`).toEqual({ code: 143, areSettingsKept: true });
			expect(program.screen.modes(), `${atMs} ms`).toEqual(MODES_OFF);
		}
	});
});

describe('a terminal that is gone', () => {
	test.each([
		['node', 'PROGRAM'],
		['launcher', 'PROGRAM'],
		['node', "trap '' HUP; exec PROGRAM"],
	] as const)('[34, 35, 45] window closed, by %s, as %s', async (by, line) => {
		const program = await startLive({ by, line });
		const before = await program.record('t 0', 'space', 'space');
		program.screen.hangUp();
		expect(await program.gone()).toBeLessThan(A_SECOND_AND_SLACK_MS);
		expect(lookAtJournal(program.data)).toEqual(before);
		await mustGoOn(program.data, before);
	});

	test('[34] the launcher killed, and the shell with it', async () => {
		const program = await startLive({ by: 'launcher' });
		const before = await program.record('t 0', 'space');
		process.kill(program.screen.childPids()[0] ?? Number.NaN, 'SIGKILL');
		await program.gone();
		expect(lookAtJournal(program.data)).toEqual(before);
		await mustGoOn(program.data, before);
	});
});

describe('the exit code', () => {
	test('is 1 for a night that stays open, 0 for a show that was ended', async () => {
		const data = scratch();
		const left = await startLive({ data });
		await left.screen.press('q', 'enter');
		expect(await left.afterwards()).toEqual({ code: 1, areSettingsKept: true });
		expect(left.screen.text()).toContain('The night stays open');
		const ended = await startLive({ data });
		await ended.screen.press('q', 'e');
		expect(await ended.afterwards()).toEqual({ code: 0, areSettingsKept: true });
		expect(ended.screen.text()).toContain('The show is closed');
	});

	test.each(['', 'somewhere'])(
		'a night of somebody whose home is %j is told to be unsafe, at its start and when it was left',
		async (HOME) => {
			const env = { HOME, RACKSIDE_DATA: undefined, TMPDIR: scratch() };
			const { screen, afterwards } = await startLive({ env, columns: 120 });
			const told = 'This system knows no home folder of yours';
			expect(screen.text()).toContain(told);
			await screen.press('q', 'enter');
			await afterwards();
			expect(screen.text()).toContain(told);
		},
	);

	test('a night in a folder that lives in memory is told to be unsafe all along, and when it is left', async () => {
		if (!existsSync('/dev/shm')) return;
		const data = scratch('whole', '/dev/shm');
		for (const keys of [['t', '0'], ['i']]) {
			const { screen, afterwards } = await startLive({ data });
			await screen.waitFor(
				/^NOT SAFE +a restart of the machine empties \/dev\/.*nights/m,
				PATIENCE_MS,
			);
			await screen.press(...keys);
			await screen.waitFor(/^NOT SAFE/m, PATIENCE_MS);
			await screen.press('q', 'enter');
			expect(await afterwards()).toEqual({ code: 1, areSettingsKept: true });
			expect(screen.text().replaceAll('\n', ' ')).toContain('Written, not safe: a restart of');
		}
	});

	// Nights go on in the folder for temporary files when their own takes none.
	const nowhere = { TMPDIR: '/dev/null' };
	const notSaved = /NOT SAVED/;

	test('[22] is 3 where no folder can be made, and that is said from the start', async () => {
		const data = join(scratch(), 'a-file');
		writeFileSync(data, '');
		const { screen, afterwards } = await startLive({ data, env: nowhere });
		await screen.waitFor(notSaved, PATIENCE_MS);
		await screen.press('t', '0', 'q');
		await screen.waitFor(/enter quit, \d+ steps not saved/, PATIENCE_MS);
		await screen.press('enter');
		expect(await afterwards()).toEqual({ code: 3, areSettingsKept: true });
		expect(screen.text()).toContain('could not be saved');
		expect(screen.text()).not.toContain('stays open');
	});

	test('[14] is 3 where files may not grow', async () => {
		const { screen, afterwards } = await startLive({ line: 'ulimit -f 8; PROGRAM' });
		await screen.waitFor(notSaved, PATIENCE_MS);
		// Each further attempt to write is answered by a signal, too (SIGXFSZ); one comes every second.
		// A song that is on shows that the program goes on meanwhile.
		await screen.press('t', '0', 'space');
		const times = new Set<string>();
		await screen.waitFor((rows) => {
			for (const row of rows) for (const time of row.match(/\d:\d\d of \d/) ?? []) times.add(time);
			return times.size > 3;
		}, PATIENCE_MS);
		await screen.press('q', 'enter');
		expect(await afterwards()).toEqual({ code: 3, areSettingsKept: true });
	});

	test('[23] is 3 where the folder went away meanwhile and there is no other', async () => {
		const { screen, data, record, afterwards } = await startLive({ env: nowhere });
		await record('t 0', 'space');
		renameSync(data, `${data}-moved`);
		writeFileSync(data, '');
		await screen.press('space', 'i');
		await screen.waitFor(notSaved, PATIENCE_MS);
		await screen.press('q', 'enter');
		expect(await afterwards()).toEqual({ code: 3, areSettingsKept: true });
		rmSync(`${data}-moved`, { recursive: true });
	});

	test('[23] is 1 where another folder could be found, and the next start goes on there', async () => {
		const { screen, data, record, afterwards, home } = await startLive();
		const before = await record('t 0', 'space');
		renameSync(data, `${data}-moved`);
		writeFileSync(data, '');
		await screen.press('q', 'enter');
		expect(await afterwards()).toEqual({ code: 1, areSettingsKept: true });
		const next = await startLive({ data, env: { TMPDIR: home } });
		await mustShow(next.screen, wordsOf(before.session));
		rmSync(`${data}-moved`, { recursive: true });
	});

	test.runIf(process.getuid?.() === 0)(
		'a night that somebody else put there is not taken up, and that is said',
		async () => {
			const { screen, data, record, afterwards, home } = await startLive();
			await record('t 0', 'space');
			renameSync(data, `${data}-moved`);
			writeFileSync(data, '');
			await screen.press('q', 'enter');
			await afterwards();
			const [folder = ''] = readdirSync(home).filter((name) => name.startsWith('rackside-0-'));
			chownSync(join(home, folder), NOBODY, NOBODY);
			const next = await startLive({ data, env: { TMPDIR: home } });
			await until(() => /another user/.test(next.screen.text()), 'the word of it');
			expect(next.screen.text()).not.toMatch(/resumed/i);
			await next.screen.press('t', '0');
			await until(() => existsSync(join(home, `${folder}-2`)), 'a folder of our own');
			const files = readdirSync(join(home, folder)).filter((name) => name.endsWith('.journal'));
			expect(files).toHaveLength(1);
			rmSync(`${data}-moved`, { recursive: true });
		},
	);
});

const NOBODY = 65_534;

/** The process's sockets of the network that somebody could connect to; none where the system does not tell. */
function listeningOf(pid: number): readonly string[] {
	if (process.platform !== 'linux') return [];
	const own = readdirSync(`/proc/${pid}/fd`).flatMap((name) => {
		try {
			return readlinkSync(`/proc/${pid}/fd/${name}`).match(/^socket:\[(\d+)\]$/)?.[1] ?? [];
		} catch {
			return [];
		}
	});
	// proc_net_tcp: the fourth field is the state, 0A for LISTEN, the tenth the inode.
	return ['tcp', 'tcp6']
		.flatMap((name) => readFileSync(`/proc/${pid}/net/${name}`, 'utf8').split('\n').slice(1))
		.map((line) => line.trim().split(/\s+/))
		.filter(([, , , state, , , , , , inode]) => state === '0A' && own.includes(inode ?? ''))
		.map(([, local]) => local ?? '');
}

const why = whyNoInjection();

test.skipIf(why !== null)(
	`a disk that confirms nothing from the first holds up no key${why ? ` (left out: ${why})` : ''}`,
	async () => {
		// strace stays as long as a call that it holds up, whatever became of the program.
		const inject = 'inject=fdatasync,fsync:delay_enter=15000ms';
		const line = `strace -f -qq -o /dev/null -e trace=fdatasync,fsync -e ${inject} PROGRAM`;
		const program = await startLive({ by: 'launcher', line });
		// By then everything that a start keeps by itself was asked of it.
		await pause(1500);
		const before = performance.now();
		await program.record('t 0');
		await program.screen.waitFor('The disk is slow', PATIENCE_MS);
		await program.screen.press('q', 'enter');
		await program.screen.waitFor('has not confirmed', PATIENCE_MS);
		expect(performance.now() - before).toBeLessThan(10_000);
		expect(await program.afterwards()).toEqual({ code: 3, areSettingsKept: true });
		await mustGoOn(program.data, lookAtJournal(program.data));
	},
	90_000,
);

test.skipIf(why !== null).each([
	['is waited for', 600, { code: 1, areSettingsKept: true }, 'The night stays open'],
	['is not, beyond two seconds', 3000, { code: 3, areSettingsKept: true }, 'has not confirmed'],
] as const)(
	`a disk that is slow to confirm %s when the user leaves${why ? ` (left out: ${why})` : ''}`,
	async (_, delayMs, end, said) => {
		const inject = `inject=fdatasync:delay_enter=${delayMs}ms`;
		const line = `strace -f -qq -o /dev/null -e trace=fdatasync -e ${inject} PROGRAM`;
		const program = await startLive({ line });
		// What the start has kept is confirmed, or not, before the last step.
		await pause(1500);
		await program.record('t 0');
		await program.screen.press('q', 'enter');
		await program.screen.waitFor(said, PATIENCE_MS);
		expect(await program.afterwards()).toEqual(end);
		await mustGoOn(program.data, lookAtJournal(program.data));
	},
	60_000,
);
