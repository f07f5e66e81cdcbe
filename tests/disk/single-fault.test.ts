// One fault at every single call of the disk: the night goes on, and nothing that was shown as saved
// is lost, whether the program goes on, is killed, or the power is cut.

import { describe, expect, test } from 'vitest';
import { type Call, type Effect, FaultDisk, settle } from './fault-disk.ts';
import { expectKept, KeptNight, nightsFolder, spareFolder } from './kept-night.ts';
import { nightName } from './night-steps.ts';

const folders = [nightsFolder, spareFolder];

/** A short night with a stop in it: begun, played, stopped in the middle of a write, taken up, closed. */
async function playNight(disk: FaultDisk, nights: KeptNight[]): Promise<void> {
	const [night] = nights;
	if (!night) return;
	await night.create();
	for (let step = 0; step < 3; step += 1) night.append();
	await settle();
	night.tick(3000);
	for (let step = 0; step < 2; step += 1) night.append();
	await settle();
	night.tick(1000);
	await night.journal?.close();
	const path = disk.files().find((file) => file.endsWith('.journal'));
	if (path)
		disk.meddle(path, (bytes) => Buffer.concat([bytes, Buffer.from('1234abcd {"v":1,"s"')]));
	const again = new KeptNight(disk, folders);
	again.upMs = night.upMs;
	again.savedSteps = night.savedSteps;
	const opened = again.resume('writer-2');
	if (!opened.journal || disk.isKilled) return;
	nights.push(again);
	again.append();
	await settle();
	again.tick(3000);
	again.append();
	await settle();
}

/** The calls of a night in which nothing goes wrong. */
async function callsOfNight(): Promise<string[]> {
	const disk = new FaultDisk();
	const calls: string[] = [];
	disk.effect = (call) => {
		calls.push(call.name);
		return null;
	};
	await playNight(disk, [new KeptNight(disk, folders)]);
	return calls;
}

const calls = await callsOfNight();

function at(number: number, effect: Effect): (call: Call) => Effect {
	return (call) => (call.number === number ? effect : null);
}

function reopened(disk: FaultDisk) {
	return new KeptNight(disk, folders).open('writer-3');
}

test('the night of these tests makes every kind of call that a night makes', () => {
	const kinds = new Set(calls);
	for (const name of ['openNew', 'openExisting', 'write', 'sync', 'syncFolder', 'truncate']) {
		expect(kinds).toContain(name);
	}
	expect(calls.length).toBeGreaterThan(40);
});

describe.each(['EIO', 'ENOSPC', 'EACCES', 'EMFILE'])('%s at one call', (code) => {
	test.each(['fail', 'failAfter'] as const)('%s: all is saved soon after', async (how) => {
		for (let number = 1; number <= calls.length; number += 1) {
			const disk = new FaultDisk();
			disk.effect = at(number, how === 'fail' ? { fail: code } : { failAfter: code });
			const nights = [new KeptNight(disk, folders)];
			await playNight(disk, nights);
			const [first, night] = nights;
			const why = `${calls[number - 1]} as call ${number}`;
			// What cannot be read at one moment can be at the next; nothing else may be missing.
			if (!night) {
				expectKept(reopened(disk.afterKill()), { saved: first?.savedSteps ?? 0, typed: 5 });
				continue;
			}
			for (let second = 0; second < 5; second += 1) {
				night.tick(1000);
				await settle();
			}
			expect(night.journal?.status(), why).toMatchObject({ isSaved: true, problem: null });
			const opened = reopened(disk.afterPowerCut(() => 0));
			expectKept(opened, { saved: night.steps, typed: night.steps });
		}
	});
});

describe.each(['before', 'after'] as const)('killed %s one call', (kill) => {
	test('every step typed is there but the one in hand', async () => {
		for (let number = 1; number <= calls.length; number += 1) {
			const disk = new FaultDisk();
			disk.effect = at(number, { kill });
			const nights = [new KeptNight(disk, folders)];
			await playNight(disk, nights);
			const typed = Math.max(...nights.map((night) => night.steps));
			const saved = Math.max(...nights.map((night) => night.savedSteps));
			expectKept(reopened(disk.afterKill()), { saved: typed, typed: typed + 1 });
			for (const choose of [() => 0, (most: number) => most, (most: number) => most >> 1]) {
				const cut = reopened(disk.afterPowerCut(choose));
				expectKept(cut, { saved, typed: typed + 1 });
			}
		}
	});
});

test('the folder of a night is never without it once a step was saved', async () => {
	const disk = new FaultDisk();
	const night = new KeptNight(disk, folders);
	await night.create();
	night.append();
	await settle();
	expect(night.savedSteps).toBe(1);
	for (let most = 0; most < 4; most += 1) {
		const cut = disk.afterPowerCut((limit) => Math.min(most, limit));
		expect(cut.files()).toContain(`${nightsFolder}/${nightName}.journal`);
	}
});
