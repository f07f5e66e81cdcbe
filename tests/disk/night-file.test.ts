// What a user sees of saving: when a step counts as saved, what a failing disk changes, and what is
// there after the next start.

import { describe, expect, test } from 'vitest';
import { diskError } from '../../src/disk/disk.ts';
import { readJournal } from '../../src/journal/read-journal.ts';
import { nightFindingWords } from '../../src/words/night-file.ts';
import { type Effect, FaultDisk, settle } from './fault-disk.ts';
import { expectKept, KeptNight, nightPath, nightsFolder, spareFolder } from './kept-night.ts';
import { nightName, stepEntry, stepsOf } from './night-steps.ts';

async function begunNight(
	folders?: readonly string[],
): Promise<{ disk: FaultDisk; night: KeptNight }> {
	const disk = new FaultDisk();
	const night = new KeptNight(disk, folders);
	await night.create();
	await settle();
	return { disk, night };
}

function reopened(disk: FaultDisk, folders?: readonly string[]) {
	const night = new KeptNight(disk, folders);
	return { night, opened: night.open() };
}

/** Fails the calls of this name, from the first on, until it is lifted. */
function failing(name: string, code: string): (call: { readonly name: string }) => Effect {
	return (call) => (call.name === name ? { fail: code } : null);
}

describe('saving', () => {
	test('a step is in the file at once and saved when the disk has confirmed it', async () => {
		const { disk, night } = await begunNight();
		disk.isHoldingSyncs = true;
		night.append();
		expect(readJournal(disk.peek(nightPath)).lines).toHaveLength(1);
		expect(night.journal?.status()).toMatchObject({ state: 'saving', isSaved: false, savedSeq: 0 });
		await disk.releaseSyncs();
		expect(night.journal?.status()).toMatchObject({
			state: 'saved',
			isSaved: true,
			savedSeq: 1,
			problem: null,
		});
	});

	test('a confirmation covers only what was written before it was asked for', async () => {
		const { disk, night } = await begunNight();
		disk.isHoldingSyncs = true;
		night.append();
		night.append();
		night.append();
		const cut = disk.afterPowerCut(() => 0);
		expectKept(reopened(cut).opened, { saved: 0, typed: 3 });
		disk.isHoldingSyncs = false;
		await disk.releaseSyncs();
		expect(night.savedSteps).toBe(3);
		expectKept(reopened(disk.afterPowerCut(() => 0)).opened, { saved: 3, typed: 3 });
		// Never two at a time: one asked for the first step, one for the two that came meanwhile.
		expect(night.statuses.filter((status) => status.savedSeq === 1)).not.toHaveLength(0);
	});

	test('a new folder is confirmed with all those above it that are as new', async () => {
		const { disk } = await begunNight();
		for (const most of [0, 1]) {
			const cut = disk.afterPowerCut((limit) => Math.min(most, limit));
			expect(cut.filesButMark()).toEqual([nightPath]);
		}
	});

	test('an empty night is saved once its file and its name in the folder are confirmed', async () => {
		const disk = new FaultDisk();
		disk.isHoldingSyncs = true;
		const night = new KeptNight(disk);
		await night.create();
		expect(night.journal?.status().isSaved).toBe(false);
		await disk.releaseSyncs();
		expect(night.journal?.status().isSaved).toBe(true);
		expect(disk.afterPowerCut(() => 0).files()).toContain(nightPath);
	});

	test('a night appears under its name only with its whole header', async () => {
		const disk = new FaultDisk();
		disk.isHoldingSyncs = true;
		const creating = new KeptNight(disk).create();
		expect(disk.files()).toEqual([`${nightPath}.new`]);
		await disk.releaseSyncs();
		await creating;
		expect(disk.filesButMark()).toEqual([nightPath]);
		expect(readJournal(disk.peek(nightPath)).header?.header).toMatchObject({
			format: 'rackside-night/2',
			journal: nightName,
			title: 'Quay Street',
			isRehearsal: false,
		});
	});

	test('what a start that was killed left beside it stays, and keeps no step from the disk', async () => {
		const disk = new FaultDisk();
		disk.plant(`${nightPath}.new`, Buffer.from('half a head'));
		const night = new KeptNight(disk);
		await night.create();
		night.append();
		expect(readJournal(disk.peek(nightPath)).lines).toHaveLength(1);
		expect(disk.filesButMark().toSorted()).toEqual([nightPath, `${nightPath}.new`]);
		expect(disk.peek(`${nightPath}.new`).toString()).toBe('half a head');
	});

	test('closing waits for the disk, but not for ever', async () => {
		const { disk, night } = await begunNight();
		night.append();
		expect((await night.journal?.close())?.isSaved).toBe(true);
		expect(disk.openFiles.size).toBe(0);
		const hung = await begunNight();
		hung.disk.isHoldingSyncs = true;
		hung.night.append();
		expect((await hung.night.journal?.close())?.isSaved).toBe(false);
		expectKept(reopened(hung.disk.afterKill()).opened, { saved: 1, typed: 1 });
	});

	test('texts that are too long are cut, and what is applied is what was kept', async () => {
		const { disk, night } = await begunNight();
		const long = { k: 'memo-written', words: 'ü'.repeat(5000), seconds: Number.NaN };
		const record = night.journal?.append([long], { wallMs: 1, upMs: 1 });
		const kept = readJournal(disk.peek(nightPath));
		expect(kept.lines).toHaveLength(1);
		const { opened } = reopened(disk.afterKill());
		expect(opened.records()).toEqual([record]);
		expect(JSON.stringify(record)).toContain('ü…"');
	});
});

