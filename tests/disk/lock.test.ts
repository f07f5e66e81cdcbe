// One program for one show: the second is told, the dead are succeeded at once.

import { type ChildProcess, spawn } from 'node:child_process';
import { existsSync, readFileSync, utimesSync, writeFileSync } from 'node:fs';
import { uptime } from 'node:os';
import { join } from 'node:path';
import { setTimeout } from 'node:timers/promises';
import { fileURLToPath } from 'node:url';
import { describe, expect, onTestFinished, test, vi } from 'vitest';
import type { Disk } from '../../src/disk/disk.ts';
import { type Lock, lockName, takeLock } from '../../src/disk/lock.ts';
import { bootId, isRunning, ownIdentity } from '../../src/disk/process-identity.ts';
import { realDisk } from '../../src/disk/real-disk.ts';
import { FaultDisk } from './fault-disk.ts';
import { scratchFolder } from './scratch-folder.ts';

const isLinux = process.platform === 'linux';
const holder = fileURLToPath(new URL('lock-holder.ts', import.meta.url));

function place(folder: string, name = 'show-1') {
	return { disk: realDisk, folder, name };
}

async function taken(folder: string): Promise<Lock> {
	const lock = await takeLock(place(folder));
	onTestFinished(() => {
		if (lock.isHeld) lock.release();
	});
	return lock;
}

/** Another program that tries for the lock; resolves with what it says. */
function otherProgram(folder: string): { child: ChildProcess; says: Promise<string> } {
	const child = spawn(process.execPath, [holder, folder], { stdio: ['pipe', 'pipe', 'inherit'] });
	onTestFinished(() => {
		child.kill('SIGKILL');
	});
	const says = new Promise<string>((resolve) => {
		child.stdout?.once('data', (data) => resolve(String(data).trim()));
	});
	return { child, says };
}

function ended(child: ChildProcess): Promise<void> {
	return new Promise((resolve) => child.once('exit', () => resolve()));
}

describe('two programs', () => {
	test('the second is told which has it, and gets it when the first lets go', async () => {
		const folder = scratchFolder();
		const { child, says } = otherProgram(folder);
		expect(await says).toBe('held');
		const second = await taken(folder);
		expect(second).toEqual({
			isHeld: false,
			fault: { code: 'locked', pid: child.pid },
		});
		child.stdin?.end();
		await ended(child);
		expect((await taken(folder)).isHeld).toBe(true);
	});

	test('one that was killed is succeeded at once', async () => {
		const folder = scratchFolder();
		const { child, says } = otherProgram(folder);
		await says;
		child.kill('SIGKILL');
		await ended(child);
		expect(existsSync(join(folder, 'show-1.lock'))).toBe(true);
		const start = performance.now();
		expect((await taken(folder)).isHeld).toBe(true);
		expect(performance.now() - start).toBeLessThan(500);
	});

	test('of several started at the same moment exactly one has it', async () => {
		for (let round = 0; round < 3; round += 1) {
			const folder = scratchFolder();
			const others = Array.from({ length: 4 }, () => otherProgram(folder));
			const answers = await Promise.all(others.map(({ says }) => says));
			expect(answers.filter((answer) => answer === 'held')).toHaveLength(1);
			for (const { child } of others) child.kill('SIGKILL');
		}
	});

	test('within one program it is the same', async () => {
		const folder = scratchFolder();
		const first = await taken(folder);
		if (isLinux) expect((await taken(folder)).isHeld).toBe(false);
		if (first.isHeld) first.release();
		expect(existsSync(join(folder, 'show-1.lock'))).toBe(false);
		// Closing a socket takes a moment.
		await setTimeout(20);
		expect((await taken(folder)).isHeld).toBe(true);
	});
});

