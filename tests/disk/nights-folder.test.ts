// What a short look at the folder of nights tells of each.

import { describe, expect, test } from 'vitest';
import { createNightFile } from '../../src/disk/create-night-file.ts';
import { nightId } from '../../src/disk/night-id.ts';
import { listNights, unfinishedNight } from '../../src/disk/nights-folder.ts';
import { lookAtNight } from '../../src/disk/open-night-file.ts';
import { parseSegmentName, segmentFileName } from '../../src/disk/segment-name.ts';
import { diskFaultWords } from '../../src/words/disk.ts';
import { FaultDisk, settle } from './fault-disk.ts';
import { KeptNight, nightsFolder, spareFolder } from './kept-night.ts';
import { nightName, stepEntry, subject } from './night-steps.ts';

const folders = [nightsFolder, spareFolder];

type Sample = { readonly id: string; readonly startedAtMs: number; readonly steps: number };

async function keep(disk: FaultDisk, sample: Sample, changes: Partial<typeof subject> = {}) {
	const services = {
		disk,
		folders,
		writer: 'writer-1',
		upMs: 0,
		wait: async () => settle(),
	};
	const { journal } = await createNightFile(services, {
		id: sample.id,
		wallMs: sample.startedAtMs,
		subject: { ...subject, ...changes },
	});
	journal.keepStates(() => ({ filling: 'x'.repeat(100_000) }));
	for (let step = 1; step <= sample.steps; step += 1) {
		journal.append([stepEntry(step)], { wallMs: sample.startedAtMs + step, upMs: step });
	}
	await journal.close();
}