describe('taking up a night', () => {
	test('after a kill every step is there', async () => {
		const { disk, night } = await begunNight();
		for (let step = 0; step < 250; step += 1) night.append();
		const { opened } = reopened(disk.afterKill());
		expectKept(opened, { saved: 250, typed: 250 });
		expect(opened.findings).toEqual([]);
		expect(opened.checkpoint).toEqual({ seq: 200, state: { steps: 200 } });
		expect(stepsOf(opened.recordsSince)).toEqual(Array.from({ length: 50 }, (_, i) => 201 + i));
		expect(opened.header).toMatchObject({ title: 'Quay Street', showPath: '/shows/quay.yaml' });
		expect(opened.startedAtMs).toBe(1_781_289_000_000);
	});

	test('numbers go on, by another writer', async () => {
		const { disk, night } = await begunNight();
		night.append();
		const again = reopened(disk.afterKill());
		again.night.steps = 1;
		const record = again.night.append();
		expect(record).toMatchObject({ s: 2, w: 'writer-2' });
		await settle();
		expect(again.night.journal?.status()).toMatchObject({ isSaved: true, savedSeq: 2 });
	});

	test('a night that is not there says so', () => {
		const { opened } = reopened(new FaultDisk());
		expect(opened.journal).toBeNull();
		expect(opened.findings.map(nightFindingWords)).toEqual([
			`There is no night called ${nightName}.`,
		]);
	});

	test('an empty file says so and is left alone', () => {
		const disk = new FaultDisk();
		disk.plant(nightPath, Buffer.alloc(0));
		const { opened } = reopened(disk);
		expect(opened.journal).toBeNull();
		expect(opened.findings).toMatchObject([{ code: 'header-missing', isEmpty: true }]);
	});

	test('a header alone is a night that has just begun', async () => {
		const { disk } = await begunNight();
		const { opened, night } = reopened(disk.afterKill());
		expect(opened.findings).toEqual([]);
		expect(opened.lastSeq).toBe(0);
		expect(night.append().s).toBe(1);
	});

	test('a file that cannot be opened for writing is read, and the night goes on in memory', async () => {
		const { disk, night } = await begunNight();
		night.append();
		const readOnly = disk.afterKill();
		readOnly.effect = (call) =>
			call.name === 'openExisting' || call.name === 'openNew' ? { fail: 'EROFS' } : null;
		const again = reopened(readOnly);
		expectKept(again.opened, { saved: 1, typed: 1 });
		expect(again.night.journal?.status()).toMatchObject({ state: 'memory', isSaved: false });
		expect(again.night.journal?.status().problem).toMatchObject({
			code: 'memory-only',
			trouble: 'EROFS',
		});
		again.night.steps = 1;
		expect(again.night.append().s).toBe(2);
		readOnly.effect = () => null;
		again.night.tick(1000);
		await settle();
		expect(again.night.journal?.status()).toMatchObject({ state: 'saved', savedSeq: 2 });
		expectKept(reopened(readOnly.afterPowerCut(() => 0)).opened, { saved: 2, typed: 2 });
	});

	test('where the folder takes another file, it goes on there at once, and that is said', async () => {
		const { disk, night } = await begunNight();
		night.append();
		const linked = disk.afterKill();
		linked.effect = (call) => (call.name === 'openExisting' ? { fail: 'ELOOP' } : null);
		const again = new KeptNight(linked, [nightsFolder, spareFolder]);
		expectKept(again.open(), { saved: 1, typed: 1 });
		await settle();
		expect(again.journal?.status()).toMatchObject({
			...{ state: 'saved', elsewhere: null, savedSeq: 1 },
			warnings: [{ code: 'file-left', trouble: 'ELOOP' }],
		});
		expect(linked.files().every((path) => path.startsWith(nightsFolder))).toBe(true);
	});

	test('what a stopped write left is kept aside once, whatever happens while taking up', async () => {
		const { disk, night } = await begunNight();
		night.append();
		night.append();
		const torn = disk.afterKill();
		torn.meddle(nightPath, (bytes) => bytes.subarray(0, -20));
		const first = torn.afterKill();
		const { opened } = reopened(first);
		expectKept(opened, { saved: 1, typed: 1 });
		expect(opened.findings).toMatchObject([{ code: 'tail-cut-off', isWarning: false }]);
		const aside = first.files().filter((path) => path.includes('.torn-'));
		expect(aside).toHaveLength(1);
		const whole = torn.peek(nightPath);
		const size = first.peek(nightPath).length;
		expect(first.peek(aside[0] ?? '')).toEqual(whole.subarray(size));
		// Killed at each call of taking up, then taken up again.
		const calls = first.calls;
		for (let at = 1; at <= calls; at += 1) {
			for (const kill of ['before', 'after'] as const) {
				const disk2 = torn.afterKill();
				disk2.effect = (call) => (call.number === at ? { kill } : null);
				reopened(disk2);
				expect(disk2.isKilled).toBe(true);
				const rest = disk2.afterKill();
				expectKept(reopened(rest).opened, { saved: 1, typed: 1 });
				expect(rest.peek(nightPath)).toEqual(first.peek(nightPath));
			}
		}
	});
});