describe('a lock that was left behind', () => {
	const self = ownIdentity();
	const deadPid = 2 ** 22 - 7;

	test.each([
		['by a program that is dead', { pid: deadPid, startTicks: 5, boot: self.boot }, true],
		[
			'before the machine was started anew',
			{ pid: 1, startTicks: null, boot: 'an-earlier-start' },
			isLinux,
		],
		[
			'by one whose number another has now',
			{ pid: 1, startTicks: 999_999_999, boot: self.boot },
			isLinux,
		],
		['by one that still runs', { pid: 1, startTicks: null, boot: self.boot }, false],
	])('%s', async (_, left, isTaken) => {
		const folder = scratchFolder();
		writeFileSync(join(folder, 'show-1.lock'), JSON.stringify(left));
		expect((await taken(folder)).isHeld).toBe(isTaken);
	});

	test.each(['', 'rubbish', '{}', '{"pid":-1,"boot":""}', '{"pid":"1","boot":"x"}'])(
		'that says nothing: %j',
		async (text) => {
			const folder = scratchFolder();
			writeFileSync(join(folder, 'show-1.lock'), text);
			expect((await taken(folder)).isHeld).toBe(true);
			expect(JSON.parse(readFileSync(join(folder, 'show-1.lock'), 'utf8'))).toEqual(self);
		},
	);
});

describe('a folder that takes no lock', () => {
	test.each(['openNew', 'write', 'remove', 'stat', 'close'])('%s fails', async (name) => {
		const disk = new FaultDisk();
		disk.plantFolder(`/nights-${name}`);
		disk.plant(`/nights-${name}/show-1.lock`, Buffer.from('rubbish'));
		disk.effect = (call) => (call.name === name ? { fail: 'EROFS' } : null);
		const lock = await takeLock({ disk, folder: `/nights-${name}`, name: 'show-1' });
		expect(lock.isHeld).toBe(true);
		if (lock.isHeld) lock.release();
	});

	test('somebody who is quicker but has not said who he is has it all the same', async () => {
		const disk = new FaultDisk();
		disk.plantFolder('/nights-quick');
		disk.effect = (call) => {
			if (call.name === 'openNew') disk.plant('/nights-quick/show-1.lock', Buffer.from(''));
			return null;
		};
		const place = { disk, folder: '/nights-quick', name: 'show-1', hasSocket: false };
		expect(await takeLock(place)).toMatchObject({ isHeld: false, fault: { code: 'locked' } });
	});

	test('somebody who is quicker by a moment has it', async () => {
		const disk = new FaultDisk();
		disk.plantFolder('/nights-race');
		const other = JSON.stringify({ pid: 1, startTicks: null, boot: bootId() });
		disk.effect = (call) => {
			if (call.name === 'openNew') disk.plant('/nights-race/show-1.lock', Buffer.from(other));
			return null;
		};
		const lock = await takeLock({ disk, folder: '/nights-race', name: 'show-1' });
		expect(lock).toMatchObject({ isHeld: false, fault: { pid: 1 } });
	});
});

describe('without sockets', () => {
	const named = (startTicks: number) => ({ ...ownIdentity(), startTicks });

	test('of two who succeed the same dead holder at once one has it', async () => {
		const folder = scratchFolder();
		const left = { pid: 2 ** 22 - 7, startTicks: 5, boot: bootId() };
		writeFileSync(join(folder, 'show-1.lock'), JSON.stringify(left));
		// The second looked before the first had taken over, and takes over after it.
		const first = takeLock({ ...place(folder), self: named(1), hasSocket: false });
		await setTimeout(10);
		writeFileSync(join(folder, 'show-1.lock'), JSON.stringify(named(2)));
		expect(await first).toMatchObject({ isHeld: false });
	});

	test('the folder need not be there yet', async () => {
		const folder = join(scratchFolder(), 'rackside', 'nights');
		const first = await takeLock({ ...place(folder), hasSocket: false });
		expect(first.isHeld).toBe(true);
		expect(existsSync(join(folder, 'show-1.lock'))).toBe(true);
	});

	test('the file alone keeps the second out and lets him in afterwards', async () => {
		const folder = scratchFolder();
		const first = await takeLock({ ...place(folder), hasSocket: false });
		const other = { ...place(folder), hasSocket: false, self: { ...ownIdentity(), pid: 1 } };
		expect(await takeLock(other)).toMatchObject({ isHeld: false });
		if (first.isHeld) first.release();
		const second = await takeLock(other);
		expect(second.isHeld).toBe(true);
		if (second.isHeld) second.release();
		expect(existsSync(join(folder, 'show-1.lock'))).toBe(false);
	});
});