describe('the list of nights', () => {
	test('is the newest first, with header and last records', async () => {
		const disk = new FaultDisk();
		await keep(disk, { id: 'b-night', startedAtMs: 1000, steps: 3 });
		await keep(disk, { id: 'a-night', startedAtMs: 3000, steps: 0 }, { isRehearsal: true });
		await keep(disk, { id: 'c-night', startedAtMs: 2000, steps: 301 });
		const nights = listNights(disk, folders).nights;
		expect(nights.map((night) => night.id)).toEqual(['a-night', 'c-night', 'b-night']);
		expect(nights[0]).toMatchObject({
			header: { isRehearsal: true },
			lastRecords: [],
			problem: null,
		});
		expect(nights[1]?.lastRecords.at(-1)?.s).toBe(301);
		expect(nights[2]).toMatchObject({
			path: `${nightsFolder}/b-night.journal`,
			startedAtMs: 1000,
			header: { title: 'Quay Street', showPath: '/shows/quay.yaml' },
		});
		expect(nights[2]?.lastRecords.map((record) => record.s)).toEqual([1, 2, 3]);
	});

	test('finds the last records before a checkpoint that is longer than a look', async () => {
		const disk = new FaultDisk();
		await keep(disk, { id: 'night', startedAtMs: 1, steps: 100 });
		disk.effect = () => null;
		const [before] = listNights(disk, folders).nights;
		expect(before?.lastRecords.at(-1)?.s).toBe(100);
		await keep(disk, { id: 'other', startedAtMs: 2, steps: 101 });
		// Cut away the record after the checkpoint.
		const path = `${nightsFolder}/other.journal`;
		disk.meddle(path, (bytes) => bytes.subarray(0, bytes.lastIndexOf('\n', bytes.length - 2) + 1));
		const [night] = listNights(disk, folders).nights;
		expect(night?.lastRecords.at(-1)?.s).toBe(100);
	});

	test('tells of the end of a night however much the program wrote down after it', async () => {
		const disk = new FaultDisk();
		await keep(disk, { id: 'night', startedAtMs: 1, steps: 101 });
		const [night] = listNights(disk, folders).nights;
		expect(night?.lastRecords.some(({ s }) => s === 100)).toBe(true);
	});

	test('and wherever it had to go on', async () => {
		const disk = new FaultDisk();
		const night = new KeptNight(disk, folders);
		await night.create();
		for (let step = 1; step <= 3; step += 1) night.append();
		await settle();
		disk.effect = ({ name, path }) =>
			name === 'write' && path.startsWith(nightsFolder) ? { fail: 'EIO' } : null;
		night.append();
		await settle();
		const [found] = listNights(disk, folders).nights;
		expect(found?.path).toBe(`${spareFolder}/${nightName}.2.journal`);
		expect(found?.lastRecords.map(({ s }) => s)).toEqual([1, 2, 3, 4]);
		expect(found?.away).toBe(spareFolder);
		disk.effect = () => null;
		night.tick(1000);
		await settle();
		expect(night.status?.elsewhere).toBeNull();
		expect(listNights(disk, folders).nights[0]?.away).toBeNull();
	});

	test('reads no more than the ends of a long night', async () => {
		const disk = new FaultDisk();
		await keep(disk, { id: 'night', startedAtMs: 1, steps: 2000 });
		let most = 0;
		const { read } = disk;
		disk.read = (path, part) => {
			const bytes = read.call(disk, path, part);
			most = Math.max(most, bytes.length);
			return bytes;
		};
		expect(listNights(disk, folders).nights).toHaveLength(1);
		expect(most).toBeLessThan(300_000);
		expect(disk.peek(`${nightsFolder}/night.journal`).length).toBeGreaterThan(2_000_000);
	});

	test('shows a header with a long show', async () => {
		const disk = new FaultDisk();
		const show = { words: 'y'.repeat(900_000) };
		await keep(disk, { id: 'night', startedAtMs: 1, steps: 1 }, { show });
		expect(listNights(disk, folders).nights[0]?.header?.title).toBe('Quay Street');
		expect(lookAtNight({ disk, folders }, { id: 'night' }).header?.show).toEqual(show);
	});

	test('shows it still where its first copy is damaged', async () => {
		const disk = new FaultDisk();
		const show = { title: 'Quay Street', notes: 'a'.repeat(200_000) };
		await keep(disk, { id: 'long', startedAtMs: 1000, steps: 1 }, { show });
		disk.meddle(`${nightsFolder}/long.journal`, (bytes) => {
			const damaged = Buffer.from(bytes);
			damaged[200] = (damaged[200] ?? 0) ^ 1;
			return damaged;
		});
		expect(listNights(disk, folders).nights[0]?.header).toMatchObject({ title: 'Quay Street' });
	});

	test('keeps a night whose show is too long to be copied', async () => {
		const disk = new FaultDisk();
		await keep(disk, { id: 'night', startedAtMs: 1, steps: 1 }, { show: 'z'.repeat(2_200_000) });
		const { header, records } = lookAtNight({ disk, folders }, { id: 'night' });
		expect(header).toMatchObject({ show: null, showHash: 'abc' });
		expect(records()).toHaveLength(1);
	});

	test('takes the files of one night together, wherever they are', async () => {
		const disk = new FaultDisk();
		await keep(disk, { id: 'night', startedAtMs: 1, steps: 2 });
		const bytes = disk.peek(`${nightsFolder}/night.journal`);
		disk.plant(`${spareFolder}/night.2.journal`, bytes);
		disk.plant(`${nightsFolder}/night.journal.torn-5`, Buffer.from('x'));
		disk.plant(`${nightsFolder}/unrelated.txt`, Buffer.from('x'));
		const nights = listNights(disk, folders).nights;
		expect(nights).toHaveLength(1);
		expect(nights[0]).toMatchObject({
			path: `${spareFolder}/night.2.journal`,
			sizeBytes: bytes.length * 2,
		});
	});

	test('says what cannot be looked at', async () => {
		const disk = new FaultDisk();
		disk.plant(`${nightsFolder}/empty.journal`, Buffer.alloc(0));
		disk.plant(`${nightsFolder}/link.journal`, Buffer.alloc(0), 'link');
		const nights = listNights(disk, folders).nights;
		expect(nights.map(({ problem }) => problem && diskFaultWords(problem))).toEqual([
			`${nightsFolder}/link.journal cannot be read: a link stands where the file should be (ELOOP).`,
			`${nightsFolder}/empty.journal cannot be read: it is empty.`,
		]);
		expect(listNights(new FaultDisk(), folders).nights).toEqual([]);
	});
});