describe('a disk that refuses to write', () => {
	test('full: said, held in memory, saved within a second of room', async () => {
		const { disk, night } = await begunNight();
		night.append();
		await settle();
		disk.roomBytes = disk.usedBytes() + 30;
		night.append();
		night.append();
		expect(night.status).toMatchObject({
			state: 'unsaved',
			isSaved: false,
			savedSeq: 1,
			lastSeq: 3,
		});
		expect(night.status?.problem).toEqual({ code: 'unsaved', trouble: 'ENOSPC' });
		// Nothing half written is left in the file, and none is kept beside it.
		expect(readJournal(disk.peek(nightPath)).torn).toBeNull();
		expect(disk.filesButMark()).toEqual([nightPath]);
		night.tick(60_000);
		expect(night.status?.state).toBe('unsaved');
		disk.roomBytes = Number.POSITIVE_INFINITY;
		night.tick(1000);
		await settle();
		expect(night.status).toMatchObject({ state: 'saved', savedSeq: 3, problem: null });
		expect(disk.filesButMark()).toEqual([nightPath]);
		expectKept(reopened(disk.afterPowerCut(() => 0)).opened, { saved: 3, typed: 3 });
	});

	test('nearly full: no record waits for a whole state that has no room', async () => {
		const { disk, night } = await begunNight();
		night.journal?.keepStates(() => 'a state'.repeat(1000));
		for (let step = 0; step < 100; step += 1) night.append();
		await settle();
		disk.roomBytes = disk.usedBytes() + 4000;
		night.append();
		await settle();
		expect(night.status).toMatchObject({ state: 'saved', savedSeq: 101 });
		const { opened } = reopened(disk.afterPowerCut(() => 0));
		expectKept(opened, { saved: 101, typed: 101 });
		expect(opened.checkpoint).toBeNull();
	});

	test.each(['EFBIG', 'EIO', 'EDQUOT', 'ENODEV'])(
		'%s on one file: goes on without loss',
		async (code) => {
			const { disk, night } = await begunNight();
			night.append();
			await settle();
			disk.effect = (call) =>
				call.name === 'write' && call.path === nightPath ? { fail: code } : null;
			night.append();
			night.append();
			if (code === 'EDQUOT') {
				expect(night.status?.state).toBe('unsaved');
				disk.effect = () => null;
			}
			night.tick(1000);
			await settle();
			expect(night.status).toMatchObject({ state: 'saved', savedSeq: 3 });
			const { opened } = reopened(disk.afterPowerCut(() => 0));
			expectKept(opened, { saved: 3, typed: 3 });
			expect(opened.findings).toEqual([]);
		},
	);

	test('what cannot be written is tried again each second, not more often', async () => {
		const disk = new FaultDisk();
		let tries = 0;
		disk.effect = (call) => {
			if (call.name !== 'openNew') return null;
			tries += 1;
			return { fail: 'EACCES' };
		};
		const night = new KeptNight(disk);
		await night.create();
		tries = 0;
		for (let tenth = 0; tenth < 100; tenth += 1) {
			night.append();
			night.tick(90);
		}
		expect(tries).toBeGreaterThanOrEqual(9);
		expect(tries).toBeLessThanOrEqual(10);
	});

	test('nothing counts as saved before all that came before it is in the new file', async () => {
		const { disk, night } = await begunNight();
		for (let step = 0; step < 20; step += 1) night.append();
		await settle();
		const meddled = disk.peek(nightPath).length;
		disk.remove(nightPath);
		// Room for the header alone.
		disk.roomBytes = 1000;
		expect(meddled).toBeGreaterThan(2000);
		night.tick(5000);
		await settle();
		night.tick(1000);
		await settle();
		expect(night.status).toMatchObject({ state: 'unsaved', isSaved: false, savedSeq: 0 });
		disk.roomBytes = Number.POSITIVE_INFINITY;
		night.tick(1000);
		await settle();
		expect(night.status).toMatchObject({ state: 'saved', savedSeq: 20 });
	});

	test('files that may not grow: goes on in as many as it takes, confirmed or not', async () => {
		const { disk, night } = await begunNight();
		disk.fileLimitBytes = 2000;
		disk.isHoldingSyncs = true;
		for (let step = 0; step < 40; step += 1) night.append();
		expect(night.status).toMatchObject({ state: 'saving', savedSeq: 0, problem: null });
		expect(night.status?.warnings).toHaveLength(1);
		expect(disk.files().length).toBeGreaterThan(4);
		expectKept(reopened(disk.afterKill()).opened, { saved: 40, typed: 40 });
		await disk.releaseSyncs();
		expect(night.status).toMatchObject({ state: 'saved', savedSeq: 40 });
		expectKept(reopened(disk.afterPowerCut(() => 0)).opened, { saved: 40, typed: 40 });
		// All but the one that takes the next line are closed.
		expect(disk.openFiles.size).toBe(1);
	});

	test('a full file that is not confirmed is not trusted either', async () => {
		const { disk, night } = await begunNight();
		disk.fileLimitBytes = 2000;
		disk.isHoldingSyncs = true;
		for (let step = 0; step < 10; step += 1) night.append();
		disk.fileLimitBytes = Number.POSITIVE_INFINITY;
		await disk.releaseSyncs();
		const before = disk.files().length;
		disk.isHoldingSyncs = true;
		disk.fileLimitBytes = disk.peek(disk.files().at(-1) ?? '').length + 300;
		for (let step = 0; step < 3; step += 1) night.append();
		disk.fileLimitBytes = Number.POSITIVE_INFINITY;
		const full = disk.files()[before - 1];
		let isFirst = true;
		disk.effect = (call) => {
			if (call.name !== 'sync' || call.path !== full || !isFirst) return null;
			isFirst = false;
			return { fail: 'EIO' };
		};
		await disk.releaseSyncs();
		expect(isFirst).toBe(false);
		expect(night.status).toMatchObject({ state: 'saved', savedSeq: 13 });
		expectKept(reopened(disk.afterPowerCut(() => 0)).opened, { saved: 13, typed: 13 });
		expect(disk.openFiles.size).toBe(1);
	});

	test('a full file of the night that is taken away is missed too', async () => {
		const { disk, night } = await begunNight();
		disk.fileLimitBytes = 2000;
		for (let step = 0; step < 12; step += 1) night.append();
		disk.fileLimitBytes = Number.POSITIVE_INFINITY;
		await settle();
		expect(night.status?.savedSeq).toBe(12);
		disk.remove(nightPath);
		night.tick(3000);
		await settle();
		expect(night.status).toMatchObject({ state: 'saved', savedSeq: 12 });
		expect(night.status?.warnings.at(-1)).toMatchObject({ code: 'file-changed', path: nightPath });
		expectKept(reopened(disk.afterPowerCut(() => 0)).opened, { saved: 12, typed: 12 });
	});

	test('a disk that fails for good does not fill with empty files', async () => {
		const { disk, night } = await begunNight();
		night.append();
		await settle();
		// Headers still go in, records do not.
		disk.effect = (call) =>
			call.name === 'write' && call.number % 2 === 0 ? { fail: 'EIO' } : null;
		for (let second = 0; second < 50; second += 1) {
			night.append();
			night.tick(1000);
		}
		disk.effect = failing('write', 'EIO');
		for (let second = 0; second < 50; second += 1) night.tick(1000);
		expect(disk.files().length).toBeLessThan(60);
		disk.effect = () => null;
		night.tick(1000);
		await settle();
		expect(night.status).toMatchObject({ isSaved: true, savedSeq: 51 });
		expectKept(reopened(disk.afterPowerCut(() => 0)).opened, { saved: 51, typed: 51 });
	});

	test('interrupted calls are not noticed', async () => {
		const { disk, night } = await begunNight();
		disk.effect = (call) =>
			call.name === 'write' && call.number % 3 !== 0
				? { fail: call.number % 2 === 0 ? 'EINTR' : 'EAGAIN' }
				: null;
		for (let step = 0; step < 20; step += 1) night.append();
		expect(night.statuses.filter((status) => status.problem !== null)).toEqual([]);
		expectKept(reopened(disk.afterKill()).opened, { saved: 20, typed: 20 });
	});

	test('a write cut short at any length is completed', async () => {
		const { disk, night } = await begunNight();
		const before = disk.peek(nightPath).length;
		night.append();
		const length = disk.peek(nightPath).length - before;
		for (let short = 0; short <= length; short += 1) {
			let isFirst = true;
			disk.effect = (call) => {
				if (call.name !== 'write' || !isFirst) return null;
				isFirst = false;
				return { short };
			};
			night.append();
			await settle();
		}
		expect(night.statuses.filter((status) => status.problem !== null)).toEqual([]);
		expectKept(reopened(disk.afterKill()).opened, { saved: length + 2, typed: length + 2 });
	});

	test('a write cut short at any length and then refused leaves nothing of itself', async () => {
		const { disk, night } = await begunNight();
		night.append();
		await settle();
		const whole = disk.peek(nightPath);
		for (let short = 0; short <= 120; short += 7) {
			let writes = 0;
			disk.effect = (call) => {
				if (call.name !== 'write') return null;
				writes += 1;
				return writes === 1 ? { short } : { fail: 'ENOSPC' };
			};
			const again = reopened(disk.afterKill()).night;
			again.disk.effect = disk.effect;
			again.steps = 1;
			again.append();
			expect(again.disk.peek(nightPath)).toEqual(whole);
		}
	});
});