describe('where no start of the machine has an id', () => {
	// This program's parent runs, and stands for whoever has the number of one that died with the machine.
	const stale = { pid: process.ppid, startTicks: null, boot: '' };
	const self = { pid: process.pid, startTicks: null, boot: '' };
	const lockAged = async (seconds: number) => {
		const folder = scratchFolder();
		const path = join(folder, 'show-1.lock');
		writeFileSync(path, JSON.stringify(stale));
		const at = Date.now() / 1000 - seconds;
		utimesSync(path, at, at);
		return takeLock({ ...place(folder), self, hasSocket: false });
	};

	test('a lock from before it keeps nobody out, though its number is in use again', async () => {
		expect((await lockAged(uptime() + 300)).isHeld).toBe(true);
	});

	test('one of this start does', async () => {
		expect((await lockAged(0)).isHeld).toBe(false);
	});

	test.each([
		['far forward', 36 * 3_600_000],
		['by a few minutes', 180_000],
	])('and so does one of a clock that was set %s since', async (_, byMs) => {
		vi.useFakeTimers({ toFake: ['Date', 'setInterval', 'clearInterval'] });
		onTestFinished(() => {
			vi.useRealTimers();
		});
		// A disk has its times from the same clock.
		let writtenMs = 0;
		const disk: Disk = {
			...realDisk,
			write: (...of) => {
				writtenMs = Date.now();
				return realDisk.write(...of);
			},
			stat: (path) => {
				const found = realDisk.stat(path);
				return found && { ...found, modifiedMs: writtenMs };
			},
		};
		const held = { ...place(scratchFolder()), disk, hasSocket: false };
		const lock = await takeLock({ ...held, self: stale });
		vi.setSystemTime(Date.now() + uptime() * 1000 + byMs);
		vi.advanceTimersByTime(1000);
		expect(await takeLock({ ...held, self })).toMatchObject({ isHeld: false });
		if (lock.isHeld) lock.release();
		expect(await takeLock({ ...held, self })).toMatchObject({ isHeld: true });
	});

	test('and so does one by a clock that was not set', async () => {
		expect((await lockAged(Date.now() / 1000 - 86_400)).isHeld).toBe(false);
	});
});

test('a show is locked under one name, its rehearsals under another', () => {
	expect(lockName('/shows/a.yaml', false)).toBe(lockName('/shows/../shows/a.yaml', false));
	expect(lockName('/shows/a.yaml', false)).not.toBe(lockName('/shows/b.yaml', false));
	expect(lockName('/shows/a.yaml', false)).not.toBe(lockName('/shows/a.yaml', true));
	expect(lockName('/shows/a.yaml', true)).toMatch(/^rehearsal-[0-9a-f]{16}$/);
});

test.runIf(isLinux)(
	'a program that has ended runs no more, though its parent never asked',
	async () => {
		// `sleep` takes the shell's place and knows nothing of the shell's child.
		const parent = spawn('sh', ['-c', 'sleep 0.3 & echo $!; exec sleep 60'], {
			stdio: ['ignore', 'pipe', 'inherit'],
		});
		onTestFinished(() => {
			parent.kill('SIGKILL');
		});
		const pid = await new Promise<number>((resolve) => {
			parent.stdout?.once('data', (data) => resolve(Number(String(data).trim())));
		});
		const child = { pid, startTicks: null, boot: bootId() };
		await expect.poll(() => isRunning(child), { timeout: 20_000 }).toBe(false);
		// It is still listed.
		expect(() => process.kill(pid, 0)).not.toThrow();
	},
);

test('this program is running', () => {
	expect(isRunning(ownIdentity())).toBe(true);
	if (isLinux) expect(ownIdentity()).toMatchObject({ startTicks: expect.any(Number), boot: /-/ });
});