describe('a folder that cannot be listed', () => {
	const unlisted = (folder: string) => [{ code: 'file-unreadable', path: folder, trouble: 'EIO' }];

	test.each(folders)('%s is told, never taken for empty', async (folder) => {
		const disk = new FaultDisk();
		await keep(disk, { id: 'night', startedAtMs: 1, steps: 3 });
		disk.plantFolder(spareFolder);
		disk.effect = ({ name, path }) => (name === 'list' && path === folder ? { fail: 'EIO' } : null);
		expect(listNights(disk, folders).unlisted).toEqual(unlisted(folder));
		disk.effect = () => null;
		expect(listNights(disk, folders)).toMatchObject({ nights: [{ id: 'night' }], unlisted: [] });
	});

	test('does not make what is kept in it gone', async () => {
		const disk = new FaultDisk();
		disk.plant(`${nightsFolder}/night.elsewhere`, Buffer.alloc(0));
		disk.plantFolder(spareFolder);
		disk.effect = ({ name, path }) =>
			name === 'list' && path === spareFolder ? { fail: 'EIO' } : null;
		expect(listNights(disk, folders).nights.map(({ problem }) => problem)).toEqual(
			unlisted(spareFolder),
		);
	});

	test('one that is not there is only empty', () => {
		expect(listNights(new FaultDisk(), folders)).toEqual({ nights: [], unlisted: [] });
	});
});

describe('the unfinished night of a show', () => {
	test('is the newest of that show that is not over', async () => {
		const disk = new FaultDisk();
		await keep(disk, { id: 'a', startedAtMs: 1, steps: 1 });
		await keep(disk, { id: 'b', startedAtMs: 2, steps: 1 });
		await keep(disk, { id: 'c', startedAtMs: 3, steps: 9 });
		await keep(disk, { id: 'd', startedAtMs: 4, steps: 1 }, { showPath: '/shows/other.yaml' });
		await keep(disk, { id: 'e', startedAtMs: 5, steps: 1 }, { isRehearsal: true });
		const nights = listNights(disk, folders).nights;
		const wanted = { showPath: '/shows/quay.yaml', isRehearsal: false };
		const isFinished = (night: (typeof nights)[number]) => night.lastRecords.at(-1)?.s === 9;
		expect(unfinishedNight(nights, { ...wanted, isFinished })?.id).toBe('b');
		expect(unfinishedNight(nights, { ...wanted, isRehearsal: true, isFinished })?.id).toBe('e');
		expect(unfinishedNight(nights, { ...wanted, isFinished: () => true })).toBeNull();
	});
});

describe('names', () => {
	test('of files tell night and number', () => {
		for (const name of [
			{ id: 'a-night-1', number: 1 },
			{ id: 'a', number: 12 },
		]) {
			expect(parseSegmentName(segmentFileName(name))).toEqual(name);
		}
		for (const name of [
			'a.journal.new',
			'a.0.journal',
			'../a.journal',
			'-a.journal',
			'A.journal',
			'.journal',
			'a.journal.torn-12',
		]) {
			expect(parseSegmentName(name)).toBeNull();
		}
	});

	test('of nights tell when and what, and stay in their folder', () => {
		const startedAt = new Date(2026, 5, 12, 20, 30, 5);
		expect(nightId({ title: 'Quay Street, second night', startedAt, chance: '7f3a' })).toBe(
			'2026-06-12-203005-quay-street-second-night-7f3a',
		);
		const odd = ['../../etc/passwd', 'CON', '', '\u0000\n', 'ü'.repeat(500), '-rf'];
		for (const title of odd) {
			const id = nightId({ title, startedAt, chance: '7f3a' });
			expect(parseSegmentName(`${id}.journal`)).toEqual({ id, number: 1 });
			expect(id.length).toBeLessThan(80);
		}
	});
});