describe('a disk that does not confirm', () => {
	test('a failed confirmation: the file is never trusted again', async () => {
		const { disk, night } = await begunNight();
		night.append();
		await settle();
		let syncs = 0;
		disk.effect = (call) => {
			if (call.name !== 'sync') return null;
			syncs += 1;
			// The one failure is followed by success, as systems do that have dropped the bytes.
			return syncs === 1 ? { fail: 'EIO' } : null;
		};
		night.append();
		await settle();
		const second = `${nightsFolder}/${nightName}.2.journal`;
		expect(disk.filesButMark()).toEqual([nightPath, second]);
		expect(night.status).toMatchObject({ state: 'saved', savedSeq: 2, problem: null });
		expect(night.status?.warnings).toHaveLength(1);
		expect(night.status?.warnings[0]).toMatchObject({ code: 'not-confirmed' });
		// Even without anything that the first file did not have confirmed.
		const cut = disk.afterPowerCut(() => 0);
		expectKept(reopened(cut).opened, { saved: 2, typed: 2 });
		night.append();
		expect(readJournal(disk.peek(second)).lines.map((line) => line.seq)).toEqual([2, 3]);
	});

	test('a failed confirmation on taking up: the whole night goes into a new file', async () => {
		const { disk, night } = await begunNight();
		for (let step = 0; step < 120; step += 1) night.append();
		const failed = disk.afterKill();
		let isFirst = true;
		failed.effect = (call) => {
			if (call.name !== 'sync' || !isFirst) return null;
			isFirst = false;
			return { fail: 'EIO' };
		};
		const again = reopened(failed, [nightsFolder, spareFolder]);
		await settle();
		expect(again.night.status).toMatchObject({ state: 'saved', savedSeq: 120 });
		// Another disk is better than one that has just failed.
		const second = `${spareFolder}/${nightName}.2.journal`;
		expect(readJournal(failed.peek(second)).lines).toHaveLength(120);
	});

	test('confirmations that keep failing are asked for less and less often', async () => {
		const { disk, night } = await begunNight();
		disk.effect = failing('sync', 'EIO');
		for (let second = 0; second < 600; second += 1) {
			night.append();
			night.tick(1000);
			await settle();
		}
		expect(night.status).toMatchObject({ state: 'unsaved', savedSeq: 0, lastSeq: 600 });
		expect(disk.files().length).toBeLessThan(20);
		// The program may die at any time: what it wrote is there.
		expectKept(reopened(disk.afterKill()).opened, { saved: 600, typed: 600 });
		disk.effect = () => null;
		night.tick(60_000);
		await settle();
		expect(night.status).toMatchObject({ state: 'saved', savedSeq: 600, problem: null });
	});

	test('a slow confirmation is shown after a second, and the night goes on', async () => {
		const { disk, night } = await begunNight();
		disk.isHoldingSyncs = true;
		night.append();
		night.tick(900);
		expect(night.status?.state).toBe('saving');
		night.tick(200);
		expect(night.status).toMatchObject({ state: 'slow', sinceUpMs: 1010 });
		expect(night.status?.problem).toEqual({ code: 'slow' });
		for (let second = 0; second < 30; second += 1) {
			night.append();
			night.tick(1000);
		}
		expect(night.status?.state).toBe('slow');
		expectKept(reopened(disk.afterKill()).opened, { saved: 31, typed: 31 });
		await disk.releaseSyncs();
		expect(night.status).toMatchObject({ state: 'saved', problem: null, savedSeq: 31 });
	});

	test('a confirmation that hangs does not keep a night from beginning', async () => {
		const disk = new FaultDisk();
		disk.isHoldingSyncs = true;
		const night = new KeptNight(disk);
		await night.create();
		night.append();
		expect(disk.filesButMark()).toEqual([nightPath]);
		expectKept(reopened(disk.afterKill()).opened, { saved: 0, typed: 1 });
	});
});

