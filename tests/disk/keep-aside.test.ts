// Bytes kept aside are neither lost nor kept twice.

import { expect, test } from 'vitest';
import { keepAside } from '../../src/disk/keep-aside.ts';
import { FaultDisk } from './fault-disk.ts';

const path = '/nights/night.journal';
const bytes = Buffer.from('0123456789');

function keep(disk: FaultDisk, start: number, end = 10, from: Buffer = bytes): string {
	const kept = keepAside(disk, { path, bytes: from, range: { start, end }, why: 'torn' });
	return 'code' in kept ? kept.code : kept.path;
}

test('the bytes of the range get a name that tells where they stood', () => {
	const disk = new FaultDisk();
	disk.plantFolder('/nights');
	expect(keep(disk, 4, 7)).toBe(`${path}.torn-4`);
	expect(disk.peek(`${path}.torn-4`).toString()).toBe('456');
	expect(disk.openFiles.size).toBe(0);
});

test('the same bytes are kept once, others of the same place beside them', () => {
	const disk = new FaultDisk();
	disk.plantFolder('/nights');
	expect(keep(disk, 4)).toBe(`${path}.torn-4`);
	expect(keep(disk, 4)).toBe(`${path}.torn-4`);
	expect(keep(disk, 4, 10, Buffer.from('another ten'))).toBe(`${path}.torn-4-2`);
	expect(keep(disk, 4, 10, Buffer.from('another ten'))).toBe(`${path}.torn-4-2`);
	expect(keep(disk, 5)).toBe(`${path}.torn-5`);
	expect(disk.files()).toHaveLength(3);
});

test('a copy that another program began is left to it', () => {
	const disk = new FaultDisk();
	disk.plantFolder('/nights');
	disk.effect = (call) => {
		if (call.name === 'openNew' && call.path.endsWith('-4'))
			disk.plant(call.path, Buffer.from('x'));
		return null;
	};
	expect(keep(disk, 4)).toBe(`${path}.torn-4-2`);
});

test.each(['openNew', 'write', 'stat'])('when %s fails it says so', (name) => {
	const disk = new FaultDisk();
	disk.plantFolder('/nights');
	disk.effect = (call) => (call.name === name ? { fail: 'ENOSPC' } : null);
	expect(keep(disk, 4)).toBe('ENOSPC');
	expect(disk.openFiles.size).toBe(0);
});

test('a disk that takes a byte at a time takes them all; one that takes none is not waited for', () => {
	const disk = new FaultDisk();
	disk.plantFolder('/nights');
	disk.effect = (call) => (call.name === 'write' ? { short: 1 } : null);
	expect(keep(disk, 0)).toBe(`${path}.torn-0`);
	expect(disk.peek(`${path}.torn-0`)).toEqual(bytes);
	disk.effect = (call) => (call.name === 'write' ? { short: 0 } : null);
	expect(keep(disk, 1)).toBe('EIO');
	expect(disk.files()).toEqual([`${path}.torn-0`]);
});
