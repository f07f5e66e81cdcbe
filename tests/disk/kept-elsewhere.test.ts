// A night whose own folder takes nothing is kept in another one, is told to be there as long as it is,
// and goes back by itself.

import { describe, expect, test } from 'vitest';
import { listNights, unreadableNight } from '../../src/disk/nights-folder.ts';
import { saveWarningWords } from '../../src/words/disk.ts';
import { nightFindingWords } from '../../src/words/night-file.ts';
import { FaultDisk, settle } from './fault-disk.ts';
import { expectKept, KeptNight, nightPath, nightsFolder, spareFolder } from './kept-night.ts';
import { nightName } from './night-steps.ts';

const folders = [nightsFolder, spareFolder];

/** A disk whose folder of nights refuses with this code while `isFailing`. */
function failingHome(code: string) {
	const disk = new FaultDisk();
	const home = { isFailing: true };
	disk.effect = ({ name, path }) => {
		const isHit = home.isFailing && path.startsWith(nightsFolder) && !path.endsWith('.elsewhere');
		return isHit && ['openNew', 'makeFolder', 'write'].includes(name) ? { fail: code } : null;
	};
	return { disk, home };
}

/** A night that may go on in a folder which a restart of the machine empties. */
function wipedNight(disk: FaultDisk): KeptNight {
	const night = new KeptNight(disk, folders);
	night.wiped.add(spareFolder);
	return night;
}

async function seconds(night: KeptNight, count: number): Promise<void> {
	for (let second = 0; second < count; second += 1) {
		night.tick(1000);
		await settle();
	}
}

const elsewhere = {
	folder: spareFolder,
	home: nightsFolder,
	trouble: 'ENOSPC',
	isWiped: true,
};

describe('its own folder, where a restart empties that', () => {
	test('has the night written, not safe, and says so to the end and at the next start', async () => {
		const disk = new FaultDisk();
		const night = new KeptNight(disk, folders);
		night.wiped.add(nightsFolder);
		await night.create();
		for (let step = 0; step < 3; step += 1) night.append();
		await seconds(night, 30);
		const unsafe = { state: 'unsafe', isSaved: false, savedSeq: 0, wipedHome: nightsFolder };
		expect(night.status).toMatchObject(unsafe);
		expect(night.savedSteps).toBe(0);
		expect(await night.journal?.close()).toMatchObject(unsafe);
		const next = new KeptNight(disk.afterKill(), folders);
		next.wiped.add(nightsFolder);
		expectKept(next.open(), { saved: 3, typed: 3 });
		await seconds(next, 1);
		expect(next.status).toMatchObject(unsafe);
	});

	test('is not safe either while a part of it is in another that stays', async () => {
		const { disk, home } = failingHome('ENOSPC');
		home.isFailing = false;
		const night = new KeptNight(disk, folders);
		night.wiped.add(nightsFolder);
		await night.create();
		night.append();
		await seconds(night, 1);
		home.isFailing = true;
		night.append();
		await seconds(night, 1);
		expect(night.status).toMatchObject({
			...{ state: 'unsafe', isSaved: false, savedSeq: 0, wipedHome: nightsFolder },
			elsewhere: { folder: spareFolder, isWiped: false },
		});
		home.isFailing = false;
		await seconds(night, 5);
		expect(night.status).toMatchObject({ state: 'unsafe', elsewhere: null });
		expect(night.status?.warnings.map(saveWarningWords).join()).not.toContain('saved');
	});

	test('says nothing of it while it has no file: that is said of the memory', async () => {
		const { disk } = failingHome('ENOSPC');
		const night = new KeptNight(disk, [nightsFolder]);
		night.wiped.add(nightsFolder);
		await night.create();
		night.append();
		expect(night.status).toMatchObject({ state: 'memory', wipedHome: null });
	});
});