describe('somebody else at the file', () => {
	test.each([
		['removed', (disk: FaultDisk) => disk.remove(nightPath)],
		['renamed', (disk: FaultDisk) => disk.rename(nightPath, `${nightPath}.old`)],
		['cut short', (disk: FaultDisk) => disk.meddle(nightPath, (bytes) => bytes.subarray(0, 300))],
		['emptied', (disk: FaultDisk) => disk.meddle(nightPath, () => Buffer.alloc(0))],
		['replaced', (disk: FaultDisk) => disk.plant(nightPath, disk.peek(nightPath))],
	])('%s: noticed within five seconds, all is written anew', async (_, meddle) => {
		const { disk, night } = await begunNight();
		for (let step = 0; step < 5; step += 1) night.append();
		await settle();
		meddle(disk);
		for (let second = 0; second < 5; second += 1) night.tick(1000);
		await settle();
		expect(night.status?.warnings[0]).toMatchObject({ code: 'file-changed' });
		expect(night.status).toMatchObject({ state: 'saved', savedSeq: 5 });
		const { opened } = reopened(disk.afterPowerCut(() => 0));
		expectKept(opened, { saved: 5, typed: 5 });
		expect(opened.header?.title).toBe('Quay Street');
	});

	test('the file is looked at every second, not more often', async () => {
		const { disk, night } = await begunNight();
		let looks = 0;
		disk.effect = (call) => {
			if (call.name === 'stat') looks += 1;
			return null;
		};
		for (let tenth = 0; tenth < 100; tenth += 1) night.tick(100);
		expect(looks).toBe(10);
	});

	test('a folder that is shut is told at the second look, and the steps are still kept', async () => {
		const { disk, night } = await begunNight();
		let isShut = true;
		disk.effect = ({ name }) => (isShut && name === 'stat' ? { fail: 'EACCES' } : null);
		night.tick(1000);
		expect(night.status?.warnings ?? []).toEqual([]);
		night.tick(1000);
		const shut = [{ code: 'not-seen', trouble: 'EACCES' }];
		expect(night.status?.warnings).toEqual(shut);
		night.append();
		await settle();
		expect(night.status).toMatchObject({ state: 'saved', savedSeq: 1, warnings: shut });
		isShut = false;
		expectKept(reopened(disk.afterKill()).opened, { saved: 1, typed: 1 });
	});

	test('nothing is shown as saved that went into a file that is gone', async () => {
		const { disk, night } = await begunNight();
		night.append();
		disk.remove(nightPath);
		await settle();
		expect(night.savedSteps).toBe(1);
		expectKept(reopened(disk.afterPowerCut(() => 0)).opened, { saved: 1, typed: 1 });
	});

	test('a second writer is noticed by its id, and both nights can still be read', async () => {
		const { disk, night } = await begunNight();
		night.append();
		await settle();
		const other = new KeptNight(disk);
		// As `writerId` makes them.
		const writer = '0123456789ab.cdef01';
		other.open(writer);
		other.steps = 1;
		other.append();
		night.tick(1000);
		expect(night.status?.warnings).toEqual([{ code: 'written-by-other', writer }]);
		for (let second = 0; second < 4; second += 1) night.tick(1000);
		night.append();
		night.append();
		await settle();
		const { opened } = reopened(disk.afterKill());
		expectKept(opened, { saved: 3, typed: 3 });
		expect(opened.findings).toMatchObject([{ code: 'two-writers', isWarning: true }]);
	});

	test('foreign bytes are told from a second copy and lose nothing', async () => {
		const { disk, night } = await begunNight();
		night.append();
		await settle();
		disk.meddle(nightPath, (bytes) => Buffer.concat([bytes, Buffer.from('what is this')]));
		night.append();
		await settle();
		expect(night.status?.warnings).toEqual([{ code: 'written-by-other', writer: null }]);
		expectKept(reopened(disk.afterKill()).opened, { saved: 2, typed: 2 });
	});

	test('bytes of a second writer are never cut off with a failed write of ours', async () => {
		const { disk, night } = await begunNight();
		night.append();
		await settle();
		const foreign = Buffer.from('somebody else’s bytes\n');
		let isFirst = true;
		disk.effect = (call) => {
			if (call.name !== 'write' || call.path !== nightPath || !isFirst) return null;
			isFirst = false;
			disk.meddle(nightPath, (bytes) => Buffer.concat([bytes, foreign]));
			return { fail: 'ENOSPC' };
		};
		night.append();
		await settle();
		expect(disk.peek(nightPath).subarray(-foreign.length)).toEqual(foreign);
		expect(night.status).toMatchObject({ isSaved: true, savedSeq: 2 });
	});
});

