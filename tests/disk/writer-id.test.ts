// Who writes a night: the same laptop and folder each time, another opening each time.

import { expect, test } from 'vitest';
import { realDisk } from '../../src/disk/real-disk.ts';
import { writerId } from '../../src/disk/writer-id.ts';
import { scratchFolder } from './scratch-folder.ts';

test('two openings on one folder have its name in common and nothing else', () => {
	const folder = scratchFolder();
	const [one = '', other = ''] = [writerId(realDisk, folder), writerId(realDisk, folder)];
	expect(one).toMatch(/^[0-9a-f]{12}\.[0-9a-f]{6}$/);
	expect(other.split('.')[0]).toBe(one.split('.')[0]);
	expect(other).not.toBe(one);
});

test('two folders are two writers, and one that takes no file is one all the same', () => {
	const here = writerId(realDisk, scratchFolder()).split('.')[0];
	expect(writerId(realDisk, scratchFolder()).split('.')[0]).not.toBe(here);
	expect(writerId(realDisk, '/proc/nowhere')).toMatch(/^[0-9a-f]{12}\.[0-9a-f]{6}$/);
});
