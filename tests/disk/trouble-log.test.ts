// The program's own troubles: noted with their times, bounded, and with nothing in them that is
// anybody else's business.

import { statSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { realDisk } from '../../src/disk/real-disk.ts';
import { readTroubles, troubleLog } from '../../src/disk/trouble-log.ts';
import { troubleWords } from '../../src/words/trouble-log.ts';
import { FaultDisk, settle } from './fault-disk.ts';
import { KeptNight, nightsFolder, spareFolder } from './kept-night.ts';
import { scratchFolder } from './scratch-folder.ts';

const folder = '/data/rackside';
const path = `${folder}/troubles.log`;

/** A night on a disk, and a log of it beside the folder of nights. */
async function loggedNight() {
	const disk = new FaultDisk();
	disk.plantFolder(folder);
	let nowMs = Date.UTC(2026, 5, 12, 20, 30);
	const log = troubleLog({ disk, folder, wallMs: () => nowMs });
	const night = new KeptNight(disk, [nightsFolder, spareFolder]);
	const services = night.services.bind(night);
	night.services = (writer) => ({ ...services(writer), onStatus: log.status });
	await night.create();
	await settle();
	const seconds = async (count: number) => {
		for (let second = 0; second < count; second += 1) {
			nowMs += 1000;
			night.tick(1000);
			await settle();
		}
	};
	return { disk, night, seconds };
}

test('a full folder, and the night back in it, are told with their times once it takes them', async () => {
	const { disk, night, seconds } = await loggedNight();
	night.append();
	await settle();
	await seconds(1);
	disk.effect = ({ name, path: at }) =>
		['write', 'openNew'].includes(name) && at.startsWith(folder) ? { fail: 'EIO' } : null;
	night.append();
	await seconds(60);
	expect(readTroubles(disk, folder).troubles).toEqual([]);
	disk.effect = () => null;
	await seconds(2);
	const told = readTroubles(disk, folder).troubles;
	expect(told.map(troubleWords)).toContain(
		'A night was kept in another folder: the disk reports a fault (EIO).',
	);
	expect(told.at(-1)).toMatchObject({ code: 'moved-back' });
	const went = told.find(({ code }) => code === 'kept-elsewhere');
	expect(new Date(went?.atMs ?? 0).toISOString()).toBe('2026-06-12T20:30:01.000Z');
	expect(new Date(told.at(-1)?.atMs ?? 0).toISOString()).toMatch(/^2026-06-12T20:31:0[123]/);
});

test('neither titles nor what was typed nor paths are in it', async () => {
	const { disk, night, seconds } = await loggedNight();
	night.append();
	await settle();
	disk.remove(disk.files().find((file) => file.endsWith('.journal')) ?? '');
	await seconds(4);
	const text = disk.peek(path).toString();
	expect(text).toBe('2026-06-12T20:30:01.000Z file-gone\n');
});

test('it never grows beyond its bound, and what is newest stays', () => {
	const disk = new FaultDisk();
	disk.plantFolder(folder);
	const log = troubleLog({ disk, folder, wallMs: () => 0 });
	for (let count = 0; count < 4000; count += 1) log.note('records-missing', count);
	expect(disk.peek(path).length).toBeLessThan(70_000);
	const told = readTroubles(disk, folder).troubles;
	expect(told.length).toBeGreaterThan(500);
	expect(told.at(-1)?.detail).toBe('3999');
	expect(disk.files()).toEqual([path]);
	expect(disk.openFiles.size).toBe(0);
});

test('a disk that fails at any call costs the night nothing', () => {
	const disk = new FaultDisk();
	disk.plantFolder(folder);
	const log = troubleLog({ disk, folder, wallMs: () => 0 });
	log.note('slow');
	for (const name of ['stat', 'openExisting', 'statOpen', 'write', 'truncate', 'close']) {
		disk.effect = (call) => (call.name === name ? { fail: 'EIO' } : null);
		log.note('slow');
	}
	disk.effect = () => null;
	log.note('kept-again');
	expect(readTroubles(disk, folder).troubles.at(-1)?.code).toBe('kept-again');
});

test('it is for its owner alone, and lines that are none of its own are left out', () => {
	const data = scratchFolder();
	const log = troubleLog({ disk: realDisk, folder: data, wallMs: () => 1000 });
	log.note('unsaved', 'ENOSPC');
	const file = join(data, 'troubles.log');
	expect(statSync(file).mode & 0o777).toBe(0o600);
	const opened = realDisk.openExisting(file);
	realDisk.write(opened, Buffer.from('1970 \u001B[2Jforged\nnonsense\n'), 0);
	realDisk.close(opened);
	expect(readTroubles(realDisk, data).troubles).toEqual([
		{ atMs: 1000, code: 'unsaved', detail: 'ENOSPC' },
	]);
	expect(troubleWords({ code: 'unsaved', detail: 'ENOSPC' })).toBe(
		'A night could not be written: the disk is full: make room on it (ENOSPC).',
	);
});