describe('a night that could not be put on disk at its start', () => {
	test('says so, and is written whole as soon as that works', async () => {
		const disk = new FaultDisk();
		disk.effect = (call) => (call.name === 'makeFolder' ? { fail: 'EACCES' } : null);
		const night = new KeptNight(disk);
		await night.create();
		night.append();
		expect(night.status).toMatchObject({ state: 'memory', isSaved: false, savedSeq: 0 });
		expect(night.status?.problem).toEqual({
			code: 'memory-only',
			trouble: 'EACCES',
			folder: nightsFolder,
		});
		disk.effect = () => null;
		night.tick(1000);
		await settle();
		expect(night.status).toMatchObject({ state: 'saved', savedSeq: 1 });
		expectKept(reopened(disk.afterPowerCut(() => 0)).opened, { saved: 1, typed: 1 });
	});

	test('no bug of ours passes for a trouble with the disk', async () => {
		const disk = new FaultDisk();
		disk.effect = () => {
			throw new TypeError('a bug');
		};
		await expect(new KeptNight(disk).create()).rejects.toThrow('a bug');
		expect(diskError('EIO')).toHaveProperty('code', 'EIO');
	});
});

test('the entries come back as they were', async () => {
	const { disk, night } = await begunNight();
	const record = night.append();
	expect(reopened(disk.afterKill()).opened.records()).toEqual([record]);
	expect(record.e).toEqual([stepEntry(1)]);
});