describe('a folder that takes nothing at the start', () => {
	test('the night is written, not safe, and says where it is as long as it is there', async () => {
		const { disk } = failingHome('ENOSPC');
		const night = wipedNight(disk);
		await night.create();
		for (let step = 0; step < 3; step += 1) night.append();
		await seconds(night, 30);
		expect(night.status).toMatchObject({ state: 'unsafe', isSaved: false, savedSeq: 0, elsewhere });
		// A restart of the machine leaves what was shown as saved: nothing.
		expect(night.savedSteps).toBe(0);
		expect((await night.journal?.close())?.elsewhere).toEqual(elsewhere);
	});

	test('it goes back within a second of the folder taking it, whole, and that is said', async () => {
		const { disk, home } = failingHome('EDQUOT');
		const night = wipedNight(disk);
		await night.create();
		for (let step = 0; step < 120; step += 1) night.append();
		await seconds(night, 3);
		home.isFailing = false;
		await seconds(night, 1);
		expect(night.status).toMatchObject({ state: 'saved', savedSeq: 120, elsewhere: null });
		expect(night.status?.warnings.at(-1)).toEqual({
			code: 'moved-back',
			from: spareFolder,
			folder: nightsFolder,
		});
		night.append();
		await settle();
		const cut = disk.afterPowerCut(() => 0);
		for (const path of cut.files()) if (path.startsWith(spareFolder)) cut.remove(path);
		const opened = wipedNight(cut).open();
		expectKept(opened, { saved: 121, typed: 121 });
		expect(opened.header?.title).toBe('Quay Street');
		// The copy stands as it was: nothing of a night is ever removed.
		expect(disk.files().some((path) => path.startsWith(spareFolder))).toBe(true);
	});

	test('one that another user was quicker to make in its place is not used', async () => {
		const { disk } = failingHome('ENOSPC');
		disk.effect = ({ name, path }) => {
			if (name === 'makeFolder' && path === spareFolder) {
				disk.plantFolder(spareFolder);
				disk.foreignFolders.add(spareFolder);
			}
			return name === 'write' && path.startsWith(nightsFolder) ? { fail: 'ENOSPC' } : null;
		};
		const night = wipedNight(disk);
		await night.create();
		night.append();
		await seconds(night, 5);
		expect(night.status).toMatchObject({ state: 'memory', elsewhere: null });
		expect(disk.files().filter((path) => path.startsWith(spareFolder))).toEqual([]);
	});

	test('in a place that outlives a restart it is saved, and told all the same', async () => {
		const { disk } = failingHome('EROFS');
		const night = new KeptNight(disk, [nightsFolder, '/var/tmp/rackside']);
		await night.create();
		night.append();
		await seconds(night, 2);
		expect(night.status).toMatchObject({ state: 'saved', isSaved: true, savedSeq: 1 });
		expect(night.status?.elsewhere).toMatchObject({ trouble: 'EROFS', isWiped: false });
	});
});

describe('a folder that fails in the middle of a night', () => {
	async function failedAtStep3() {
		const { disk, home } = failingHome('EIO');
		home.isFailing = false;
		const night = wipedNight(disk);
		await night.create();
		for (let step = 0; step < 3; step += 1) night.append();
		await settle();
		home.isFailing = true;
		for (let step = 0; step < 4; step += 1) night.append();
		await seconds(night, 2);
		return { disk, home, night };
	}

	test('what went before stays saved, what came after is not safe', async () => {
		const { night } = await failedAtStep3();
		expect(night.status).toMatchObject({ state: 'unsafe', savedSeq: 3, lastSeq: 7 });
		expect(night.status?.elsewhere).toEqual({ ...elsewhere, trouble: 'EIO' });
		expect(night.savedSteps).toBe(3);
	});

	test('a folder with room for less than all keeps the night where it is', async () => {
		const { disk, home, night } = await failedAtStep3();
		const before = disk.files();
		home.isFailing = false;
		disk.roomBytes = disk.usedBytes() + 900;
		await seconds(night, 5);
		expect(disk.files()).toEqual(before);
		expect(night.status).toMatchObject({ state: 'unsafe', elsewhere: { trouble: 'ENOSPC' } });
		disk.roomBytes = Number.POSITIVE_INFINITY;
		await seconds(night, 1);
		expect(night.status).toMatchObject({ state: 'saved', savedSeq: 7, elsewhere: null });
	});

	test('a folder that takes the bytes and does not confirm them is no home yet', async () => {
		const { disk, home, night } = await failedAtStep3();
		home.isFailing = false;
		disk.effect = ({ name, path }) =>
			name === 'sync' && path.startsWith(nightsFolder) ? { fail: 'EIO' } : null;
		await seconds(night, 40);
		expect(night.status?.isSaved).toBe(false);
		expect(night.status?.warnings.filter(({ code }) => code === 'moved-back')).toEqual([]);
		expect(disk.files().length).toBeLessThan(20);
		disk.effect = () => null;
		await seconds(night, 120);
		expect(night.status).toMatchObject({ state: 'saved', savedSeq: 7, elsewhere: null });
	});

	test('the next start says where it is, and brings it back', async () => {
		const { disk, home } = await failedAtStep3();
		const killed = disk.afterKill();
		killed.effect = disk.effect;
		const next = wipedNight(killed);
		expectKept(next.open(), { saved: 7, typed: 7 });
		await seconds(next, 2);
		expect(next.status).toMatchObject({ state: 'unsafe', savedSeq: 0 });
		expect(next.status?.elsewhere).toEqual({ ...elsewhere, trouble: 'EIO' });
		home.isFailing = false;
		await seconds(next, 1);
		expect(next.status).toMatchObject({ state: 'saved', savedSeq: 7, elsewhere: null });
		expect(next.status?.warnings.at(-1)?.code).toBe('moved-back');
		// Once it is back, the copy is no reason to speak of it again.
		const last = wipedNight(killed.afterPowerCut(() => 0));
		expectKept(last.open(), { saved: 7, typed: 7 });
		expect(last.journal?.status().elsewhere).toBeNull();
	});

	test('one that only did not confirm has no part in what is taken up in the other folder', async () => {
		const disk = new FaultDisk();
		const first = wipedNight(disk);
		await first.create();
		let isFirst = true;
		disk.effect = ({ name }) => {
			if (name !== 'sync' || !isFirst) return null;
			isFirst = false;
			return { fail: 'EIO' };
		};
		first.append();
		await settle();
		// Its bytes are in both folders, and the night goes on in the file of the other.
		const night = wipedNight(disk.afterKill());
		night.resume('writer-2');
		night.append();
		await settle();
		expect(night.status).toMatchObject({ state: 'unsafe', savedSeq: 0 });
		await seconds(night, 1);
		expect(night.status).toMatchObject({ state: 'saved', savedSeq: 2, elsewhere: null });
	});

	test('what is gone from the other folder after a restart is missed by name', async () => {
		const { disk } = await failedAtStep3();
		const cut = disk.afterPowerCut(() => Number.POSITIVE_INFINITY);
		for (const path of cut.files()) if (path.startsWith(spareFolder)) cut.remove(path);
		const opened = wipedNight(cut).open();
		expectKept(opened, { saved: 3, typed: 7 });
		expect(opened.findings.map(nightFindingWords)).toEqual([
			'The last steps are missing: they were kept in another folder, since its own took nothing, and are gone from there.',
		]);
	});

	test('nor is a night forgotten of which nothing ever was in its own folder', async () => {
		const disk = new FaultDisk();
		disk.plantFolder(nightsFolder);
		// A full disk: no byte more, but a name.
		disk.effect = ({ name, path }) =>
			name === 'write' && path.startsWith(nightsFolder) ? { fail: 'ENOSPC' } : null;
		const night = wipedNight(disk);
		await night.create();
		await seconds(night, 2);
		const cut = disk.afterKill();
		for (const path of cut.files()) if (path.startsWith(spareFolder)) cut.remove(path);
		const [listed] = listNights(cut, folders).nights;
		expect(listed).toMatchObject({ id: nightName, header: null, problem: { code: 'copy-gone' } });
		expect(unreadableNight([listed!], { title: 'Quay Street', after: '' })).toBe(listed);
	});

	test.each(['ENOSPC', 'EDQUOT'])(
		'one with no more room (%s) is left for the other at once, and comes back by itself',
		async (code) => {
			const { disk, home } = failingHome(code);
			home.isFailing = false;
			const night = wipedNight(disk);
			await night.create();
			for (let step = 0; step < 3; step += 1) night.append();
			await settle();
			home.isFailing = true;
			night.append();
			await settle();
			// What its own folder has counts on; a restart leaves that.
			expect(night.status).toMatchObject({
				...{ state: 'unsafe', savedSeq: 3, lastSeq: 4, problem: null, warnings: [] },
				elsewhere: { ...elsewhere, trouble: code },
			});
			for (let step = 0; step < 3; step += 1) night.append();
			await seconds(night, 600);
			expectKept(wipedNight(disk.afterKill()).open(), { saved: 7, typed: 7 });
			const [before, away] = [nightsFolder, spareFolder].map((folder) =>
				disk.filesButMark().filter((path) => path.startsWith(folder)),
			);
			expect(before).toEqual([nightPath, `${nightsFolder}/${nightName}.elsewhere`]);
			expect(away).toEqual([`${spareFolder}/${nightName}.2.journal`]);
			home.isFailing = false;
			await seconds(night, 1);
			expect(night.status).toMatchObject({ state: 'saved', savedSeq: 7, elsewhere: null });
			expect(night.status?.warnings.map(({ code: one }) => one)).toEqual(['moved-back']);
			const cut = disk.afterPowerCut(() => 0);
			for (const path of cut.files()) if (path.startsWith(spareFolder)) cut.remove(path);
			expectKept(wipedNight(cut).open(), { saved: 7, typed: 7 });
		},
	);

	test('where the other has no room either, the night waits for its own file', async () => {
		const { disk, home } = failingHome('ENOSPC');
		home.isFailing = false;
		const night = wipedNight(disk);
		await night.create();
		night.append();
		await settle();
		disk.roomBytes = disk.usedBytes();
		for (let step = 0; step < 3; step += 1) night.append();
		await seconds(night, 60);
		expect(night.status).toMatchObject({ state: 'unsaved', savedSeq: 1, elsewhere: null });
		expect(disk.filesButMark()).toEqual([nightPath]);
		// Less than a further file with its header would take.
		disk.roomBytes = disk.usedBytes() + 600;
		await seconds(night, 1);
		expect(night.status).toMatchObject({ state: 'saved', savedSeq: 4, elsewhere: null });
		expect(disk.filesButMark()).toEqual([nightPath]);
	});

	test('a night taken up on a disk that is full goes on there too, and what it had stays saved', async () => {
		const { disk, home } = failingHome('ENOSPC');
		home.isFailing = false;
		const first = wipedNight(disk);
		await first.create();
		for (let step = 0; step < 150; step += 1) first.append();
		await settle();
		home.isFailing = true;
		const night = wipedNight(disk.afterKill());
		night.disk.effect = disk.effect;
		night.resume('writer-2');
		night.append();
		await settle();
		expect(night.status).toMatchObject({ state: 'unsafe', savedSeq: 150, lastSeq: 151 });
		home.isFailing = false;
		const used = night.disk.usedBytes();
		await seconds(night, 1);
		expect(night.status).toMatchObject({ state: 'saved', savedSeq: 151, elsewhere: null });
		// Only what its own folder lacked was written there.
		expect(night.disk.usedBytes() - used).toBeLessThan(3000);
	});

	test('one with room only now and then does not fill the other with files', async () => {
		const { disk, home } = failingHome('ENOSPC');
		home.isFailing = false;
		const night = wipedNight(disk);
		await night.create();
		for (let second = 0; second < 600; second += 1) {
			home.isFailing = second % 2 === 0;
			night.append();
			await seconds(night, 1);
		}
		expect(disk.files().length).toBeLessThan(60);
		home.isFailing = false;
		await seconds(night, 300);
		expect(night.status).toMatchObject({ state: 'saved', savedSeq: 600, elsewhere: null });
		expectKept(wipedNight(disk.afterPowerCut(() => 0)).open(), { saved: 600, typed: 600 });
	});

	test('files that may not grow are no reason to go elsewhere', async () => {
		const disk = new FaultDisk();
		const night = wipedNight(disk);
		await night.create();
		disk.fileLimitBytes = 2000;
		for (let step = 0; step < 30; step += 1) night.append();
		await settle();
		expect(night.status).toMatchObject({ state: 'saved', savedSeq: 30, elsewhere: null });
		expect(disk.files().every((path) => path.startsWith(nightsFolder))).toBe(true);
		expect(disk.files()).toContain(nightPath);
		expect(disk.files()).toContain(`${nightsFolder}/${nightName}.2.journal`);
	});
});
